import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import type { Design, SweepBase } from '../../src/sweep/index.js';
import { degrees, metresPerSecond, mph, radiansPerSecond } from '../../src/units/index.js';

/** A folder that is gone after the tests of the file. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fairflight-sweep-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
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
