import { designRowFields } from '../../../src/sweep/design-rows.js';
import * as sweeps from '../../../src/sweep/index.js';
import { designField } from '../../../src/sweep/read-design.js';
import { chunkOptionFields, sweepOptionFields } from '../../../src/sweep/sweep.js';
import { type Door, door, one, open, options, scene } from '../door.js';
import * as valid from '../valid.js';

const factors = [{ name: 'launch.spinRate', from: 200, to: 300 }];
const sobol = { kind: 'sobol', count: 8, scramble: 'owen', seed: 1, factors };
const designs = [
  sobol,
  { kind: 'grid', factors: [{ name: 'launch.spinRate', values: [200, 300] }] },
  { kind: 'latin-hypercube', count: 8, seed: 1, factors },
  { kind: 'sobol-indices', base: 8, seed: 1, factors },
  { kind: 'list', rows: [{ 'launch.spinRate': 250 }] },
];
const base = { tolerance: 1e-3, timeLimit: 60, from: valid.launch, outputs: ['carry'] };
const result = sweeps.sweep(sobol as never, {}, base as never);
const values = Array.from({ length: 24 }, (_, i) => Math.sin(i));

async function allOf(...args: readonly unknown[]): Promise<readonly unknown[]> {
  const all: unknown[] = [];
  for await (const chunk of sweeps.sweepChunks(...(args as Parameters<typeof sweeps.sweepChunks>)))
    all.push(chunk);
  return all;
}

export const sweepDoors: readonly Door[] = [
  ...designs.map((design) =>
    door(
      `sweep.sweep (${design.kind})`,
      sweeps.sweep,
      one('design', designField, design),
      scene(),
      options(sweepOptionFields, base),
    ),
  ),
  door(
    'sweep.sweepChunks',
    allOf,
    one('design', designField, sobol),
    scene(),
    options(chunkOptionFields, { ...base, chunkSize: 4, rows: { from: 2, to: 7 } }),
  ),
  door(
    'sweep.designRows',
    sweeps.designRows,
    one('design', designField, designs[3]),
    options(designRowFields, { rows: { from: 2, to: 7 } }),
  ),
  door('sweep.columnOf', sweeps.columnOf, open('rows', result), open('name', 'carry')),
  door('sweep.sobolIndicesOf', sweeps.sobolIndicesOf, open('design', designs[3]), open('values', values)),
];
