import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestLoft } from '../../src/index.js';
import {
  type ChangeRanking,
  type MeasuredShot,
  type RankedChange,
  rankChanges,
} from '../../src/session/index.js';
import { strike } from '../../src/strike/strike.js';
import {
  type AngularSpeed,
  degrees,
  mph,
  rpm,
  type Speed,
  si,
  toDegrees,
  toYards,
  yards,
} from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';

/** Records drawn by the property; `RECORDS=10000` draws as many. */
const { RECORDS: GIVEN = '200' } = process.env;
const RECORDS = Number(GIVEN);

interface Drawn {
  readonly speed: number;
  readonly attack: number;
  readonly loft: number;
  readonly count: number;
  /** Ball speed over that of a centred strike. */
  readonly share?: number;
  /** Spin over the model's. */
  readonly spin?: number;
  readonly without?: readonly (keyof MeasuredShot)[];
}

const wobble = (i: number, k: number): number => Math.sin(1.7 * i * (k + 1) + k * k);

/** Drives of an invented player, wobbling about the model's strike. */
function drives({
  speed,
  attack,
  loft,
  count,
  share = 0.985,
  spin = 1,
  without = [],
}: Drawn): MeasuredShot[] {
  const delivery = { clubSpeed: mph(speed), attackAngle: degrees(attack), dynamicLoft: degrees(loft) };
  const { launch } = strike(delivery);
  return Array.from({ length: count }, (_, i) => {
    const shot: MeasuredShot = {
      clubSpeed: mph(speed + 1.2 * wobble(i, 1)),
      attackAngle: degrees(attack + wobble(i, 2)),
      ballSpeed: si<Speed>(launch.ballSpeed * share * (1 + 0.015 * wobble(i, 3))),
      launchAngle: si(launch.launchAngle + degrees(1.2 * wobble(i, 4))),
      spinRate: si<AngularSpeed>(launch.spinRate * spin * (1 + 0.08 * wobble(i, 5))),
      launchDirection: degrees(2 * wobble(i, 6)),
      spinAxisTilt: degrees(5 * wobble(i, 7)),
    };
    return Object.fromEntries(
      Object.entries(shot).filter(([name]) => !without.includes(name as 'ballSpeed')),
    );
  });
}

const bestFor = (speed: number, attack: number): number =>
  toDegrees(bestLoft({ clubSpeed: mph(speed), attackAngle: degrees(attack) }).dynamicLoft);
const changeOf = ({ changes }: ChangeRanking, name: RankedChange['change']): RankedChange | undefined =>
  changes.find(({ change }) => change === name);
const advised = (ranking: ChangeRanking): readonly string[] =>
  ranking.changes.flatMap(({ change, verdict }) => (verdict === 'advised' ? [change] : []));

describe('rankChanges', () => {
  const down = { speed: 94, attack: -5, loft: bestFor(94, -5), count: 14 };

  it('tells a player who hits 5° down on the ball with a loft that fits to hit up, not to change the loft', () => {
    const ranking = rankChanges(drives(down));
    expect(advised(ranking)).toContain('attack-angle');
    expect(advised(ranking)).not.toContain('loft');
    const up = changeOf(ranking, 'attack-angle');
    // `bestLoft` at −5° and −2.5° says what the step is worth once the loft is fitted.
    const far = (attack: number): number =>
      bestLoft({ clubSpeed: mph(94), attackAngle: degrees(attack) }).distance;
    expect(Math.abs((up?.carry.value ?? 0) - (far(-2.5) - far(-5)))).toBeLessThan(yards(1.5));
  });

  it('gives the same player no other advice without the column of attack angle, but asks for it', () => {
    const ranking = rankChanges(drives({ ...down, without: ['attackAngle'] }));
    expect(ranking.readings.attackAngle).toBe(0);
    expect(advised(ranking)).toEqual([]);
    expect(changeOf(ranking, 'attack-angle')).toMatchObject({
      verdict: 'measure-first',
      measure: ['attackAngle'],
    });
  });

  it('finds what is left for 125 mph at −3°', () => {
    const ranking = rankChanges(drives({ speed: 125, attack: -3, loft: bestFor(125, -3), count: 14 }));
    expect(advised(ranking)).toContain('attack-angle');
  });

  it('does not take a ball with little spin for a mishit', () => {
    const shots = drives({ speed: 95, attack: 0, loft: 14, count: 14 }).map((shot, i) => ({
      ...shot,
      ballSpeed: si<Speed>(1.46 * (shot.clubSpeed ?? 0)),
      spinRate: rpm(1423 + 90 * wobble(i, 5)),
    }));
    const ranking = rankChanges(shots);
    expect(toYards(ranking.againstCentred?.ballSpeed.value ?? si(99))).toBeLessThan(4);
    expect(toYards(ranking.againstCentred?.spin.value ?? si(0))).toBeGreaterThan(10);
    expect(advised(ranking)).not.toContain('strike');
    expect(advised(ranking)).toContain('loft');
  });

  it('gives no advice on loft from two shots whose spins differ by 2,654 rpm', () => {
    const two = [-1, 1].map(
      (side): MeasuredShot => ({
        clubSpeed: mph(94.5 + 0.5 * side),
        ballSpeed: mph(136.5 + 0.5 * side),
        attackAngle: degrees(0),
        launchAngle: degrees(11.5 + 0.5 * side),
        spinRate: rpm(2600 + 1327 * side),
      }),
    );
    expect(advised(rankChanges(two))).toEqual([]);
  });

  it('advises a better strike where ball speed shows that there is one', () => {
    const strikeLost = changeOf(
      rankChanges(drives({ speed: 100, attack: 0, loft: 14, count: 14, share: 0.93 })),
      'strike',
    );
    expect(strikeLost?.verdict).toBe('advised');
    // Half of the way from 93 % to a centred strike.
    expect(strikeLost?.step).toBeCloseTo((1 / 0.93 - 1) / 2, 2);
  });

  it('finds more speed by training, last and apart, and never advises it', () => {
    for (const drawn of [down, { speed: 78, attack: 3, loft: bestFor(78, 3), count: 10 }]) {
      const { changes } = rankChanges(drives(drawn));
      expect(changes.at(-1)).toMatchObject({ change: 'speed', verdict: 'by-training' });
    }
  });

  it('leaves as it is what no step helps, and no step that costs is worth a change', () => {
    const up = rankChanges(drives({ speed: 100, attack: 5.5, loft: bestFor(100, 5.5), count: 14 }));
    expect(up.leave).toEqual(expect.arrayContaining(['loft', 'attack-angle']));
    // Hitting more up takes spin from a ball that has too little.
    const flat = rankChanges(drives({ speed: 96, attack: 2, loft: 12, count: 14, spin: 0.62 }));
    expect(flat.leave).toContain('attack-angle');
    expect(changeOf(flat, 'attack-angle')?.verdict).toBe('leave');
  });

  it('counts strokes and less scatter where a hole is given', () => {
    const hole = { length: yards(420), fairway: { width: yards(30) } };
    const { changes } = rankChanges(
      drives({ speed: 100, attack: 0, loft: 14, count: 14 }),
      {},
      { hole, draws: 100 },
    );
    expect(changes.every(({ strokes }) => strokes !== undefined)).toBe(true);
    expect(changes.map(({ change }) => change)).toContain('scatter');
  });

  it('flies the model that the scene names', () => {
    const shots = drives(down);
    expect(rankChanges(shots, { aerodynamics: 'naruo-2004' }).models).toEqual([]);
    expect(rankChanges(shots).models).toContain('fitted-modern');
  });

  it('advises neither loft nor attack angle for an iron', () => {
    const names = rankChanges(drives(down), {}, { clubhead: 'midIron' }).changes.map(({ change }) => change);
    expect(names).not.toContain('loft');
    expect(names).not.toContain('attack-angle');
  });

  it('refuses shots without a speed, and shots that no strike explains', () => {
    expect(caught(() => rankChanges([{ launchAngle: degrees(12) }]))).toMatchObject({ field: 'shots' });
    const straightUp = [
      { ballSpeed: mph(140), clubSpeed: mph(100), launchAngle: degrees(89), spinRate: rpm(2500) },
    ];
    expect(caught(() => rankChanges(straightUp))).toMatchObject({ field: 'shots', code: 'outside-range' });
  });
});

describe('no answer contradicts another', () => {
  const missing = fc.subarray(['clubSpeed', 'attackAngle', 'launchAngle', 'spinRate'] as const);
  const record = fc.record({
    speed: even(60, 138),
    attack: even(-5, 6),
    loft: even(9, 19),
    count: fc.integer({ min: 1, max: 20 }),
    share: even(0.9, 1.01),
    spin: even(0.6, 1.5),
    without: missing,
    maximise: fc.constantFrom('carry' as const, 'total' as const),
  });

  it(`in ${RECORDS} drawn records`, () => {
    fc.assert(
      fc.property(record, ({ maximise, ...drawn }) => {
        const ranking = rankChanges(drives(drawn), {}, { maximise, draws: 100 });
        const { worth, changes, againstCentred, leave } = ranking;
        const other = maximise === 'carry' ? 'total' : 'carry';
        for (const change of changes) {
          for (const { low, value, high } of [change.carry, change.total]) {
            expect(low <= value && value <= high).toBe(true);
          }
          const clear = change[maximise].value >= worth && change[maximise].low > 0;
          const harmless = change[other].high >= 0;
          if (/advised|by-training/.test(change.verdict)) expect(clear && harmless).toBe(true);
          expect(change.verdict === 'advised' && change.change === 'speed').toBe(false);
          if (change.verdict === 'advised') expect(drawn.count).toBeGreaterThanOrEqual(5);
          if (change.verdict === 'too-few-shots') expect(drawn.count).toBeLessThan(5);
          if (change.change !== 'scatter') {
            if (change.verdict === 'leave') expect(change[maximise].value).toBeLessThanOrEqual(0);
            if (change.verdict === 'not-worth-it') expect(change[maximise].value).toBeGreaterThan(0);
          }
          expect(leave.includes(change.change)).toBe(change.verdict === 'leave');
          if (change.verdict === 'not-worth-it') expect(change[maximise].value).toBeLessThan(worth);
          if (change.verdict === 'not-clear') expect(change[maximise].low).toBeLessThanOrEqual(0);
          if (change.verdict === 'costs-the-other') expect(change[other].value).toBeLessThan(0);
          expect(change.measure.length > 0).toBe(change.verdict === 'measure-first');
          for (const name of change.measure) expect(ranking.readings[name]).toBe(0);
        }
        const first = changes.map(({ verdict }) =>
          verdict === 'advised' ? 0 : verdict === 'by-training' ? 2 : 1,
        );
        expect(first).toEqual([...first].sort());
        expect(againstCentred?.ballSpeed.low ?? 0).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: RECORDS },
    );
  });

  it('with and without the column of attack angle', () => {
    fc.assert(
      fc.property(record, ({ maximise, ...drawn }) => {
        const rank = (without: Drawn['without'] = []): ChangeRanking =>
          rankChanges(drives({ ...drawn, without }), {}, { maximise, draws: 100 });
        const known = changeOf(rank(), 'loft');
        const guessed = changeOf(rank(['attackAngle']), 'loft');
        if (known?.verdict !== 'advised' || guessed?.verdict !== 'advised') return;
        expect(Math.sign(guessed.step)).toBe(Math.sign(known.step));
      }),
      { numRuns: Math.ceil(RECORDS / 8) },
    );
  });

  it('when asked again', () => {
    const shots = drives({ speed: 90, attack: -2, loft: 12, count: 6 });
    expect(rankChanges(shots)).toEqual(rankChanges(shots));
  });
});
