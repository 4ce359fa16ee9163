import { existsSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { at, example, expectSelfContained, joined, num, type Ran, written } from './run.js';

const { run, csv } = example('log');
const { run: runLadder } = example('ladder');
const SLOW = 120_000;

describe('the speed log on its bundled data', () => {
  let ran: Ran;
  let json: unknown;
  let html: string;
  beforeAll(() => {
    ran = run();
    json = JSON.parse(written(ran, 'json'));
    html = written(ran, 'html');
  }, SLOW);

  it('ends well and says that the data are invented', () => {
    expect([ran.status, ran.stderr]).toEqual([0, '']);
    for (const shown of [ran.stdout, html, JSON.stringify(json)]) expect(shown).toMatch(/INVENTED DATA/);
  });

  it('says like the ladder how many shots and sessions show a gain', { timeout: SLOW }, () => {
    const shown = (text: string): string =>
      /To show a gain of club speed.*?show\)\./.exec(joined(text))?.[0] ?? '';
    const ladder = runLadder('examples/data/speed-log-demo.csv', '--bands', 'one');
    expect(shown(ran.stdout)).toMatch(/takes \d+ .* shots with each .* sessions of 10 shots before/);
    expect(shown(ladder.stdout)).toBe(shown(ran.stdout));
  });

  it('finds the gain that was put in, within its interval, and does not promise more', () => {
    expect(at(json, 'verdict')).toBe('gain');
    const change = at(json, 'change of club speed (mph)');
    // The generator: 92.4 + 4.6 (1 − exp(−days/34)), averaged over the days of the four sessions at each end.
    const put = (days: readonly number[]): number =>
      days.reduce((sum, day) => sum + 92.4 + 4.6 * (1 - Math.exp(-day / 34)), 0) / days.length;
    const gain = put([63, 70, 77, 84]) - put([0, 7, 13, 21]);
    expect(num(change, 'low')).toBeLessThan(gain);
    expect(num(change, 'high')).toBeGreaterThan(gain);
    const half = (num(change, 'high') - num(change, 'low')) / 2;
    expect(half).toBeCloseTo(num(json, 'least change shown (mph)'), 1);
    expect(num(json, 'next target', 'step (mph)')).toBeLessThanOrEqual(3);
  });

  it('splits the change of carry into parts that add up', () => {
    const split = at(json, 'change of carry (yd)');
    const parts = Object.values(at(split, 'parts') as Record<string, { value: number }>);
    const sum = parts.reduce((total, { value }) => total + value, 0);
    expect(Math.abs(sum - num(split, 'modelled', 'value'))).toBeLessThan(0.3);
    const rest = num(split, 'measured', 'value') - num(split, 'modelled', 'value');
    expect(num(split, 'not explained', 'value')).toBeCloseTo(rest, 0);
  });

  it('sees that direction scatters more, and the misread club speed', () => {
    expect(at(json, 'scatter', 'launch direction (deg)', 'verdict')).toBe('grew');
    expect(at(json, 'scatter', 'club speed (mph)', 'verdict')).toBe('not-shown');
    expect(at(json, 'odd shots')).toContainEqual(expect.stringMatching(/^far apart.*club speed 110/));
  });

  it('shows cautions, and no effect of overspeed training', () => {
    for (const shown of [html, joined(ran.stdout), JSON.stringify(json)]) {
      expect(shown).toMatch(/Warm up first/);
      expect(shown).toMatch(/rest between speed sessions/);
      expect(shown).toMatch(/Stop at pain/);
      expect(shown).toMatch(/Children, older players/);
      expect(shown).toMatch(/qualified coach/);
      expect(shown).toMatch(/no peer-reviewed effect size was found/);
    }
  });

  it('writes a page that needs nothing but itself', () => {
    expectSelfContained(html, 3);
    for (const title of ['Club speed over time', 'Scatter of the last', 'What changed the carry']) {
      expect(html).toContain(`<title>${title}`);
    }
  });
});

describe('the speed log on files of its user', () => {
  const rows = (days: number, gain: number): string[] =>
    Array.from({ length: days }, (_, day) =>
      [-0.6, 0.2, 0.5].map((off) => `day ${day},${95 + gain * day + off + 0.3 * (day % 3)}`),
    ).flat();

  it('judges club speed alone, by the names of sessions', { timeout: SLOW }, () => {
    const ran = run(csv(['session,club speed (mph)', ...rows(8, 1)].join('\n')), '--json');
    expect(ran.status).toBe(0);
    const json: unknown = JSON.parse(ran.stdout);
    expect(json).toEqual(JSON.parse(written(ran, 'json')));
    expect(at(json, 'verdict')).toBe('gain');
    expectSelfContained(written(ran, 'html'), 2);
  });

  it('says that two sessions cannot show a gain, and uses the good rows of a broken file', {
    timeout: SLOW,
  }, () => {
    const ran = run(csv(['session,club speed (mph)', ...rows(2, 5), 'day 1,fast', 'day 1,400'].join('\n')));
    expect(ran.status).toBe(1);
    expect(ran.stderr).toMatch(/8 rows read, 6 used, 2 left out/);
    const shown = joined(ran.stdout);
    expect(shown).toContain('line 8, column "club speed (mph)": "fast" is not a number');
    expect(shown).toContain('line 9, column "club speed (mph)": 400 mph is impossible');
    expect(shown).toMatch(/Is the gain real\? It cannot be said: 2 sessions/);
    expectSelfContained(written(ran, 'html'), 2);
  });

  it.each([
    ['an empty file', '', /the file is empty/],
    ['a file without club speed', 'carry (yd)\n230\n', /line 1: a shot needs club speed/],
    ['one session only', 'session,club speed (mph)\na,95\na,96\n', /needs two sessions or more/],
  ])('does nothing with %s', { timeout: SLOW }, (_name, text, message) => {
    const ran = run(csv(text));
    expect([ran.status, ran.stdout]).toEqual([2, '']);
    expect(ran.stderr).toMatch(message);
    expect(existsSync(ran.out)).toBe(false);
  });

  it('refuses a block that is no number or too long, and prints help', { timeout: SLOW }, () => {
    expect(run('--block', 'all').stderr).toMatch(/--block needs a whole number/);
    expect(run('--block', '9').stderr).toMatch(/options\.block/);
    expect(run('--help').stdout).toMatch(/Usage: npx fairflight log \[file\.csv\] \[options\]/);
  });
});
