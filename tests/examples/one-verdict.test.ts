import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { strike } from 'fairflight';
import type { ChangeRanking } from 'fairflight/session';
import { degrees, mph, toDegrees, toMph, toRpm } from 'fairflight/units';
import { afterAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'verdict-'));
afterAll(() => rmSync(scratch, { recursive: true }));

function json(program: string, file: string, ...args: readonly string[]): unknown {
  const out = join(scratch, program);
  const command = ['--import', 'tsx', `examples/${program}.ts`, file, '--out', out, ...args];
  const { status, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, '']);
  return JSON.parse(written({ out }, 'json'));
}

/** Drives of an invented player who hits 5° down at 94 mph with a loft that fits. */
function drives(): string {
  const wobble = (i: number, k: number): number => Math.sin(1.7 * i * (k + 1) + k * k);
  const { launch } = strike({ clubSpeed: mph(94), attackAngle: degrees(-5), dynamicLoft: degrees(13.2) });
  const rows = Array.from({ length: 14 }, (_, i) =>
    [
      94 + wobble(i, 1),
      -5 + wobble(i, 2),
      toMph(launch.ballSpeed) * (0.985 + 0.004 * wobble(i, 3)),
      toDegrees(launch.launchAngle) + wobble(i, 4),
      wobble(i, 6),
      toRpm(launch.spinRate) * (1 + 0.05 * wobble(i, 5)),
      3 * wobble(i, 7),
      10 * wobble(i, 8),
      8 * wobble(i, 9),
    ].map((value) => value.toFixed(2)),
  );
  const header =
    'club speed (mph),attack angle (deg),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),toe (mm),high (mm)';
  return [header, ...rows.map((row) => row.join(','))].join('\n');
}

interface Ladder {
  readonly bands: readonly {
    readonly used: number;
    readonly advice: { readonly changes: readonly { readonly change: string; readonly verdict: string }[] };
  }[];
}

describe('the ladder, the face map and the trade-off', () => {
  it('give the same shots the same advice', { timeout: 120_000 }, () => {
    const file = join(scratch, 'drives.csv');
    writeFileSync(file, drives());
    const ladder = json('ladder', file, '--bands', 'one', '--keep-outliers') as Ladder;
    const trade = json('tradeoff', file, '--keep-outliers', '--shots', '128', '--holes', '380yd');
    const face = json('face', file) as { readonly advice: ChangeRanking };
    const verdicts = ({ changes }: Ladder['bands'][number]['advice']): readonly string[] =>
      changes.map(({ change, verdict }) => `${change} ${verdict}`);
    expect(ladder.bands).toHaveLength(1);
    expect(ladder.bands[0]?.used).toBe(14);
    expect(verdicts(face.advice as never)).toEqual(verdicts(ladder.bands[0]?.advice as never));
    expect(verdicts((trade as Ladder['bands'][number]).advice)).toEqual(verdicts(face.advice as never));
    expect(verdicts(face.advice as never)).toContain('attack-angle advised');
  });
});
