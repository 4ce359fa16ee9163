import carries from '../../../tests/published/data/outside-carry.json' with { type: 'json' };
import points from '../../../tests/published/data/outside-coefficients.json' with { type: 'json' };
import laws from '../../../tests/published/data/outside-laws.json' with { type: 'json' };
import tours from '../../../tests/published/data/tour-averages.json' with { type: 'json' };
import { defaultAir } from '../../air/index.js';
import type { Air } from '../../inputs/air.js';
import type { Launch } from '../../inputs/launch.js';
import {
  degrees,
  kilogramsPerCubicMetre,
  metres,
  metresPerSecond,
  mph,
  pascalSeconds,
  rpm,
  toYards,
} from '../../units/index.js';

/** A source of rows: what is left out at a time to see what the others say of it. */
export const SOURCES = [
  'US patent 6,186,002 (2001)',
  'Lyu et al. 2018',
  'Bearman and Harvey 1976, small S',
  'Low Re: US 7,238,121 and Lyu et al. 2020',
  'US patent 6,729,976 (2004)',
  'Naruo et al. 2004',
  'Tour averages',
] as const;
export type FitSource = (typeof SOURCES)[number];

/** Beginning of the ids of each source's rows. */
const IDS: Readonly<Record<FitSource, string>> = {
  'US patent 6,186,002 (2001)': 'us6186002-',
  'Lyu et al. 2018': 'lyu-2018-',
  'Bearman and Harvey 1976, small S': 'bearman-harvey-',
  'Low Re: US 7,238,121 and Lyu et al. 2020': 'low-re-',
  'US patent 6,729,976 (2004)': 'us6729976-',
  'Naruo et al. 2004': 'naruo-2004-',
  'Tour averages': 'tour-',
};

function sourceOf(id: string): FitSource {
  const source = SOURCES.find((name) => id.startsWith(IDS[name]));
  if (source === undefined) throw new Error(`no source for ${id}`);
  return source;
}

/** One measured coefficient. */
export interface CoefficientRow {
  readonly id: string;
  readonly source: FitSource;
  readonly coefficient: 'drag' | 'lift';
  readonly reynolds: number;
  readonly spinRatio: number;
  readonly expected: number;
  /** What its residual is divided by: the tolerance of the outside row. */
  readonly spread: number;
}

interface OutsideRow {
  readonly id: string;
  readonly measure?: string;
  readonly usedInFit?: boolean;
  readonly expected?: number;
  readonly tolerance?: number;
  readonly given?: Given;
  readonly assumed?: Given;
}

interface Given {
  readonly reynolds?: string;
  readonly spinRatio?: string;
  readonly ballSpeed?: string;
  readonly launchAngle?: string;
  readonly spin?: string;
}

function coefficientRow({ id, measure, expected, tolerance, given, assumed }: OutsideRow): CoefficientRow {
  const at = { ...assumed, ...given };
  return {
    id,
    source: sourceOf(id),
    coefficient: measure === 'drag coefficient' ? 'drag' : 'lift',
    reynolds: Number(at.reynolds),
    spinRatio: Number(at.spinRatio),
    expected: expected as number,
    spread: tolerance as number,
  };
}

/** Coefficients fitted: the rows marked `usedInFit` among the outside rows. */
export const coefficientRows: readonly CoefficientRow[] = [...points.rows, ...laws.rows]
  .map((row): OutsideRow => row as unknown as OutsideRow)
  .filter(({ usedInFit }) => usedInFit === true)
  .map(coefficientRow);

/** What a flight is asked: carry and apex in yards, descent in degrees, hang time in seconds. */
export type FlightFigure = 'carry' | 'apex' | 'descent' | 'hang';

/** One measured flight. */
export interface FlightRow {
  readonly id: string;
  readonly source: FitSource;
  readonly launch: Launch;
  readonly air: Air;
  readonly figures: readonly {
    readonly figure: FlightFigure;
    readonly expected: number;
    /** What its residual is divided by. */
    readonly spread: number;
  }[];
}

/** The row that contradicts the other tour averages: it counts a third. */
export const DOUBTFUL = 'tour-women-3-wood';

/**
 * What a residual of a tour average is divided by: yards and degrees. Means of each quantity, not one flight: a mean of
 * flights is not the flight of the means. Chosen so that the coefficients come first.
 */
export const TOUR_SPREAD = { carry: 2.5, apex: 3, descent: 2 } as const;

/** Air of the tour rows, which they do not state. */
const TOUR_AIR: Air = { density: kilogramsPerCubicMetre(1.2), viscosity: pascalSeconds(1.81e-5) };

const tourRows: readonly FlightRow[] = tours.rows.map((row) => {
  const id = `tour-${row.id}`;
  const share = id === DOUBTFUL ? 3 : 1;
  return {
    id,
    source: 'Tour averages',
    launch: {
      ballSpeed: metresPerSecond(row.ballSpeed),
      launchAngle: degrees(row.launchAngleDegrees),
      spinRate: rpm(row.backspinRpm),
    },
    air: TOUR_AIR,
    figures: [
      { figure: 'carry', expected: toYards(metres(row.carry)), spread: share * TOUR_SPREAD.carry },
      { figure: 'apex', expected: toYards(metres(row.apex)), spread: share * TOUR_SPREAD.apex },
      { figure: 'descent', expected: row.descentAngleDegrees, spread: share * TOUR_SPREAD.descent },
    ],
  };
});

const FIGURES: Readonly<Record<string, FlightFigure>> = {
  carry: 'carry',
  'hang time': 'hang',
  'descent angle': 'descent',
};

/** Flights of the patent's table 5: the ranges stated are read as two standard deviations either way. */
function patentRows(): FlightRow[] {
  const rows = (carries.rows as readonly OutsideRow[]).filter(({ usedInFit }) => usedInFit === true);
  const speeds = [...new Set(rows.map(({ given }) => given?.ballSpeed as string))];
  return speeds.map((speed) => {
    const own = rows.filter(({ given }) => given?.ballSpeed === speed);
    const { launchAngle = '', spin = '' } = own[0]?.given ?? {};
    return {
      id: `us6729976-${speed}`,
      source: 'US patent 6,729,976 (2004)',
      launch: {
        ballSpeed: mph(Number.parseFloat(speed)),
        launchAngle: degrees(Number.parseFloat(launchAngle)),
        spinRate: rpm(Number.parseFloat(spin)),
      },
      air: defaultAir,
      figures: own.map(({ measure = '', expected = 0, tolerance = 0 }) => ({
        figure: FIGURES[measure] as FlightFigure,
        expected,
        spread: tolerance / 2,
      })),
    };
  });
}

/** Flights fitted. */
export const flightRows: readonly FlightRow[] = [...tourRows, ...patentRows()];
