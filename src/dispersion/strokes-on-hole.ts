import { requireRecord, requireWithin } from '../errors.js';
import { mean } from '../numerics/index.js';
import { type Angle, si } from '../units/index.js';
import type { ShotColumns } from './cloud.js';
import type { ExpectedStrokesOptions } from './expected-strokes.js';
import { type Hole, requireHole } from './hole.js';
import { ENDINGS, type Ending, scoreOf, type TeeShotScore } from './hole-strokes.js';
import { estimate, type MonteCarlo, replicatesOf, type Share, shareOf } from './monte-carlo.js';

/** Options of {@link strokesOnHole}. */
export interface StrokesOnHoleOptions extends ExpectedStrokesOptions {
  /**
   * Direction aimed at, + right of the line to the fairway [rad]; default 0. `best` looks for the aim with the fewest
   * strokes within 15° either way. The shots are turned about the tee as they are, and any wind in them with them.
   */
  readonly aim?: Angle | 'best';
}

/** What a cloud of tee shots comes to on a hole. */
export interface StrokesOnHole {
  /** Expected strokes on the hole, the tee shot counted. */
  readonly strokes: MonteCarlo;
  /** Where tee shots end. */
  readonly endings: { readonly [E in Ending]: Share };
  /** What each ending costs on average, strokes on the hole; absent where no shot ended so. */
  readonly cost: { readonly [E in Ending]?: number };
  /** The aim used [rad]. */
  readonly aim: Angle;
}

const WIDEST_AIM = 15;

/**
 * Expected strokes on a hole for tee shots scattered as given: each shot's lie and distance from the hole, put through
 * {@link expectedStrokes}. Trees leave a recovery, a penalty area costs a stroke and a drop in the rough where the
 * ball went in, out of bounds stroke and distance.
 * @param columns - shots, from {@link disperse}
 * @param hole - length, fairway and hazards
 * @throws {@link FairflightError} `invalid-input` or `outside-range`
 */
export function strokesOnHole(
  columns: ShotColumns,
  hole: Hole,
  options: StrokesOnHoleOptions = {},
): StrokesOnHole {
  requireRecord('options', options, ['skill', 'table', 'aim']);
  requireHole(hole);
  const { aim = si<Angle>(0), ...table } = options;
  const parts = replicatesOf(columns.shot);
  const turned =
    aim === 'best' ? bestAim(columns, hole, table) : requireWithin('options.aim', aim, -1, 1, 'rad');
  const scores = scoresAt(columns, hole, table, turned);
  const endings = Object.fromEntries(
    ENDINGS.map((ending) => [
      ending,
      shareOf(
        parts,
        scores.map((score) => score.ending === ending),
      ),
    ]),
  ) as { [E in Ending]: Share };
  const cost = Object.fromEntries(
    ENDINGS.flatMap((ending) => {
      const own = scores.filter((score) => score.ending === ending).map((score) => score.strokes);
      return own.length > 0 ? [[ending, mean(own)]] : [];
    }),
  );
  return {
    strokes: estimate(
      parts,
      scores.map((score) => score.strokes),
      mean,
    ),
    endings,
    cost,
    aim: si(turned),
  };
}

/** Score of each tee shot, aimed so much to the right [rad]. @internal */
export function scoresAt(
  columns: ShotColumns,
  hole: Hole,
  table: ExpectedStrokesOptions,
  aim: number,
): TeeShotScore[] {
  const [c, s] = [Math.cos(aim), Math.sin(aim)];
  const turn = (x: number, z: number): { x: number; z: number } => ({ x: x * c - z * s, z: x * s + z * c });
  return columns.restX.map((x, i) =>
    scoreOf(
      turn(columns.landingX[i] ?? x, columns.landingZ[i] ?? 0),
      turn(x, columns.restZ[i] ?? 0),
      hole,
      table,
    ),
  );
}

/** By steps of half a degree: the expected strokes of a finite cloud are not smooth enough for anything finer. */
function bestAim(columns: ShotColumns, hole: Hole, table: ExpectedStrokesOptions): number {
  let best = { aim: 0, strokes: Number.POSITIVE_INFINITY };
  for (let half = 0; half <= 2 * WIDEST_AIM; half++) {
    for (const side of half === 0 ? [0] : [-1, 1]) {
      const aim = (side * half * Math.PI) / 360;
      const strokes = mean(scoresAt(columns, hole, table, aim).map((score) => score.strokes));
      if (strokes < best.strokes - 1e-9) best = { aim, strokes };
    }
  }
  return best.aim;
}
