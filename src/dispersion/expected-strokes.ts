import { FairflightError, requireOneOf, requireWithin } from '../errors.js';
import { isotonic } from '../numerics/index.js';
import { type Length, toFeet, toYards } from '../units/index.js';
import { BASELINE_ROWS, type Lie, PUTTING_ROWS } from './strokes-baseline.js';

/**
 * Whose strokes are counted: a tour professional, for whom the table was published, or a golfer with an average score
 * for 18 holes, 60 to 130.
 */
export type Skill = 'professional' | { readonly averageScore: number };

/** Options of {@link expectedStrokes}. */
export interface ExpectedStrokesOptions {
  /** Default `professional`. */
  readonly skill?: Skill;
  /**
   * `smoothed` (default): the table made to rise with distance by isotonic regression. `raw`: as published, where
   * from the tee 120 yd cost more than 140 yd.
   */
  readonly table?: 'smoothed' | 'raw';
}

/** Strokes it takes on average to hole out. */
export interface ExpectedStrokes {
  /** The number. */
  readonly strokes: number;
  /** False for the published table and lines with linear interpolation between rows; true for anything else. */
  readonly modelled: boolean;
  /** Where the number comes from, in words. */
  readonly basis: string;
}

type Curve = readonly (readonly [distance: number, strokes: number])[];

const LIES = ['tee', 'fairway', 'rough', 'sand', 'recovery', 'green'] as const;

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
 * @param distance - to the hole [m], 0 to 800 yards
 * @throws {@link FairflightError} `invalid-input` or `outside-range`
 */
export function expectedStrokes(
  lie: Lie,
  distance: Length,
  options: ExpectedStrokesOptions = {},
): ExpectedStrokes {
  requireOneOf('lie', lie, LIES);
  requireWithin('distance', distance, 0, 731.52, 'm');
  const table = requireOneOf('options.table', options.table ?? 'smoothed', ['smoothed', 'raw'] as const);
  const share = skillShare(options.skill ?? 'professional');
  if (lie === 'green') return onTheGreen(toFeet(distance), share, table);
  const yards = toYards(distance);
  const curve = CURVES[table][lie];
  const professional = interpolate(curve, yards);
  const outside = yards < (curve[0]?.[0] ?? 0) || yards > (curve.at(-1)?.[0] ?? 0);
  const range = outside ? ', continued beyond its ends' : '';
  if (share === 0) {
    return { strokes: professional, modelled: outside, basis: `professionals, ${table} table${range}` };
  }
  if (lie === 'tee') {
    const ninety = NINETY_LINE.atZero + NINETY_LINE.perYard * yards;
    return {
      strokes: professional + share * (ninety - professional),
      modelled: share !== 1,
      basis:
        share === 1
          ? 'published tee line of golfers averaging 90'
          : `modelled between professionals and golfers averaging 90${range}`,
    };
  }
  const gap =
    NINETY_LINE.atZero - PROFESSIONAL_LINE.atZero + (NINETY_LINE.perYard - PROFESSIONAL_LINE.perYard) * yards;
  return {
    strokes: professional + share * gap,
    modelled: true,
    basis: `modelled: professionals plus the gap of the tee-shot lines${range}`,
  };
}

function onTheGreen(feet: number, share: number, table: 'smoothed' | 'raw'): ExpectedStrokes {
  const longer = feet * (1 + share * (PUTTING_REACH_OF_NINETY - 1));
  const modelled = share !== 0 || longer > 90 || longer < 2;
  return {
    strokes: Math.max(1, interpolate(CURVES[table].green, longer)),
    modelled,
    basis: modelled ? 'modelled from the putts of professionals' : 'professionals, putts to hole out',
  };
}

/** 0 for a professional, 1 for a golfer averaging 90, on a straight line through a score of 70. */
function skillShare(skill: Skill): number {
  if (skill === 'professional') return 0;
  if (typeof skill !== 'object' || skill === null) {
    throw new FairflightError('invalid-input', "skill must be 'professional' or { averageScore }", {
      field: 'skill',
      value: skill,
    });
  }
  return (requireWithin('skill.averageScore', skill.averageScore, 60, 130, 'strokes') - 70) / 20;
}

function rawCurve(lie: Lie): Curve {
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

const CURVES: { readonly [T in 'raw' | 'smoothed']: { readonly [L in Lie]: Curve } } =
  /* @__PURE__ */ (() => {
    const raw = Object.fromEntries(LIES.map((lie) => [lie, rawCurve(lie)])) as { [L in Lie]: Curve };
    const smoothed = Object.fromEntries(LIES.map((lie) => [lie, smooth(raw[lie])])) as { [L in Lie]: Curve };
    return { raw, smoothed };
  })();
