import { existsSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { at, example, expectSelfContained, joined, num, type Ran, written } from './run.js';

const { run, csv } = example('tradeoff');
const SLOW = 180_000;
const FEW = ['--shots', '128', '--holes', '400,430yd'] as const;

describe('faster or straighter on its bundled data', () => {
  let ran: Ran;
  let json: unknown;
  let html: string;
  let speeds: readonly unknown[];
  beforeAll(() => {
    ran = run('--shots', '256');
    json = JSON.parse(written(ran, 'json'));
    html = written(ran, 'html');
    speeds = at(json, 'speeds') as readonly unknown[];
  }, SLOW);

  it('ends well and says that the data are invented', () => {
    expect([ran.status, ran.stderr]).toEqual([0, '']);
    for (const shown of [ran.stdout, html, JSON.stringify(json)]) expect(shown).toMatch(/INVENTED DATA/);
  });

  it('says the answer in a sentence, and how roughly it is known', () => {
    expect(at(json, 'answer')).toMatch(/^(Faster|Straighter)/);
    for (const shown of [html, joined(ran.stdout)]) {
      expect(shown).toContain(at(json, 'answer') as string);
      expect(shown).toMatch(/known so roughly that the speed where more stops paying may lie anywhere/);
    }
  });

  it('sees the scatter grow with speed as it was put in', () => {
    // The generator: face scatter 1.2° + 0.4° × (speed − 95)/17 mph, 2 % a mph at 95 mph, and strike scatter growing too.
    const trend = at(json, 'own growth of direction scatter a mph (share)');
    expect(num(trend, 'low')).toBeLessThan(0.02);
    expect(num(trend, 'high')).toBeGreaterThan(0.02);
    expect(at(trend, 'shown')).toBe(true);
    const face = num(json, 'scatter', 'face angle (deg)');
    expect(face).toBeGreaterThan(0.9);
    expect(face).toBeLessThan(1.8);
    const side = at(json, 'sideways scatter at landing');
    const ratio = num(side, 'modelled (yd)') / num(side, 'measured (yd)');
    // Ten shots know a standard deviation to a factor of 1.8 (95 %).
    expect(ratio).toBeGreaterThan(1 / 1.8);
    expect(ratio).toBeLessThan(1.8);
  });

  it('trades distance for fairways: faster goes further and misses more', () => {
    const columns = (key: string): number[] => speeds.map((each) => num(each, key));
    const total = columns('total (yd)');
    const fairways = columns('fairways (share)');
    expect([...total].sort((a, b) => a - b)).toEqual(total);
    expect(fairways[0]).toBeGreaterThan(fairways[fairways.length - 1] ?? 1);
    expect(num(json, 'strokes for 10 % less scatter', 'value')).toBeLessThan(0);
    expect(at(json, 'scatter that cancels one mph (of now)', 'kind')).toBe('within');
    const now = speeds.find((each) => num(each, 'direction scatter (of now)') === 1);
    expect(num(now, 'strokes against now', 'value')).toBe(0);
    expect(num(now, 'scatter allowed (of now)', 'factors', 0, 'value')).toBe(1);
  });

  it('never finds less speed best when scatter grows less', () => {
    const ends = at(json, 'best at the ends of the trend');
    const least = num(ends, 'least growth', 'club speed (mph)');
    const most = num(ends, 'most growth', 'club speed (mph)');
    expect(least).toBeGreaterThanOrEqual(most);
    expect(num(json, 'best with the same scatter', 'club speed (mph)')).toBeGreaterThanOrEqual(least);
  });

  it('writes a page that needs nothing but itself, with cautions', () => {
    expectSelfContained(html, 3);
    for (const title of ['Scatter that pays', 'Strokes against now', 'Where tee shots come to rest']) {
      expect(html).toContain(`<title>${title}`);
    }
    expect(html).toMatch(/stop at pain/);
  });
});

describe('faster or straighter on files of its user', () => {
  const HEADER =
    'club speed (mph),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg)';
  const GOOD = [
    '95.1,139.5,12.1,1.2,2600,3',
    '94.6,138.4,11.8,-2.1,2750,-5',
    '95.4,140.2,12.9,0.4,2500,1',
    '94.9,138.9,11.2,3.0,2800,6',
    '95.2,139.0,12.4,-0.9,2650,-2',
    '95.0,138.1,12.0,1.1,2700,2',
  ];

  it('takes one speed, constant scatter, metric units and a professional', { timeout: SLOW }, () => {
    const args = ['--units', 'metric', '--score', 'professional', '--trees', 'none', '--bounds', '35m'];
    const ran = run(csv([HEADER, ...GOOD].join('\n')), ...args, ...FEW, '--json');
    expect(ran.status).toBe(0);
    const json: unknown = JSON.parse(ran.stdout);
    expect(at(json, 'about', 'law')).toBe('scatter stays the same degrees');
    expect(at(json, 'about', 'course')).toMatch(/2 driving holes.*out of bounds 35 m.*a professional/);
    expect((at(json, 'speeds') as unknown[]).map((each) => num(each, 'direction scatter (of now)'))).toEqual(
      Array.from({ length: 9 }, () => 1),
    );
    expectSelfContained(written(ran, 'html'), 3);
  });

  it('finds no speed worth a scatter that grows by 20 % a mph, and uses the good rows of a broken file', {
    timeout: SLOW,
  }, () => {
    const ran = run(csv([HEADER, ...GOOD, '95,soft,12,0,2600,0'].join('\n')), '--law', '20%', ...FEW);
    expect(ran.status).toBe(1);
    expect(joined(ran.stdout)).toContain('line 8, column "ball speed (mph)": "soft" is not a number');
    expect(at(JSON.parse(written(ran, 'json')), 'answer')).toMatch(/^Straighter/);
  });

  it.each([
    ['an empty file', '', [], /the file is empty/],
    ['too few shots', [HEADER, ...GOOD.slice(0, 4)].join('\n'), [], /4 of 4 shots have .*5 are needed/],
    [
      'shots of one speed where a trend is asked for',
      [HEADER, ...GOOD].join('\n'),
      ['--law', 'measured'],
      /needs shots at two speeds/,
    ],
    ['a law that is none', HEADER, ['--law', 'lots'], /--law needs a number/],
    ['a score that is none', HEADER, ['--score', 'good'], /--score must be/],
    ['a hole that is too long', [HEADER, ...GOOD].join('\n'), ['--holes', '900yd'], /hole\[0\]\.length/],
  ])('does nothing with %s', { timeout: SLOW }, (_name, text, args, message) => {
    const ran = run(csv(text), ...args);
    expect([ran.status, ran.stdout]).toEqual([2, '']);
    expect(ran.stderr).toMatch(message);
    expect(existsSync(ran.out)).toBe(false);
  });
});
