import { frozen } from '../inputs/frozen.js';
import { RADIANS_PER_DEGREE } from '../units/index.js';
import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { SPIN_DECAY } from './spin-decay.js';

/** Median column of the table: spin ratio, magnitude √(CD² + CL²), angle atan(CL/CD) in degrees. @internal */
export const TEST_RANGE_TABLE: readonly (readonly [spinRatio: number, magnitude: number, angle: number])[] = [
  [0.085, 0.265, 33],
  [0.095, 0.271, 36],
  [0.106, 0.28, 38],
  [0.122, 0.291, 40],
  [0.142, 0.311, 41],
  [0.17, 0.344, 42],
  [0.213, 0.39, 43],
  [0.284, 0.44, 42],
];

/** Slopes of drag and lift in S above the last point, up to this spin ratio; an assumption. @internal */
export const BEYOND: Readonly<Record<'upTo' | 'drag' | 'lift', number>> = {
  upTo: 0.6,
  drag: 0.35,
  lift: 0.28,
};

type Point = readonly [spinRatio: number, drag: number, lift: number];

function points(): readonly Point[] {
  const measured = TEST_RANGE_TABLE.map(([s, magnitude, angle]): Point => {
    const radians = angle * RADIANS_PER_DEGREE;
    return [s, magnitude * Math.cos(radians), magnitude * Math.sin(radians)];
  });
  const [first = [0, 0, 0], last = [0, 0, 0]] = [measured[0], measured.at(-1)];
  const further = BEYOND.upTo - last[0];
  return [
    [0, first[1], 0],
    ...measured,
    [BEYOND.upTo, last[1] + BEYOND.drag * further, last[2] + BEYOND.lift * further],
  ];
}

const POINTS: readonly Point[] = /* @__PURE__ */ points();

/** Straight lines between the points; `column` is 1 for drag, 2 for lift. */
function along(spinRatio: number, column: 1 | 2): number {
  let [lastS, last] = [0, POINTS[0]?.[column] ?? 0];
  for (const point of POINTS) {
    const [s] = point;
    if (spinRatio < s) return last + ((spinRatio - lastS) / (s - lastS)) * (point[column] - last);
    lastS = s;
    last = point[column];
  }
  return last;
}

/** Its law. @internal */
export const testRangeLaw: CoefficientLaw = /* @__PURE__ */ frozen(() => ({
  id: 'test-range-line',
  validity: { reynolds: { min: 69_000, max: 230_000 }, spinRatio: { min: 0.085, max: 0.284 } },
  spinEntering: 'across',
  dragCoefficient: (_reynolds, spinRatio) => along(spinRatio, 1),
  liftCoefficient: (_reynolds, spinRatio) => along(spinRatio, 2),
  spinDecay: SPIN_DECAY,
}));

/**
 * Test-range line along a drive (Bissonnette, Dalton and Aoyama 2004): a function of S only, drag and lift each in
 * straight lines between the points of a table.
 *
 * The coefficients were measured as the ball slows from Re 230,000, S 0.085 to Re 69,000, S 0.284 at about 3,100 rpm.
 * Median values from memory; definitions and end points were read. Re and S move together, so the data are one line, not
 * a map.
 */
export const testRangeLine: AerodynamicModel = /* @__PURE__ */ frozen(() =>
  described(testRangeLaw, {
    label: 'Indoor test range, one line along a drive, 2004',
    source: {
      authors: 'L. C. Bissonnette, J. L. Dalton and S. Aoyama',
      year: 2004,
      work: 'US patent 6,729,976 B2',
      locus: 'table of aerodynamic magnitude and angle, median column',
      confidence: 'from memory',
      note: 'End points and definitions read in the text; magnitudes and angles recalled. CD and CL worked out from them.',
    },
    extrapolation:
      'Below S 0.085 lift runs straight to 0 at S 0 and drag stays 0.222. Above S 0.284 drag rises by 0.35 and lift by 0.28 per unit of S up to S 0.6; the values there are held. No dependence on Re.',
  }),
);
