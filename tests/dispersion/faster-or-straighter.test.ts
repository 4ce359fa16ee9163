import { describe, expect, it } from 'vitest';
import {
  disperse,
  type FasterOrStraighter,
  fasterOrStraighter,
  type Hole,
  strokesOnHole,
} from '../../src/dispersion/index.js';
import { scatterTrend } from '../../src/session/index.js';
import { degrees, millimetres, mph, toMph, toYards, yards } from '../../src/units/index.js';

const usual = { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) };
const spread = {
  kind: 'normal',
  sd: { faceAngle: degrees(2), clubPath: degrees(2), toe: millimetres(7), high: millimetres(6) },
} as const;
const wide: Hole = { length: yards(420), fairway: { width: yards(40) } };
const narrow: Hole = {
  length: yards(420),
  fairway: { width: yards(28) },
  hazards: [
    { kind: 'out-of-bounds', acrossFrom: yards(28) },
    { kind: 'out-of-bounds', acrossTo: yards(-28) },
  ],
};
const speeds = [91, 95, 99, 103].map(mph);
const quick = { shots: 192, speeds };
const ask = (holes: Hole, law?: Parameters<typeof fasterOrStraighter>[2]['law']): FasterOrStraighter =>
  fasterOrStraighter(usual, spread, { ...quick, holes, ...(law !== undefined && { law }) });

describe('fasterOrStraighter', () => {
  const open = ask(wide);

  // Broadie (2014): tour professionals gain 0.75 strokes a round from 20 yards, 0.05 on each of 14 holes or more; a
  // mph of club speed is 2.5 to 3.5 yards (press, quoting the rule makers), so about 0.007 to 0.013 strokes a hole.
  it('makes a mph worth about a hundredth of a stroke on an open hole', () => {
    expect(open.strokesPerMph.value).toBeGreaterThan(-0.02);
    expect(open.strokesPerMph.value).toBeLessThan(-0.004);
    expect(open.best).toEqual({ kind: 'faster-than', clubSpeed: speeds[3] });
    expect(open.sentence).toMatch(/saves 0\.01 strokes on this hole/);
  });

  it('lets more scatter cost strokes, and finds the growth that cancels a mph', () => {
    expect(open.strokesForTenPercentStraighter.value).toBeLessThan(0);
    const { value, standardError } = open.cancellingGrowthPerMph;
    expect(value).toBeGreaterThan(2 * standardError);
    // Playing on with exactly that growth leaves the strokes nearly as they are.
    const balanced = ask(wide, { kind: 'growing', directionPerMph: value, strikePerMph: value });
    expect(Math.abs(balanced.strokesPerMph.value)).toBeLessThan(0.25 * Math.abs(open.strokesPerMph.value));
    const worse = ask(wide, { kind: 'growing', directionPerMph: 2.5 * value, strikePerMph: value });
    expect(worse.strokesPerMph.value).toBeGreaterThan(0);
    expect(worse.steps[3]?.directionFactor).toBeCloseTo((1 + 2.5 * value) ** 8, 9);
  });

  it.each(['toe', 'high'] as const)('lets strikes that scatter wider %s with speed cost carry', (where) => {
    const strikes = { kind: 'normal', sd: { [where]: millimetres(8) } } as const;
    const fastest = (law: Parameters<typeof fasterOrStraighter>[2]['law']): number => {
      const { steps } = fasterOrStraighter(usual, strikes, { ...quick, holes: wide, ...(law && { law }) });
      return toYards(steps[3]?.carry.value ?? yards(0));
    };
    // Twice the scatter at 103 mph: a loss that goes with the square of the offset is four times as great.
    const widening = fastest({ kind: 'growing', strikePerMph: 2 ** (1 / 8) - 1 });
    expect(fastest(undefined) - widening).toBeGreaterThan(2);
    expect(fastest({ kind: 'growing', directionPerMph: 2 ** (1 / 8) - 1 })).toBe(fastest(undefined));
  });

  it('draws a trade-off that rises through today', () => {
    const factors = open.breakEven.map((point) =>
      point.factor === 'under' ? 0 : point.factor === 'over' ? 99 : point.factor,
    );
    expect(open.breakEven[1]).toEqual({ clubSpeed: usual.clubSpeed, factor: 1 });
    for (let i = 1; i < factors.length; i++) expect(factors[i]).toBeGreaterThan(factors[i - 1] ?? 0);
  });

  it('values straightness more between boundaries, and speed less', () => {
    const tight = ask(narrow);
    expect(tight.strokesForTenPercentStraighter.value).toBeLessThan(
      3 * open.strokesForTenPercentStraighter.value,
    );
    expect(tight.strokesPerMph.value).toBeGreaterThan(open.strokesPerMph.value);
    expect(tight.surfaceResidual).toBeLessThan(0.1);
  });

  it('counts the same strokes as disperse and strokesOnHole, and knows differences better than values', () => {
    const { columns } = disperse(usual, spread, { shots: 192 });
    const today = open.steps[1];
    expect(toMph(today?.clubSpeed ?? mph(0))).toBe(95);
    expect(today?.strokes.value).toBeCloseTo(strokesOnHole(columns, wide).strokes.value, 9);
    expect(today?.change).toEqual({ value: 0, standardError: 0 });
    expect(open.steps[3]?.change.value).toBeLessThan(0);
  });

  it("takes the player's own trend for path and face, and adds up the holes of a round", () => {
    const shots = [90, 90, 90, 100, 100, 100].map((speed, i) => ({
      clubSpeed: mph(speed),
      launchDirection: degrees(((i % 3) - 1) * (speed === 90 ? 1 : 2)),
    }));
    const trend = scatterTrend(shots);
    expect(trend.growthPerMph).toBeCloseTo(2 ** 0.1 - 1, 6);
    const two = fasterOrStraighter(usual, spread, {
      ...quick,
      holes: [wide, wide],
      law: { kind: 'measured', trend },
    });
    expect(two.steps[1]?.strokes.value).toBeCloseTo(2 * (open.steps[1]?.strokes.value ?? 0), 9);
    expect(two.steps[2]?.directionFactor).toBeCloseTo(2 ** 0.4, 6);
    expect(two.steps[2]?.strikeFactor).toBe(1);
    expect(two.sentence).toMatch(/over these 2 holes/);
  });

  it('reports progress and refuses what it cannot scale', () => {
    const seen: number[] = [];
    fasterOrStraighter(usual, spread, {
      shots: 64,
      speeds: [mph(95), mph(97), mph(99)],
      holes: wide,
      onProgress: (p) => seen.push(p),
    });
    expect(seen.at(-1)).toBe(1);
    expect([...seen].sort((a, b) => a - b)).toEqual(seen);
    expect(() =>
      fasterOrStraighter(usual, { kind: 'own', shots: [usual, usual] } as never, { holes: wide }),
    ).toThrow(/scale/);
    expect(() => fasterOrStraighter(usual, spread, { holes: [] })).toThrow(/at least one hole/);
    expect(() => fasterOrStraighter(usual, spread, { holes: wide, speeds: [mph(97)] })).toThrow(/speeds/);
  });
});
