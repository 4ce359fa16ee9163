import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AerodynamicModel,
  aerodynamicModels,
  bearmanHarvey1976,
  davies1949,
  defaultAerodynamics,
  fittedModern,
  lieberman2001,
  naruo2004,
  pennerBearmanHarvey,
  resolveModel,
  SPIN_DECAY,
  smitsSmith1994,
  testRangeLine,
  withReverseMagnus,
} from '../../src/aerodynamics/index.js';
import { anyOf, even } from '../even.js';
import grid from '../published/data/aerodynamic-models.json' with { type: 'json' };
import tunnel from '../published/data/bearman-harvey-1976.json' with { type: 'json' };
import bounds from '../published/data/coefficient-bounds.json' with { type: 'json' };
import davies from '../published/data/davies-1949.json' with { type: 'json' };
import points from '../published/data/outside-coefficients.json' with { type: 'json' };
import laws from '../published/data/outside-laws.json' with { type: 'json' };
import line from '../published/data/test-range-line.json' with { type: 'json' };

const models: readonly AerodynamicModel[] = Object.values(aerodynamicModels);
const everyModel: readonly AerodynamicModel[] = [
  ...models,
  ...models.map((model) => resolveModel(withReverseMagnus(model))),
];
/** What a flight can meet and far more; S grows without bound as a ball nearly stops in the air. */
const reynolds = fc.oneof(even(0, 4e5), anyOf(0, 1e9));
const spinRatio = fc.oneof(even(0, 1), even(0, 50), anyOf(0, 1e300));

describe('coefficients at the grid worked out independently', () => {
  // Source and limits: the about block of the data.
  const columns = [
    { model: smitsSmith1994, column: 'smitsSmith' },
    { model: pennerBearmanHarvey, column: 'penner' },
    { model: fittedModern, column: 'fitted' },
  ] as const;
  for (const { model, column } of columns) {
    it(`${model.id}, ${grid.rows.length} points, three decimals`, () => {
      expect(grid.rows).toHaveLength(25);
      for (const row of grid.rows) {
        const got = [
          model.dragCoefficient(row.reynolds, row.spinRatio),
          model.liftCoefficient(row.reynolds, row.spinRatio),
        ];
        // Half a unit of the last digit; one float of slack for values that lie on the half.
        for (const i of [0, 1]) {
          expect(Math.abs((got[i] ?? Number.NaN) - (row[column][i] ?? Number.NaN))).toBeLessThan(
            5e-4 + 1e-12,
          );
        }
      }
    });
  }
});

describe('fitted modern ball', () => {
  it('has the drag crisis of a ball without spin, and none where the ball spins', () => {
    // Bearman and Harvey 1976, from memory: about 0.5 below and 0.25 above; none in their table at Re 40,000, S 0.33.
    expect(fittedModern.dragCoefficient(3e4, 0)).toBeCloseTo(0.45, 2);
    expect(fittedModern.dragCoefficient(1e5, 0)).toBeCloseTo(0.206, 3);
    const { dragCoefficient: drag } = fittedModern;
    expect(drag(4e4, 0.33) - drag(1.5e5, 0.33)).toBeLessThan(0.015);
    expect(drag(6.3e4, 0.2) - drag(1.5e5, 0.2)).toBeLessThan(0.015);
  });
  it('loses lift below Re 75,000 at small spin ratios only', () => {
    // Lyu, Kensrud and Smith 2020: reversed lift of some balls between Re 50,000 and 70,000, gone by S 0.24 to 0.5.
    const left = (re: number, s: number) =>
      fittedModern.liftCoefficient(re, s) / fittedModern.liftCoefficient(1e6, s);
    expect(left(62_500, 0.02)).toBeCloseTo(0.5, 6);
    expect(left(75_000, 0.1)).toBeGreaterThan(0.85);
    expect(left(50_000, 0.1)).toBeLessThan(0.15);
    expect(left(62_500, 0.35)).toBeCloseTo(0.75, 9);
    expect(left(50_000, 0.6)).toBeGreaterThan(0.95);
  });
  it('is the default', () => {
    expect(defaultAerodynamics).toBe(fittedModern);
    expect(fittedModern.source.confidence).toBe('fitted');
  });
});

describe('Bearman and Harvey 1976', () => {
  // Re for air of 15 °C at sea level: 1.225 kg/m³, 1.789e-5 Pa s, ball of 42.68 mm.
  const reynoldsAt = (speed: number) => (1.225 * speed * 0.04268) / 1.789e-5;
  const ratioAt = (speed: number, spin: number) => (spin * (Math.PI / 30) * 0.02134) / speed;
  const { dragCoefficient: drag, liftCoefficient: lift } = bearmanHarvey1976;

  it('meets all 420 coefficients of the table', () => {
    expect([tunnel.spins.length, tunnel.airSpeeds.length]).toEqual([21, 10]);
    tunnel.spins.forEach((spin, i) => {
      tunnel.airSpeeds.forEach((speed, j) => {
        const at = [reynoldsAt(speed), ratioAt(speed, spin)] as const;
        expect(drag(...at)).toBeCloseTo(tunnel.drag[i]?.[j] ?? Number.NaN, 9);
        expect(lift(...at)).toBeCloseTo(tunnel.lift[i]?.[j] ?? Number.NaN, 9);
      });
    });
  });
  it('stays between the four values around it', () => {
    fc.assert(
      fc.property(even(0, 9), even(0, 20), (row, column) => {
        const [j, i] = [Math.min(Math.floor(row), 8), Math.min(Math.floor(column), 19)];
        const between = (values: readonly number[], at: number, k: number): number =>
          (values[k] ?? 0) + (at - k) * ((values[k + 1] ?? 0) - (values[k] ?? 0));
        const speed = between(tunnel.airSpeeds, row, j);
        const at = [reynoldsAt(speed), ratioAt(speed, between(tunnel.spins, column, i))] as const;
        for (const [of, table] of [
          [drag, tunnel.drag],
          [lift, tunnel.lift],
        ] as const) {
          const corners = [i, i + 1].flatMap((k) => [table[k]?.[j] ?? 0, table[k]?.[j + 1] ?? 0]);
          expect(of(...at)).toBeGreaterThanOrEqual(Math.min(...corners) - 1e-12);
          expect(of(...at)).toBeLessThanOrEqual(Math.max(...corners) + 1e-12);
        }
      }),
    );
  });
  it('extrapolates as it says', () => {
    const slow = ratioAt(55.2, 2000);
    expect(lift(reynoldsAt(55.2), slow / 2)).toBeCloseTo(0.1538 / 2, 9);
    expect(drag(reynoldsAt(55.2), slow / 2)).toBeCloseTo(0.2481, 9);
    expect(drag(reynoldsAt(55.2), 5)).toBeCloseTo(0.3076, 9);
    expect(lift(1e6, ratioAt(88.1, 4000))).toBeCloseTo(0.1582, 9);
    expect(lift(0, ratioAt(13.7, 4000))).toBeCloseTo(0.4005, 9);
  });
});

describe('published fits of measured coefficients', () => {
  const at = (id: string) => laws.rows.filter((row) => row.id.startsWith(id));
  for (const [model, id, count] of [
    [naruo2004, 'naruo-2004-', 12],
    [lieberman2001, 'us6186002-fit-', 24],
  ] as const) {
    it(`${model.id} gives what its polynomials give, ${count} points`, () => {
      // Worked out apart from the quoted polynomials, to four decimals.
      expect(at(id)).toHaveLength(count);
      for (const { measure, given, assumed, expected } of at(id)) {
        const of = measure === 'drag coefficient' ? model.dragCoefficient : model.liftCoefficient;
        const re = Number({ ...assumed, ...given }.reynolds);
        expect(Math.abs(of(re, Number(given.spinRatio)) - expected)).toBeLessThan(5.1e-5);
      }
    });
  }
  it('Lieberman et al. goes through the measured points of its patent, within their scatter', () => {
    // Seven Re and S of the test range; 0.015 is the scatter stated.
    const rows = points.rows.filter(({ id }) => id.startsWith('us6186002-'));
    expect(rows).toHaveLength(14);
    for (const { measure, given, expected } of rows) {
      const of =
        measure === 'drag coefficient' ? lieberman2001.dragCoefficient : lieberman2001.liftCoefficient;
      expect(Math.abs(of(Number(given?.reynolds), Number(given?.spinRatio)) - (expected ?? 0))).toBeLessThan(
        0.015,
      );
    }
  });
  it('extrapolate as they say', () => {
    expect(naruo2004.liftCoefficient(1e5, 0.015)).toBeCloseTo(naruo2004.liftCoefficient(1e5, 0.03) / 2, 12);
    expect(naruo2004.liftCoefficient(1e5, 9)).toBe(naruo2004.liftCoefficient(1e5, 1.13));
    expect(naruo2004.dragCoefficient(1e5, 9)).toBe(naruo2004.dragCoefficient(1e5, 1.13));
    expect(lieberman2001.liftCoefficient(1e5, 0.02)).toBeCloseTo(
      lieberman2001.liftCoefficient(1e5, 0.04) / 2,
      12,
    );
    expect(lieberman2001.dragCoefficient(1e5, 0)).toBe(lieberman2001.dragCoefficient(1e5, 0.04));
    expect(lieberman2001.liftCoefficient(1e5, 3)).toBe(lieberman2001.liftCoefficient(1e5, 0.22));
    expect(lieberman2001.liftCoefficient(0, 0.1)).toBe(lieberman2001.liftCoefficient(81_000, 0.1));
    expect(lieberman2001.dragCoefficient(1e6, 0.1)).toBe(lieberman2001.dragCoefficient(2e5, 0.1));
  });
});

describe('test-range line', () => {
  it('goes through the eight points: magnitude √(CD² + CL²) and angle atan(CL/CD) of the table', () => {
    expect(line.rows).toHaveLength(8);
    for (const row of line.rows) {
      const drag = testRangeLine.dragCoefficient(row.reynolds, row.spinRatio);
      const lift = testRangeLine.liftCoefficient(row.reynolds, row.spinRatio);
      expect(Math.hypot(drag, lift)).toBeCloseTo(row.magnitude, 12);
      expect((Math.atan2(lift, drag) * 180) / Math.PI).toBeCloseTo(row.angleDegrees, 9);
      // The same to three decimals, as worked out beside the table.
      expect(Math.abs(drag - row.drag)).toBeLessThan(5e-4 + 1e-12);
      expect(Math.abs(lift - row.lift)).toBeLessThan(5e-4 + 1e-12);
    }
  });
  it('extrapolates as it says', () => {
    const drag = (s: number) => testRangeLine.dragCoefficient(1e5, s);
    const lift = (s: number) => testRangeLine.liftCoefficient(1e5, s);
    expect(drag(0)).toBeCloseTo(0.222, 3);
    expect(drag(0.04)).toBe(drag(0));
    expect(drag(0.085)).toBeCloseTo(drag(0), 12);
    expect(lift(0.0425)).toBeCloseTo(0.072, 3);
    expect(lift(0.0425)).toBeCloseTo(lift(0.085) / 2, 12);
    expect((drag(0.5) - drag(0.4)) / 0.1).toBeCloseTo(0.35, 9);
    expect((lift(0.5) - lift(0.4)) / 0.1).toBeCloseTo(0.28, 9);
    expect(drag(50)).toBeCloseTo(drag(0.284) + 0.35 * 0.316, 12);
    expect(lift(50)).toBeCloseTo(lift(0.284) + 0.28 * 0.316, 12);
  });
});

describe('Davies 1949', () => {
  it('turns lift in lbf at 32 m/s into a coefficient of S, six spin rates', () => {
    expect(davies.rows).toHaveLength(6);
    for (const row of davies.rows) {
      const s = (row.spinRpm * (Math.PI / 30) * 0.02055) / 32;
      expect(Math.abs(s - row.spinRatio)).toBeLessThan(6e-4);
      expect(Math.abs(davies1949.liftCoefficient(87_000, s) - row.lift)).toBeLessThan(5e-4 + 1e-12);
      expect(Math.abs(0.064 * (1 - Math.exp(-0.00026 * row.spinRpm)) - row.liftPoundsForce)).toBeLessThan(
        6e-5,
      );
    }
  });
  it('saturates near 0.35 and drags 0.06 to 0.10 lbf', () => {
    // Davies 1949, from memory. 1 lbf = 4.4482216 N; ½ρAU² = 0.8151 N at 1.2 kg/m³, 41.1 mm, 32 m/s.
    expect(davies1949.liftCoefficient(87_000, 50)).toBeCloseTo(0.3493, 4);
    expect(davies1949.dragCoefficient(87_000, 0)).toBeCloseTo((0.06 * 4.4482216) / 0.8151, 3);
    expect(davies1949.dragCoefficient(87_000, 0.538)).toBeCloseTo((0.1 * 4.4482216) / 0.8151, 3);
    expect(davies1949.dragCoefficient(87_000, 0.269)).toBeCloseTo((0.08 * 4.4482216) / 0.8151, 3);
  });
});

describe('bounds stated in patents', () => {
  const keeps = (model: AerodynamicModel, point: (typeof bounds.points)[number]) => {
    const of = point.quantity === 'drag' ? model.dragCoefficient : model.liftCoefficient;
    const got = of(point.reynolds, point.spinRatio);
    if (point.sense === '<') expect(got).toBeLessThan(point.value);
    else if (point.sense === '>') expect(got).toBeGreaterThan(point.value);
    else expect(Math.abs(got - point.value)).toBeLessThan(0.01);
  };
  const [, claim] = bounds.points;
  it('the test-range line keeps all four points', () => {
    expect(bounds.points).toHaveLength(4);
    for (const point of bounds.points) keeps(testRangeLine, point);
  });
  it('the fitted modern ball keeps three and lies between the claim of one design and the least drag measured', () => {
    for (const point of bounds.points) if (point !== claim) keeps(fittedModern, point);
    // Ogg 2001, claim 1: under 0.232. The laws measured on balls in tunnels and ranges have 0.236 to 0.255 there, and the
    // fit follows measurements before claims.
    expect(claim?.value).toBe(0.232);
    const drag = (model: AerodynamicModel) =>
      model.dragCoefficient(claim?.reynolds ?? 0, claim?.spinRatio ?? 0);
    const measured = [bearmanHarvey1976, pennerBearmanHarvey, naruo2004, lieberman2001].map(drag);
    expect(drag(fittedModern)).toBeGreaterThan(0.232);
    expect(drag(fittedModern)).toBeLessThan(Math.min(...measured));
  });
  it('Smits and Smith with constants from memory breaks the drag bounds, which is why it is not the default', () => {
    for (const point of bounds.points.filter((p) => p.quantity === 'drag')) {
      expect(smitsSmith1994.dragCoefficient(point.reynolds, point.spinRatio)).toBeGreaterThan(point.value);
    }
  });
});

describe('laws every model keeps', () => {
  for (const model of everyModel) {
    it(`${model.id} is finite and bounded for every Re and S`, () => {
      fc.assert(
        fc.property(reynolds, spinRatio, (re, s) => {
          const drag = model.dragCoefficient(re, s);
          const lift = model.liftCoefficient(re, s);
          expect(drag).toBeGreaterThan(0.1);
          expect(drag).toBeLessThan(1);
          expect(lift).toBeGreaterThanOrEqual(0);
          expect(lift).toBeLessThan(1);
        }),
        { numRuns: 2000 },
      );
      for (const re of [0, 1, 5e4, 1e5, Number.MAX_VALUE, Number.POSITIVE_INFINITY]) {
        for (const s of [0, Number.MIN_VALUE, 0.05, 1, 50, Number.MAX_VALUE, Number.POSITIVE_INFINITY]) {
          expect(model.dragCoefficient(re, s)).toBeLessThan(1);
          expect(model.liftCoefficient(re, s)).toBeLessThan(1);
        }
      }
    });
    it(`${model.id} has no lift without spin, and lift and drag that never fall as spin rises`, () => {
      expect(model.liftCoefficient(1e5, 0)).toBe(0);
      fc.assert(
        fc.property(reynolds, even(0, 2), even(0, 2), (re, a, b) => {
          const [low, high] = [Math.min(a, b), Math.max(a, b)];
          expect(model.liftCoefficient(re, high)).toBeGreaterThanOrEqual(
            model.liftCoefficient(re, low) - 1e-12,
          );
          // Below Re 80,000 the drag crisis of the default gives way to spin: drag falls there.
          if (model.id.startsWith('fitted-modern') && re < 80_000) return;
          // The test-range points themselves dip by 0.003 from S 0.085 to 0.095.
          const dip = model.id.startsWith('test-range-line') ? 0.0031 : 1e-12;
          expect(model.dragCoefficient(re, high)).toBeGreaterThanOrEqual(
            model.dragCoefficient(re, low) - dip,
          );
        }),
        { numRuns: 1000 },
      );
    });
    it(`${model.id} has no jumps`, () => {
      const steps = (of: (x: number) => number, from: number, to: number, step: number) => {
        let largest = 0;
        for (let x = from; x <= to; x += step) largest = Math.max(largest, Math.abs(of(x + step) - of(x)));
        return largest;
      };
      for (const re of [4e4, 6.2e4, 1e5]) {
        // S^0.4 rises by 0.0136 over the first 1e-4; by 0.0032 over the third.
        expect(steps((s) => model.liftCoefficient(re, s), 0, 2e-4, 1e-4)).toBeLessThan(0.014);
        expect(steps((s) => model.liftCoefficient(re, s), 2e-4, 1.2, 1e-4)).toBeLessThan(0.0032);
        expect(steps((s) => model.dragCoefficient(re, s), 0, 1.2, 1e-4)).toBeLessThan(1e-3);
      }
      expect(steps((re) => model.dragCoefficient(re, 0.2), 0, 4e5, 100)).toBeLessThan(1e-3);
      expect(steps((re) => model.liftCoefficient(re, 0.1), 0, 4e5, 100)).toBeLessThan(3e-3);
    });
    it(`${model.id} says where it comes from and how it goes on`, () => {
      expect(model.source.work.length).toBeGreaterThan(10);
      expect(model.extrapolation.length).toBeGreaterThan(30);
      expect(model.validity.reynolds.min).toBeLessThan(model.validity.reynolds.max);
      expect(model.validity.spinRatio.min).toBeLessThan(model.validity.spinRatio.max);
      expect(model.spinEntering).toBe('across');
    });
  }
  it('spin decays by 5.0 % a second at 53.6 m/s in air of 1.225 kg/m³', () => {
    // Smits and Smith 1994, R1 = 2e-5, radius 21.34 mm (from memory); Dewhurst 2015, ch. 2: 0.0004 rpm/s per mph and
    // rpm, one figure: 2e-5/0.02134 = 9.4e-4 against 8.9e-4 a metre.
    for (const model of everyModel) expect(model.spinDecay).toBe(2e-5);
    expect((SPIN_DECAY * 53.6) / 0.02134).toBeCloseTo(0.05, 3);
    expect(Math.abs((SPIN_DECAY / 0.02134) * 0.44704 - 0.0004)).toBeLessThan(0.00005);
    // Worked example there: a 7-iron at 120 mph and 7,097 rpm loses 340 rpm in the first second.
    expect(((SPIN_DECAY * 120 * 0.44704) / 0.02134) * 7097).toBeGreaterThan(340);
    expect(((SPIN_DECAY * 120 * 0.44704) / 0.02134) * 7097).toBeLessThan(340 * 1.06);
  });
});

describe('published laws outside their own words', () => {
  it('Smits and Smith: sine to Re 290,000, power law from S 0.0001 to S 1, then held', () => {
    expect(smitsSmith1994.dragCoefficient(190_000, 0)).toBeCloseTo(0.3, 12);
    expect(smitsSmith1994.dragCoefficient(90_000, 0)).toBeCloseTo(0.24, 12);
    expect(smitsSmith1994.dragCoefficient(290_000, 0)).toBeCloseTo(0.24, 12);
    expect(smitsSmith1994.dragCoefficient(1e6, 0.1)).toBeCloseTo(0.258, 12);
    expect(smitsSmith1994.liftCoefficient(1e5, 50)).toBeCloseTo(0.54, 12);
    // Lift from a slope, not from an infinite one: half of it at half of S 0.0001, and no jump there.
    expect(smitsSmith1994.liftCoefficient(1e5, 5e-5)).toBeCloseTo((0.54 * 1e-4 ** 0.4) / 2, 15);
    expect(smitsSmith1994.liftCoefficient(1e5, 1e-4)).toBeCloseTo(0.54 * 1e-4 ** 0.4, 15);
  });
  it('Penner: lift runs straight to 0 below S 0.05 and is held above S 1', () => {
    expect(pennerBearmanHarvey.liftCoefficient(1e5, 0.05)).toBeCloseTo(0.12725, 12);
    expect(pennerBearmanHarvey.liftCoefficient(1e5, 0.025)).toBeCloseTo(0.12725 / 2, 12);
    expect(pennerBearmanHarvey.liftCoefficient(1e5, 50)).toBeCloseTo(0.968, 12);
    expect(pennerBearmanHarvey.dragCoefficient(1e5, 0)).toBeCloseTo(0.171, 12);
    expect(pennerBearmanHarvey.dragCoefficient(1e5, 50)).toBeCloseTo(0.791, 12);
  });
});

describe('where each source has data', () => {
  it('is stated as the source has it', () => {
    const ranges = Object.fromEntries(
      models.map(({ id, validity: { reynolds: re, spinRatio: s } }) => [id, [re.min, re.max, s.min, s.max]]),
    );
    // Ends of the measured coefficients fitted; 42 launches and wind tunnel as their sources state; slowest and fastest
    // air of the table at 2,000 to 6,000 rpm; 1994 driver range (from memory); Penner's lines from a driver to about a 5-iron, flat in Re
    // past the drag crisis (from memory); first and last test-range point (read in the patent); 8,000 rpm at 32 m/s.
    expect(ranges).toEqual({
      'fitted-modern': [70_000, 230_000, 0.02, 0.6],
      'lieberman-2001': [81_000, 200_000, 0.04, 0.22],
      'naruo-2004': [71_000, 125_000, 0.03, 1.13],
      'bearman-harvey-1976': [40_000, 257_000, 0.05, 0.98],
      'smits-smith-1994': [70_000, 210_000, 0.08, 0.2],
      'penner-bearman-harvey': [60_000, 240_000, 0.05, 0.3],
      'test-range-line': [69_000, 230_000, 0.085, 0.284],
      'davies-1949': [78_000, 96_000, 0, expect.closeTo(0.538, 3)],
    });
    expect([line.rows[0]?.reynolds, line.rows[0]?.spinRatio]).toEqual([230_000, 0.085]);
    expect([line.rows.at(-1)?.reynolds, line.rows.at(-1)?.spinRatio]).toEqual([69_000, 0.284]);
  });
});

describe('reverse Magnus', () => {
  const model = resolveModel(withReverseMagnus(pennerBearmanHarvey));
  const { liftCoefficient: without } = pennerBearmanHarvey;
  it('takes lift away between Re 50,000 and 75,000 at low spin only', () => {
    // Lyu, Kensrud and Smith 2020: negative lift for 5e4 < Re < 7e4 at 750–2,250 rpm, positive at Re 6.5e4, S 0.24.
    expect(model.liftCoefficient(50_000, 0.15)).toBe(0);
    expect(model.liftCoefficient(62_500, 0.15)).toBeCloseTo(without(62_500, 0.15) / 2, 12);
    expect(model.liftCoefficient(75_000, 0.15)).toBe(without(75_000, 0.15));
    // At Re 50,000 nothing up to S 0.20, half at 0.225, all from 0.25: the step is symmetric.
    expect(model.liftCoefficient(50_000, 0.2)).toBe(0);
    expect(model.liftCoefficient(50_000, 0.203)).toBeGreaterThan(0);
    expect(model.liftCoefficient(50_000, 0.225)).toBeCloseTo(without(50_000, 0.225) / 2, 12);
    expect(model.liftCoefficient(65_000, 0.24)).toBeGreaterThan(0.9 * without(65_000, 0.24));
    expect(model.liftCoefficient(50_000, 0.25)).toBe(without(50_000, 0.25));
  });
  it('leaves drag alone', () => {
    expect(model.dragCoefficient(55_000, 0.1)).toBe(pennerBearmanHarvey.dragCoefficient(55_000, 0.1));
    expect(model.id).toBe('penner-bearman-harvey+reverse-magnus');
  });
});
