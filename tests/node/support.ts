import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { afterAll } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import type { SweepFormat } from '../../src/node/index.js';
import type { Design, SweepBase } from '../../src/sweep/index.js';
import { degrees, metresPerSecond, mph, radiansPerSecond } from '../../src/units/index.js';

/** A folder that is gone after the tests of the file. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fairflight-sweep-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export const formats: readonly SweepFormat[] = ['csv', 'parquet', 'arrow'];

/** What lies beside a path and is not the file itself. */
export function leftovers(path: string): string[] {
  const folder = dirname(path);
  return readdirSync(folder)
    .filter((name) => name.startsWith(`${basename(path)}.`))
    .map((name) => join(folder, name));
}

/** A list of launches; in every 50th the ball is faster than the library computes, so that every kind of value occurs. */
export function listOf(rows: number): Design {
  return {
    kind: 'list',
    rows: Array.from({ length: rows }, (_, i) => ({
      'launch.ballSpeed': i % 50 === 7 ? metresPerSecond(150) : mph(100 + (60 * i) / rows),
    })),
  };
}

/** Options of a sweep whose rows cost little: the flight alone, and few columns. */
export const cheap: SweepBase = {
  from: { ballSpeed: mph(51), launchAngle: degrees(8), spinRate: radiansPerSecond(200) },
  outputs: ['carry', 'flight.apex', 'flight.descentAngle'],
};

/** The library's error that a promise ends in. */
export async function rejected(promise: Promise<unknown>): Promise<{ code: string; message: string }> {
  const error: unknown = await promise.then(
    () => new Error('expected a FairflightError, but nothing was thrown'),
    (reason: unknown) => reason,
  );
  if (isFairflightError(error)) return error;
  throw error;
}
