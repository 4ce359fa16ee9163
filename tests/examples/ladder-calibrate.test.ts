import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'calibrate-'));
afterAll(() => rmSync(scratch, { recursive: true }));

interface Fitted {
  readonly before: number;
  readonly value: number;
  readonly 'standard error': number;
}
interface Residual {
  readonly shots: number;
  readonly 'typical before': number;
  readonly 'typical after': number;
  readonly 'bias before': number;
  readonly 'bias after': number;
}
interface Gap {
  readonly mean: number;
}
interface LadderRecord {
  readonly about: { readonly clubhead: string; readonly limits: readonly string[] };
  readonly bands: readonly {
    readonly model: { readonly 'model less measured': Readonly<Record<string, Gap>> };
    readonly 'best loft': unknown;
  }[];
  readonly calibration?: {
    readonly 'fitted values': Readonly<Record<string, Fitted>>;
    readonly 'not fitted': readonly { readonly value: string }[];
    readonly 'residuals on unseen shots': Readonly<Record<string, Residual>>;
    readonly misreads: readonly { readonly line: number; readonly stage: string }[];
    readonly 'cannot tell apart': readonly string[];
  };
}

/** Runs the ladder as a user does, with a folder of its own for the output. */
function ladder(name: string, ...args: readonly string[]) {
  const out = join(scratch, name);
  const command = ['--import', 'tsx', 'examples/ladder.ts', ...args, '--full', '--out', out];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  return { status, stdout, stderr, out };
}

function recordIn(out: string): LadderRecord {
  return JSON.parse(written({ out }, 'json')) as LadderRecord;
}

const carryGap = ({ bands }: LadderRecord): number =>
  bands.reduce(
    (sum, { model }) => sum + Math.abs(model['model less measured']['carry (yd)']?.mean ?? Number.NaN),
    0,
  ) / bands.length;

describe('the calibrated ladder on its bundled data', () => {
  let plain: LadderRecord;
  let fitted: LadderRecord;
  let calibration: NonNullable<LadderRecord['calibration']>;
  let stdout: string;
  let html: string;
  beforeAll(() => {
    plain = recordIn(ladder('plain').out);
    const run = ladder('calibrated', '--calibrate');
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    fitted = recordIn(run.out);
    calibration = fitted.calibration as typeof calibration;
    stdout = run.stdout.replaceAll(/\s+/g, ' ');
    html = written(run, 'html');
  }, 180_000);

  it('finds the ball the data were made with: drag 2 % up, lift as it was', () => {
    // Known truth of examples/data/invented.ts, hit with the generic driver unchanged.
    const truth = { 'drag scale': 1.02, 'lift scale': 1, restitution: 0.838 };
    for (const [name, value] of Object.entries(truth)) {
      const found = calibration['fitted values'][name] as Fitted;
      expect(Math.abs(found.value - value)).toBeLessThan(found['standard error']);
    }
    const drag = calibration['fitted values']['drag scale'] as Fitted;
    expect(drag.value - drag.before).toBeGreaterThan(4 * drag['standard error']);
  });

  it('predicts the carry of shots it did not see better than before', () => {
    const carry = calibration['residuals on unseen shots']['carry (yd)'] as Residual;
    expect(carry.shots).toBe(49);
    expect(carry['typical after']).toBeLessThan(0.7 * carry['typical before']);
    expect(Math.abs(carry['bias after'])).toBeLessThan(0.2 * Math.abs(carry['bias before']));
  });

  it('uses the fitted ball and head in the rest', () => {
    expect(fitted.about.clubhead).toBe('generic driver, calibrated');
    expect(fitted.about.limits.at(-1)).toMatch(/restitution fitted to these shots/);
    expect(carryGap(fitted)).toBeLessThan(0.5 * carryGap(plain));
    for (const [i, band] of fitted.bands.entries()) {
      expect(band['best loft']).not.toEqual(plain.bands[i]?.['best loft']);
    }
  });

  it('leaves the misread ball speed out but not the strike off the heel, and says what it cannot tell', () => {
    // Line 36 is the shot whose ball speed the generator spoilt, line 16 the one it struck off the heel.
    expect(calibration.misreads.map(({ line }) => line)).toEqual([36]);
    expect(calibration['cannot tell apart'].length).toBeGreaterThanOrEqual(4);
    for (const limit of calibration['cannot tell apart']) {
      expect(stdout).toContain(limit);
      expect(html).toContain(limit);
    }
  });

  it('says the same in the terminal and on the page', () => {
    const drag = (calibration['fitted values']['drag scale'] as Fitted).value.toFixed(3);
    expect(stdout).toContain(`drag scale 1.000 ${drag} ±`);
    expect(html).toContain(`<td>${drag}</td>`);
    expect(html).toContain('Calibrated to these shots');
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('leaves no trace when not asked for', () => {
    expect(plain.calibration).toBeUndefined();
    expect(plain.about.clubhead).toBe('generic driver');
    // A warning of the strike model says where restitution was calibrated; that is no trace of this fit.
    expect(JSON.stringify(plain)).not.toMatch(/"calibration"|, calibrated|fitted to these shots/);
  });
});

const HEADER = 'club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd)';
const ROWS = [96, 97, 98, 99].map((speed, i) => `${speed},${speed + 45},${12 + i / 4},2600,232`);

it('without club speed it fits the ball alone, and says so', () => {
  const file = join(scratch, 'no club speed.csv');
  const lines = [HEADER, ...ROWS, ...ROWS].map((line) => line.replace(/^[^,]+,/, ''));
  writeFileSync(file, `${lines.join('\n')}\n`);
  const { status, stdout, out } = ladder('no club speed', file, '--calibrate');
  expect(status).toBe(0);
  expect(stdout.replaceAll(/\s+/g, ' ')).toMatch(
    /Fitted to these shots: drag scale and lift scale;.*Not fitted: restitution \(at least 5 usable shots, with club speed/,
  );
  const { about, calibration } = recordIn(out);
  expect(Object.keys(calibration?.['fitted values'] ?? {})).toEqual(['drag scale', 'lift scale']);
  expect(calibration?.['not fitted'].map(({ value }) => value)).toEqual([
    'restitution',
    'tangential restitution',
  ]);
  // The head was not fitted, and nothing says it was.
  expect(about.clubhead).toBe('generic driver');
  expect(about.limits.join(' ')).not.toMatch(/restitution fitted/);
});

describe('refuses to calibrate', () => {
  it.each([
    ['too few shots', [HEADER, ...ROWS], /at least 5 shots.*The file has 4 usable shots$/],
    [
      'shots with neither club speed nor flight',
      [HEADER, ...ROWS, ...ROWS].map((line) => line.replace(/^[^,]+,/, '').replace(/,[^,]+$/, '')),
      /at least 5 shots that have .*8 usable shots \(8 without club speed, 8 without carry, apex or descent angle\)$/,
    ],
  ])('%s', (name, lines, message) => {
    const file = join(scratch, `${name}.csv`);
    writeFileSync(file, `${lines.join('\n')}\n`);
    const run = ladder(`refused ${name}`, file, '--calibrate');
    expect(run.status).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr.trim()).toMatch(message);
    expect(run.stderr.trim().split('\n')).toHaveLength(1);
    expect(existsSync(run.out)).toBe(false);
  });
});
