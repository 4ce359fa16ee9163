import { choice, type Declared, named, optional, type QuantityField, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readChoice, readOptions, readQuantity } from '../inputs/read.js';
import { isotonic } from '../numerics/index.js';
import { type Length, toFeet, toYards } from '../units/index.js';
import { FEET, RATIO, YARDS } from '../units/unit.js';
import { greenRadiusField } from './hole.js';
import { BASELINE_ROWS, type BallLie, PUTTING_ROWS } from './strokes-baseline.js';

/** A golfer by average score. */
export interface Golfer {
  /** Average score for 18 holes, 60 to 130. */
  readonly averageScore: number;
}

/** Whose strokes are counted: a tour professional, for whom the table was published, or a golfer by average score. */
export type GolferSkill = 'professional' | Golfer;

/** Options of {@link expectedStrokes}. */
export interface ExpectedStrokesOptions {
  /** Default `professional`. */
  readonly skill?: GolferSkill;
  /**
   * `smoothed` (default): the table made to rise with distance by isotonic regression. `raw`: as published, where
   * from the tee 120 yd cost more than 140 yd.
   */
  readonly table?: 'smoothed' | 'raw';
}

/**
 * Where a number of strokes comes from. `professional-table`: the published table. `professional-putts`: the published
 * putts. `tee-line-of-90`: the published line of golfers averaging 90. `between-tee-lines`: modelled between that line
 * and the table. `table-and-tee-gap`: modelled as the table and what the two tee lines differ. `stretched-putts`:
 * modelled as the putts of professionals from further away.
 */
export type StrokesBasis =
  | 'professional-table'
  | 'professional-putts'
  | 'tee-line-of-90'
  | 'between-tee-lines'
  | 'table-and-tee-gap'
  | 'stretched-putts';

/** Strokes it takes on average to hole out. */
export interface ExpectedStrokes {
  /** The number. */
  readonly strokes: number;
  /** False for the published table and lines with linear interpolation between rows; true for anything else. */
  readonly modelled: boolean;
  /** True where the published rows are continued beyond their ends. */
  readonly extrapolated: boolean;
  /** Where the number comes from. */
  readonly basis: StrokesBasis;
}

/** Score of the professionals of the table. */
const PROFESSIONAL_SCORE = 70;

/** Declaration of {@link ExpectedStrokesOptions}. @internal */
export const strokesOptionFields: Declared<ExpectedStrokesOptions> = /* @__PURE__ */ frozen(() => {
  const golfer: Declared<Golfer> = { averageScore: quantity(RATIO, 60, 130, 90, 'average score') };
  return {
    skill: optional(named<Golfer>({ professional: { averageScore: PROFESSIONAL_SCORE } }, golfer, 'skill')),
    table: optional(choice<'smoothed' | 'raw'>(['smoothed', 'raw'], 'table')),
  };
});

/** {@link ExpectedStrokesOptions} with their defaults filled in. @internal */
export interface StrokesSettings {
  /** 0 for a professional, 1 for a golfer averaging 90, on a straight line. */
  readonly share: number;
  readonly table: 'smoothed' | 'raw';
}

/** Fills in the defaults of options already read. @internal */
export function strokesSettings({ skill, table = 'smoothed' }: ExpectedStrokesOptions): StrokesSettings {
  // Reading has put the golfer in the place of a name.
  const { averageScore = PROFESSIONAL_SCORE } = (skill as Golfer | undefined) ?? {};
  return { share: (averageScore - PROFESSIONAL_SCORE) / 20, table };
}

type Curve = readonly (readonly [distance: number, strokes: number])[];

/** @internal */
export const LIES: readonly BallLie[] = ['tee', 'fairway', 'rough', 'sand', 'recovery', 'green'];

/** Distances to the hole from off the green. @internal */
export const distanceField: QuantityField = /* @__PURE__ */ frozen(() =>
  quantity(YARDS, 0, 731.52, 137, 'distance to the hole'),
);
const puttField: QuantityField = /* @__PURE__ */ frozen(() =>
  quantity(FEET, 0, greenRadiusField.max, 6, 'distance to the hole'),
);

/** Tee-shot lines, strokes = at zero + per yard × length of the hole. */
const PROFESSIONAL_LINE = { atZero: 2.38, perYard: 0.0041 };
/** Golfers averaging 90: Broadie M (2008) in Science and Golf V, 253–262. */
const NINETY_LINE = { atZero: 2.79, perYard: 0.0066 };
/** Distances at which two putts are the average: 33 ft for a professional, 19 ft for a golfer averaging 90. */
const PUTTING_REACH_OF_NINETY = 33 / 19;

/**
 * Average number of strokes to hole out from a lie and a distance.
 *
 * For professionals: Broadie M (2012) Interfaces 42(2), 146–165, table 9, linear between rows. From the tee a golfer
 * averaging 90 has a published line, 2.79 + 0.0066 × yards (Broadie 2008). Everything else is modelled and says so:
 * golfers with other scores lie on the straight line through the professional (70) and the 90-golfer, as Broadie (2014)
 * puts an 80-golfer midway; off the tee the 90-golfer needs more strokes than the professional by what the two tee
 * lines (professionals: 2.38 + 0.0041 × yards) differ at that distance; on the green a 90-golfer's putt counts as one
 * 33/19 times as long, the distances from which each needs two putts.
 * @param lie - where the ball lies
 * @param distance - to the hole [m], 0 to 731.52 (800 yards); on the green 0 to 50
 * @param options - whose strokes, and by which table
 * @throws `FairflightError` `invalid-input` or `outside-range`
 */
export function expectedStrokes(
  lie: BallLie,
  distance: Length,
  options: ExpectedStrokesOptions = {},
): ExpectedStrokes {
  const settings = strokesSettings(readOptions(strokesOptionFields, options));
  const from = readChoice(LIES, lie, 'lie');
  const far = readQuantity(from === 'green' ? puttField : distanceField, distance, 'distance');
  const basis = basisOf(from, settings.share);
  const rows = CURVES[settings.table][from];
  // From where the rows are looked up: a golfer's putt counts as a longer one.
  const reach = from === 'green' ? puttReach(far, settings.share) : toYards(far as Length);
  const extrapolated =
    basis !== 'tee-line-of-90' && (reach < firstOf(from, rows) || reach > (rows.at(-1)?.[0] ?? 0));
  const published =
    basis === 'professional-table' || basis === 'professional-putts' || basis === 'tee-line-of-90';
  return {
    strokes: strokesFrom(from, far, settings),
    modelled: !published || extrapolated,
    extrapolated,
    basis,
  };
}

function basisOf(lie: BallLie, share: number): StrokesBasis {
  if (lie === 'green') return share === 0 ? 'professional-putts' : 'stretched-putts';
  if (share === 0) return 'professional-table';
  if (lie !== 'tee') return 'table-and-tee-gap';
  return share === 1 ? 'tee-line-of-90' : 'between-tee-lines';
}

/** {@link expectedStrokes} with inputs already read, from any distance [m]: the number alone. @internal */
export function strokesFrom(lie: BallLie, distance: number, { share, table }: StrokesSettings): number {
  const curve = CURVES[table][lie];
  if (lie === 'green') return Math.max(1, interpolate(curve, puttReach(distance, share)));
  const yards = toYards(distance as Length);
  const professional = interpolate(curve, yards);
  const ninety = NINETY_LINE.atZero + NINETY_LINE.perYard * yards;
  if (lie === 'tee') return professional + share * (ninety - professional);
  const gap =
    NINETY_LINE.atZero - PROFESSIONAL_LINE.atZero + (NINETY_LINE.perYard - PROFESSIONAL_LINE.perYard) * yards;
  return professional + share * gap;
}

/** Feet from which a professional needs as many putts. */
function puttReach(distance: number, share: number): number {
  return toFeet(distance as Length) * (1 + share * (PUTTING_REACH_OF_NINETY - 1));
}

/** Distance of the first published row; that of the putts stands after one for a ball in the hole. */
function firstOf(lie: BallLie, rows: Curve): number {
  return rows[lie === 'green' ? 1 : 0]?.[0] ?? 0;
}

function rawCurve(lie: BallLie): Curve {
  if (lie === 'green') return [[0, 1], ...PUTTING_ROWS];
  const column = LIES.indexOf(lie) + 1;
  return BASELINE_ROWS.flatMap((row) => {
    const strokes = row[column as 1 | 2 | 3 | 4 | 5];
    return strokes === undefined ? [] : [[row[0], strokes] as const];
  });
}

function smooth(curve: Curve): Curve {
  const rising = isotonic(curve.map((row) => row[1]));
  return curve.map((row, i) => [row[0], rising[i] ?? row[1]]);
}

/** Linear between rows, and along the first or last two beyond them. */
function interpolate(curve: Curve, distance: number): number {
  let above = 1;
  while (above < curve.length - 1 && (curve[above]?.[0] ?? 0) < distance) above++;
  const [x0, y0] = curve[above - 1] ?? [0, 0];
  const [x1, y1] = curve[above] ?? [1, 0];
  return y0 + ((y1 - y0) * (distance - x0)) / (x1 - x0);
}

const CURVES: { readonly [T in 'raw' | 'smoothed']: { readonly [L in BallLie]: Curve } } =
  /* @__PURE__ */ frozen(() => {
    const raw = Object.fromEntries(LIES.map((lie) => [lie, rawCurve(lie)])) as { [L in BallLie]: Curve };
    const smoothed = Object.fromEntries(LIES.map((lie) => [lie, smooth(raw[lie])])) as {
      [L in BallLie]: Curve;
    };
    return { raw, smoothed };
  });
