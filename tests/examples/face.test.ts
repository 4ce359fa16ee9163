import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { FaceMap, PatternReport } from 'fairflight/session';
import { afterAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'face-'));
afterAll(() => rmSync(scratch, { recursive: true }));

let out = '';
let runs = 0;
/** Runs the face map as a user does, each time with a folder of its own for the output. */
function face(...args: readonly string[]): { status: number | null; stdout: string; stderr: string } {
  runs += 1;
  out = join(scratch, `out-${runs}`);
  const command = ['--import', 'tsx', 'examples/face.ts', '--out', out, '--full', ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  return { status, stdout, stderr };
}

function file(name: string, text: string): string {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
}

interface Json {
  readonly map: FaceMap;
  readonly report?: PatternReport;
  readonly strikes: readonly { readonly shot: number }[];
  readonly unplaced: readonly { readonly shot: number; readonly why: string }[];
}
const json = (): Json => JSON.parse(written({ out }, 'json')) as Json;
const html = (): string => written({ out }, 'html');

describe('the face map', () => {
  it('places the invented strikes where they were made, and leaves out the misread', () => {
    const { status, stdout, stderr } = face();
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/INVENTED DATA/);
    const { report, strikes, unplaced } = json();
    // Made 13 mm toward the toe and 6 mm low, spread 7 and 5 mm (examples/data/make-face-demo.ts).
    const centre = report?.pattern.centre;
    expect(Math.abs(1000 * (centre?.toe ?? 0) - 13)).toBeLessThan(3 * Math.hypot(7, 3) * Math.sqrt(1 / 25));
    expect(Math.abs(1000 * (centre?.high ?? 0) + 6)).toBeLessThan(3 * Math.hypot(5, 3) * Math.sqrt(1 / 25));
    expect(strikes).toHaveLength(25);
    expect(unplaced.map(({ shot }) => shot)).toEqual([17]);
    expect(unplaced[0]?.why).toMatch(/the ball speed probably reads too high/);
    expect(report?.moves.map(({ move }) => move)).toContain('stance');
    // Strikes toward the toe: closer to the ball they move toward the heel, which is a minus.
    expect(report?.moves.find(({ move }) => move === 'stance')?.change).toBeLessThan(0);
    expect(stdout).toMatch(/Stand a little closer to the ball \(pattern \d+ mm toward the heel\): \+/);
    // Strikes worked out from readings: their height rests on the spin, so there is no word on the tee.
    expect(stdout).not.toMatch(/Tee the ball/);
    expect(stdout).toMatch(/qualified fitter/);
    expect(html()).toMatch(/<svg/);
    expect(html()).not.toMatch(/https?:\/\/(?!www\.w3\.org)|src=|NaN|undefined/);
  });

  it('maps the face alone, for either hand', () => {
    const args = ['--empty', '--club-speed', '100mph', '--dynamic-loft', '14deg', '--units', 'metric'];
    expect(face(...args, '--face', '1deg').status).toBe(0);
    const right = json().map;
    expect(json().report).toBeUndefined();
    expect(face(...args, '--face', '-1deg', '--hand', 'left').status).toBe(0);
    const left = json().map;
    right.side.forEach((side, i) => {
      expect(left.side[i]).toBeCloseTo(-side, 6);
    });
    expect(html()).toMatch(/km\/h/);
  });

  it('takes strikes measured on the face, and says which rows it could not use', () => {
    const strikes = file('tape.csv', 'toe (mm),high (mm)\n12,-4\n10,0\nsome,3\n300,0\n,\n8,-2\n');
    const { status, stdout } = face('--strikes', strikes);
    expect(status).toBe(1);
    expect(stdout).toMatch(/3 strikes measured on the face/);
    expect(stdout).toMatch(/line 4: "some, 3" is not two numbers/);
    expect(stdout).toMatch(/line 5: "300, 0" is not on the face/);
    expect(1000 * (json().report?.pattern.centre.toe ?? 0)).toBeCloseTo(10, 9);
  });

  it('takes columns of strikes in a file of shots as measured', () => {
    const shots = file(
      'shots.csv',
      'club speed (mph),attack angle (deg),dynamic loft (deg),ball speed (mph),launch angle (deg),spin (rpm),toe (in),high (in)\n95,0,14,139,12.1,2400,0.5,0\n95,0,14,138,12.1,2400,0.3,0.1\n',
    );
    expect(face(shots).status).toBe(0);
    expect(json().strikes).toHaveLength(2);
    expect(1000 * (json().report?.pattern.centre.toe ?? 0)).toBeCloseTo(0.4 * 25.4, 9);
  });

  it('does not place what the readings leave open', () => {
    const shots = file(
      'few.csv',
      'club speed (mph),ball speed (mph),launch angle (deg),spin (rpm)\n100,139,12,2600\n',
    );
    expect(face(shots).stdout).toMatch(/Shot 1: The readings leave 2 places/);
  });

  it.each([
    [['--units', 'furlongs'], /--units must be/],
    [['--strikes', 'nowhere.csv'], /cannot read/],
    [['--hand', 'both'], /--hand must be/],
    [['--club-speed', '95'], /needs a number with its unit/],
    [['a.csv', 'b.csv'], /one file at a time/],
    [['--empty', '--strikes', 'x.csv'], /--empty takes no file/],
    [['--empty', '--dynamic-loft', '85deg'], /dynamicLoft must be between/],
  ])('refuses %j', (args, message) => {
    const { status, stderr } = face(...args);
    expect(status).toBe(2);
    expect(stderr).toMatch(message);
  });

  it('refuses strikes without units or without any', () => {
    expect(face('--strikes', file('bare.csv', 'toe,high\n1,2\n')).stderr).toMatch(/needs a unit in brackets/);
    expect(face('--strikes', file('other.csv', 'x,y\n1,2\n')).stderr).toMatch(/needs the columns toe/);
    expect(face('--strikes', file('none.csv', 'toe (mm),high (mm)\nx,y\n')).stderr).toMatch(
      /no usable strike/,
    );
  });
});
