import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { written } from './run.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), 'ladder-'));
afterAll(() => rmSync(scratch, { recursive: true }));

interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
  readonly out: string;
}

let runs = 0;
/** Runs the ladder as a user does, with a folder of its own for the output. */
function ladder(...args: readonly string[]): Ran {
  runs += 1;
  const out = join(scratch, `out-${runs}`);
  const command = ['--import', 'tsx', 'examples/ladder.ts', ...args, '--full', '--out', out];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, { cwd: root, encoding: 'utf8' });
  return { status, stdout, stderr, out };
}

function csv(name: string, text: string): string {
  const path = join(scratch, name);
  writeFileSync(path, text);
  return path;
}

const read = (run: Ran): unknown => JSON.parse(written(run, 'json'));

type Path = readonly (string | number)[];
/** The value at a path of the JSON; fails when there is none. */
function at(json: unknown, ...path: Path): unknown {
  const value = path.reduce<unknown>(
    (kept, key) =>
      typeof kept === 'object' && kept !== null ? (kept as Record<string | number, unknown>)[key] : undefined,
    json,
  );
  if (value === undefined) throw new Error(`the JSON has no ${path.join(' / ')}`);
  return value;
}
const list = (json: unknown, ...path: Path): readonly unknown[] => at(json, ...path) as readonly unknown[];
const num = (json: unknown, ...path: Path): number => at(json, ...path) as number;
const text = (json: unknown, ...path: Path): string => at(json, ...path) as string;

describe('the ladder on its bundled data', () => {
  let run: Ran;
  let json: unknown;
  let html: string;
  beforeAll(() => {
    run = ladder();
    json = read(run);
    html = written(run, 'html');
  }, 120_000);

  it('ends well and says that the data are invented', () => {
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/^INVENTED DATA/);
    expect(html).toMatch(/INVENTED DATA/);
    expect(text(json, 'about', 'comments', 0)).toMatch(/INVENTED DATA/);
    expect(run.stdout).toMatch(/49 rows read, 49 used, 0 left out/);
  });

  it('finds the five speeds', () => {
    const speeds = list(json, 'bands').map((band) => num(band, 'measured', 'club speed (mph)', 'mean'));
    expect(speeds).toHaveLength(5);
    // The speeds the generator aimed at.
    for (const [i, aimed] of [78, 87, 95, 104, 112].entries()) {
      expect(Math.abs((speeds[i] ?? 0) - aimed)).toBeLessThan(1.5);
    }
  });

  it('gives every quantity of every band with its interval', () => {
    for (const band of list(json, 'bands')) {
      for (const name of [
        'club speed (mph)',
        'ball speed (mph)',
        'smash factor',
        'launch angle (deg)',
        'spin (rpm)',
        'carry (yd)',
        'total (yd)',
        'apex (ft)',
        'descent angle (deg)',
        'side (yd)',
      ]) {
        const mean = num(band, 'measured', name, 'mean');
        expect(num(band, 'measured', name, 'low')).toBeLessThan(mean);
        expect(mean).toBeLessThan(num(band, 'measured', name, 'high'));
      }
    }
  });

  it('tells the toe strike, the heel strike and the misread apart, and leaves them out of the means', () => {
    const outliers = list(json, 'odd shots').filter((odd) => text(odd, 'verdict') === 'outlier');
    const hints = outliers.map((odd) => text(odd, 'hint'));
    expect(hints.some((hint) => /toward the toe/.test(hint))).toBe(true);
    expect(hints.some((hint) => /toward the heel/.test(hint))).toBe(true);
    expect(hints.some((hint) => /a misread.*the ball speed is the doubtful reading/.test(hint))).toBe(true);
    const left = list(json, 'bands').map((band) => num(band, 'shots') - num(band, 'used'));
    expect(left.reduce((sum, each) => sum + each, 0)).toBe(outliers.length);
  });

  it('splits every step into parts that add up to the carry gained', () => {
    const steps = list(json, 'steps');
    expect(steps).toHaveLength(4);
    for (const step of steps) {
      const parts = Object.values(at(step, 'parts of the carry (yd)') as Record<string, { value: number }>);
      const sum = parts.reduce((total, { value }) => total + value, 0);
      // Six parts rounded to 0.1 yd.
      expect(Math.abs(sum - num(step, 'carry (yd)'))).toBeLessThan(0.4);
      const rate = at(step, 'carry per speed (yd per mph)');
      expect(num(rate, 'low')).toBeLessThan(num(rate, 'value'));
      expect(num(rate, 'value')).toBeLessThan(num(rate, 'high'));
    }
  });

  it('advises less loft the faster the band, as the trade does (common practice, no source)', () => {
    const lofts = list(json, 'bands').map((band) => num(band, 'best loft', 'best dynamic loft (deg)'));
    expect([...lofts].sort((a, b) => b - a)).toEqual(lofts);
    for (const band of list(json, 'bands')) {
      const best = at(band, 'best loft');
      const change = num(best, 'nominal loft advised (deg)') - num(best, 'nominal loft now (deg)');
      const loft = list(band, 'advice', 'changes').find((each) => text(each, 'change') === 'loft');
      const advised = loft !== undefined && text(loft, 'verdict') === 'advised';
      expect(change !== 0).toBe(advised);
      // No further than a fitting goes, and toward the best.
      const toBest = num(best, 'best dynamic loft (deg)') - num(best, 'dynamic loft now (deg)');
      expect(Math.abs(change)).toBeLessThanOrEqual(2);
      if (advised) expect(Math.sign(change)).toBe(Math.sign(toBest));
    }
  });

  it('writes a page that needs nothing but itself', () => {
    expect(html).not.toMatch(/https?:/i);
    expect(html).not.toMatch(/<(script|link|img|iframe|object|embed|base)\b/i);
    expect(html).not.toMatch(/@import|url\((?!#)|\b(src|href|srcset)=/i);
    expect(html.match(/<figure>/g)).toHaveLength(4);
    for (const title of [
      'Side view',
      'Carry against club speed',
      'Carry over launch and spin',
      'Landing points',
    ]) {
      expect(html).toContain(`<title>${title}`);
    }
    expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
    // A page that is kept says of which day it is.
    expect(html).toContain('speed-ladder-demo.csv, 2026-03-11: 49 rows read');
  });

  it('shows cautions and limits on the page, in the table and in the JSON', () => {
    for (const shown of [html, run.stdout.replaceAll(/\s+/g, ' '), JSON.stringify(json)]) {
      expect(shown).toMatch(/warm up first/);
      expect(shown).toMatch(/stop at pain/);
      expect(shown).toMatch(/qualified fitter/);
      expect(shown).toMatch(/local rules/);
    }
    expect(html).toMatch(/±25 %/);
  });
});

describe('the ladder on files of its user', () => {
  const HEADER = 'club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd)';
  const GOOD = ['96,142,12.4,2600,232', '95.5,141,11.9,2500,231', '97,144,12.0,2550,236'];

  it('uses the good rows of a broken file, and says how many were left out and why', () => {
    const rows = [
      GOOD[0],
      '96,abc,12,2600,232',
      '96,172.8,12,2600,',
      GOOD[1],
      '96,142,12,-200,232',
      '96,142',
      GOOD[2],
    ];
    const run = ladder(csv('broken.csv', `\uFEFF${HEADER}\r\n${rows.join('\r\n')}\r\n`));
    expect(run.status).toBe(1);
    expect(run.stderr).toBe(
      'ladder: 7 rows read, 3 used, 4 left out (text where a number should be: 1; values that contradict each other: 1; an impossible value: 1; a broken row: 1)\n',
    );
    const shown = run.stdout.replaceAll(/\s+/g, ' ');
    expect(shown).toContain('line 3, column "ball speed (mph)": "abc" is not a number');
    expect(shown).toContain('line 4, column "ball speed (mph)": smash factor 1.80');
    expect(shown).toContain('line 6, column "spin (rpm)": -200 rpm is impossible');
    expect(shown).toContain('line 7: the row has 2 fields where the header has 5');
    const input = at(read(run), 'input');
    expect([at(input, 'rows'), at(input, 'used'), at(input, 'left out')]).toEqual([7, 3, 4]);
    expect(at(input, 'rejected')).toHaveLength(4);
    const html = written(run, 'html');
    expect(html).toContain('4 left out');
    expect(html).not.toMatch(/NaN|undefined|Infinity/);
  });

  it.each([
    ['carry (ft)', 'line 1, column "carry (ft)": the values contradict the flight of the same shots'],
    ['carry (yd)', undefined],
  ])('sets a column aside whose unit betrays itself beside the flights: %s', (header, complaint) => {
    // Carries as the model has them, within 2 yd, in yards.
    const rows = ['96,142,12.4,2600,225', '95.5,141,11.9,2500,220', '97,144,12.0,2550,228'];
    const run = ladder(csv('units.csv', [HEADER.replace('carry (yd)', header), ...rows].join('\n')));
    const shown = run.stdout.replaceAll(/\s+/g, ' ');
    expect(run.status).toBe(complaint === undefined ? 0 : 1);
    if (complaint === undefined) expect(shown).not.toContain('left out: column');
    else {
      expect(shown).toContain(complaint);
      expect(JSON.stringify(at(read(run), 'bands'))).not.toContain('"model less measured":{"carry');
    }
  });

  it.each([
    ['latin1', 'the file is read as windows-1252'],
    ['utf16le', 'the file is read as utf-16le'],
  ] as const)('reads what spreadsheets save in %s, and says so', (encoding, note) => {
    const text = `${encoding === 'utf16le' ? '\uFEFF' : ''}${HEADER.replace('(deg)', '(°)')}\n${GOOD.join('\n')}\n`;
    const path = join(scratch, `${encoding}.csv`);
    writeFileSync(path, Buffer.from(text, encoding));
    const run = ladder(path);
    expect(run.status).toBe(0);
    expect(run.stdout).toContain(`note: ${note}`);
    expect(run.stdout).toContain('3 rows read, 3 used');
  });

  it('is as unsure of a step as its few shots are', () => {
    const slow = ['86,127,12.4,2600,190', '87,128.5,11.9,2500,191'];
    const step = (rows: readonly string[]): { rate: unknown; short: string } => {
      const run = ladder(csv('steps.csv', [HEADER, ...rows].join('\n')), '--bands', '80,90,100mph');
      const rate = at(read(run), 'steps', 0, 'carry per speed (yd per mph)');
      return { rate, short: run.stdout.replaceAll(/\s+/g, ' ') };
    };
    const two = step([...slow, '95.5,141,11.9,2500,231', '97,144,12.0,2550,236']);
    // Two shots know their own mean to ±12.7 s/√2 only (Student); the ends of what they measured are far closer.
    expect(num(two.rate, 'high') - num(two.rate, 'low')).toBeGreaterThan(3);
    const one = step([...slow, '96,142,12.4,2600,232']);
    expect(one.rate).toEqual({ value: num(one.rate, 'value') });
    expect(one.short).toMatch(
      /one band has a single shot, .* whether more speed paid cannot be said: [\d.]+ yd per mph/,
    );
  });

  it('names the lines of shots that fall into no band', () => {
    const run = ladder(csv('bands.csv', [HEADER, ...GOOD].join('\n')), '--bands', '95.9,96.5mph');
    expect(run.stdout).toContain('in no band, line 3: its club speed, 95.5 mph, lies in no band.');
    expect(run.stdout).toContain('in no band, line 4:');
    // One shot shows no spread.
    expect(run.stdout).not.toMatch(/±0\.0\)/);
    const html = written(run, 'html');
    expect(html).toContain('in no band, line 3');
  });

  it.each([
    ['an empty file', '', /the file is empty/],
    ['a file without known columns', 'a,b\n1,2\n', /line 1: a shot needs/],
    [
      'a file of bad rows only',
      `${HEADER}\n96,x,12,2600,232\n`,
      /no usable shot in .*line 2, column "ball speed \(mph\)": "x" is not a number/s,
    ],
    [
      'several clubs',
      `${HEADER},club\n${GOOD[0]},driver\n${GOOD[1]},spoon\n`,
      /several clubs \("driver", "spoon"\); choose one with --club/,
    ],
  ])('does nothing with %s', (_name, text, message) => {
    const run = ladder(csv('bad.csv', text));
    expect(run.status).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr).toMatch(message);
    expect(existsSync(run.out)).toBe(false);
  });

  it('works from club data alone, and says that launches are modelled', () => {
    const rows = [80, 80.6, 81, 95, 95.4, 96].map((speed) => `${speed},0.5,10.5`);
    const run = ladder(
      csv('club.csv', ['club speed (mph),attack angle (deg),loft (deg)', ...rows].join('\n')),
    );
    expect(run.status).toBe(0);
    expect(run.stdout.replaceAll(/\s+/g, ' ')).toMatch(
      /launch of 6 shots was not measured and comes from the strike model/,
    );
    expect(at(read(run), 'bands')).toHaveLength(2);
  });

  it('says which shots never flew', () => {
    const topped = '95.2,138,-3,1500,';
    const run = ladder(csv('topped.csv', [HEADER, ...GOOD, topped].join('\n')), '--bands', 'one');
    expect(run.status).toBe(0);
    expect(run.stdout.replaceAll(/\s+/g, ' ')).toMatch(/1 shot was topped and never flew/);
  });

  it('works from ball data alone, and shows no best loft', () => {
    const text =
      'ball speed (km/h);launch angle (deg);spin (rpm);carry (m)\n230,5;12,1;2500;205,2\n232,1;11,0;2700;204\n';
    const run = ladder(csv('ball.csv', text));
    expect(run.status).toBe(0);
    expect(run.stdout).toMatch(/no best loft is shown, since club speed was not measured/);
    expect(run.stdout.replaceAll(/\s+/g, ' ')).toMatch(
      /Club speed was not measured: .* cannot be said\. A column "band" groups the shots/,
    );
  });
});

describe('the command line of the ladder', () => {
  it('prints help', () => {
    const { status, stdout } = ladder('--help');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Usage: npx fairflight ladder \[file\.csv\] \[options\]/);
    expect(stdout).toMatch(/--altitude 1200m/);
  });

  it.each([
    [['--altitude', '1200'], /--altitude needs a number with its unit, like 1200m; got "1200"/],
    [['--altitude', '1200parsec'], /scene\.air\.altitude has the unit "parsec"/],
    [['--turf', 'concrete'], /scene\.turf must be one of baked, firm, normal, soft, wet, artificial/],
    [['--hand', 'both'], /--hand must be right or left/],
    [['--loft', '10.5'], /--loft needs a number with its unit, like 10\.5deg; got "10\.5"/],
    [
      ['--bands', '85,75mph'],
      /--bands must be .* edges or more that rise, such as 75,85,95mph; got "85,75mph"/,
    ],
    [['--bands', '75'], /--bands must be .*; got "75"/],
    [
      ['--bands', '200,210mph'],
      /--bands: no shot falls into a band \(its club speed, 76\.9 mph, lies in no band/,
    ],
    [['--bands', 'labels'], /--bands: no shot falls into a band \(it carries no label\)/],
    [['--map-band', '9'], /--map-band: there is no band 9; there are 5 bands/],
    [['--frobnicate'], /Unknown option '--frobnicate'/],
    [['no-such-file.csv'], /cannot read no-such-file\.csv/],
  ] as const)('refuses %j in one line', (args, message) => {
    const { status, stdout, stderr } = ladder(...args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(message);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });

  it('takes hand, turf, altitude, units and prints JSON', () => {
    const run = ladder(
      '--hand',
      'left',
      '--turf',
      'soft',
      '--altitude',
      '1200m',
      '--units',
      'metric',
      '--json',
    );
    expect(run.status).toBe(0);
    const json = JSON.parse(run.stdout);
    expect(json).toEqual(read(run));
    expect(at(json, 'about', 'hand')).toBe('left');
    expect(text(json, 'about', 'conditions')).toMatch(/soft turf/);
    const carry = num(json, 'bands', 4, 'model', 'carry (m)');
    const less = num(json, 'bands', 4, 'model', 'model less measured', 'carry (m)', 'mean');
    // Thinner air by 11 %: the model now carries further than the sea-level "measurement", by 2 to 10 %.
    expect(less / carry).toBeGreaterThan(0.02);
    expect(less / carry).toBeLessThan(0.1);
    // Toe and heel change places for a left-handed player.
    const toe = list(json, 'odd shots').find((odd) => num(odd, 'line') === 29);
    expect(text(toe, 'hint')).toMatch(/toward the heel/);
  });
});
