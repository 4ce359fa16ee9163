import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isRecord } from '../../../src/errors.js';
import type { Field } from '../../../src/inputs/field.js';
import { readField } from '../../../src/inputs/read.js';
import * as node from '../../../src/node/index.js';
import { parallelOptionFields } from '../../../src/node/pool.js';
import { fileOptionFields } from '../../../src/node/sweep-to-file.js';
import { designField } from '../../../src/sweep/read-design.js';
import { verdictOf } from '../declared.js';
import { type Door, one, open, options, scene, slow } from '../door.js';
import * as valid from '../valid.js';

const design = { kind: 'sobol', count: 4, factors: [{ name: 'launch.spinRate', from: 200, to: 300 }] };
const base = { from: valid.launch, outputs: ['carry'], workers: 0 };
const folder = mkdtempSync(join(tmpdir(), 'doors-'));
process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
const path = join(folder, 'sweep.csv');
await node.sweepToFile(path, design as never, {}, base as never);

/** No threads, which the door to them has a test of its own for: where the number of workers is fine it becomes 0. */
function inThisThread(given: unknown): unknown {
  if (given === undefined) return { workers: 0 };
  if (
    !isRecord(given) ||
    (given['workers'] !== undefined &&
      verdictOf(() => readField(workers, given['workers'], 'workers')) !== 'fine')
  )
    return given;
  return Object.getPrototypeOf(given) === Object.prototype ? { ...given, workers: 0 } : given;
}

async function allOf(given: unknown, around: unknown, settings: unknown): Promise<readonly unknown[]> {
  const all: unknown[] = [];
  const chunks = node.sweepInParallel(given as never, around as never, inThisThread(settings) as never);
  for await (const chunk of chunks) all.push(chunk);
  return all;
}

function toFile(where: unknown, given: unknown, around: unknown, settings: unknown): Promise<unknown> {
  const asked = inThisThread(settings) as object;
  return node.sweepToFile(where as never, given as never, around as never, asked as never);
}

const workers: Field = parallelOptionFields.workers;
const subject = one('design', designField, design);

export const nodeDoors: readonly Door[] = [
  slow(
    'node.sweepInParallel',
    allOf,
    subject,
    scene(),
    options(parallelOptionFields, { ...base, chunkSize: 2, rows: { from: 1, to: 3 } }),
  ),
  slow(
    'node.sweepToFile',
    toFile,
    open('path', path),
    subject,
    scene(),
    options(fileOptionFields, { ...base, format: 'csv', overwrite: true, resume: false }),
  ),
  slow('node.inspectSweepFile', node.inspectSweepFile, open('path', path), open('format', 'csv')),
];
