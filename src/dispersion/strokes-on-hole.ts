import { custom, type Declared } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions, readQuantity } from '../inputs/read.js';
import { mean } from '../numerics/index.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import { type ShotOptions, shotOptionFields } from '../shot/shot-options.js';
import { type Angle, si } from '../units/index.js';
import { aimField, turned } from './aim.js';
import {
  type CloudOptions,
  type CloudWarning,
  cloudOptionFields,
  type FailedShot,
  playScattered,
  type ShotColumns,
} from './cloud.js';
import {
  type ExpectedStrokesOptions,
  type StrokesSettings,
  strokesOptionFields,
  strokesSettings,
} from './expected-strokes.js';
import { type Hole, holeField } from './hole.js';
import { scoreOf, type TeeShotScore } from './hole-strokes.js';
import { type MonteCarlo, meanOf, replicatesOf, type ShareOfShots, shareOf } from './monte-carlo.js';
import { readScattered, type Scattered } from './scattered.js';
import { SHOT_LIES, type ShotLie } from './shot-lie.js';

/** Tee shots, and the hole they are played on. */
export type HoleQuestion = Scattered & {
  /** The hole: length, fairway and hazards. */
  readonly hole: Hole;
};

/** Options of {@link strokesOnHole}. */
export interface StrokesOnHoleOptions extends ShotOptions, CloudOptions, ExpectedStrokesOptions {
  /**
   * Direction aimed at [rad], + right of the line to the fairway, −1 to 1; default 0. `best` looks for the aim with the
   * fewest strokes within 15° either way. The shots are turned about the tee as they are, and any wind in them with
   * them.
   */
  readonly aim?: Angle | 'best';
}

/** Declaration of {@link StrokesOnHoleOptions}. @internal */
export const strokesOnHoleOptionFields: Declared<StrokesOnHoleOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  ...cloudOptionFields,
  ...strokesOptionFields,
  aim: custom((value, path) => (value === 'best' ? value : readQuantity(aimField, value, path)), 'aim'),
}));

/** What a cloud of tee shots comes to on a hole. */
export interface StrokesOnHole {
  /** Expected strokes on the hole, the tee shot counted. */
  readonly strokes: MonteCarlo;
  /** Where tee shots end. */
  readonly endings: { readonly [L in ShotLie]: ShareOfShots };
  /** What each ending costs on average, strokes on the hole; absent where no shot ended so. */
  readonly cost: { readonly [L in ShotLie]?: number };
  /** The aim used [rad]. */
  readonly aim: Angle;
  /** Shots that the figures rest on. */
  readonly shots: number;
  /** Scattered shots outside what can be played, in no figure above. */
  readonly failures: readonly FailedShot[];
  /** Warnings of the models: the worst of each kind, and how many shots had it. */
  readonly warnings: readonly CloudWarning[];
}

const WIDEST_AIM = 15;

/**
 * Expected strokes on a hole for tee shots scattered as given: each shot's lie and distance from the hole, put through
 * {@link expectedStrokes}. Trees leave a recovery, a penalty area costs a stroke and a drop in the rough where the
 * ball went in, out of bounds stroke and distance.
 * @param question - the delivery or launch the player means to make, how shots differ from it, and the hole
 * @param scene - air, wind, ground, turf, ball and coefficient model; each has a default
 * @param options - clubhead, number of shots, seed, skill, aim; each has a default
 * @throws `FairflightError` `invalid-input` or `outside-range`; also when more than 5 % of the scattered shots
 *   cannot be played
 */
export function strokesOnHole(
  question: HoleQuestion,
  scene: Scene = {},
  options: StrokesOnHoleOptions = {},
): StrokesOnHole {
  const { hole, ...scatter } = readScattered<{ readonly hole: Hole }>(question, { hole: holeField });
  const resolved = resolveScene(scene);
  const given = readOptions(strokesOnHoleOptionFields, options);
  const { columns, failures, warnings } = playScattered(scatter, resolved, given);
  const counted = strokesOf(columns, hole, strokesSettings(given), given.aim);
  return { ...counted, shots: columns.shot.length, failures, warnings };
}

/** What a cloud of tee shots comes to. @internal */
export function strokesOf(
  columns: ShotColumns,
  hole: Hole,
  settings: StrokesSettings,
  aim: Angle | 'best' = si<Angle>(0),
): Pick<StrokesOnHole, 'strokes' | 'endings' | 'cost' | 'aim'> {
  const parts = replicatesOf(columns.shot);
  const direction = aim === 'best' ? bestAim(columns, hole, settings) : aim;
  const scores = scoresAt(columns, hole, settings, direction);
  const endings = Object.fromEntries(
    SHOT_LIES.map((ending) => [
      ending,
      shareOf(
        parts,
        scores.map((score) => score.ending === ending),
      ),
    ]),
  ) as { [L in ShotLie]: ShareOfShots };
  const cost = Object.fromEntries(
    SHOT_LIES.flatMap((ending) => {
      const own = scores.filter((score) => score.ending === ending).map((score) => score.strokes);
      return own.length > 0 ? [[ending, mean(own)]] : [];
    }),
  );
  return {
    strokes: meanOf(
      parts,
      scores.map((score) => score.strokes),
    ),
    endings,
    cost,
    aim: si(direction),
  };
}

/** Score of each tee shot, aimed so much to the right [rad]. @internal */
export function scoresAt(
  columns: ShotColumns,
  hole: Hole,
  settings: StrokesSettings,
  aim: number,
): TeeShotScore[] {
  const { landingX, landingZ, restX, restZ } = turned(columns, aim);
  return restX.map((x, i) =>
    scoreOf({ x: landingX[i] ?? x, z: landingZ[i] ?? 0 }, { x, z: restZ[i] ?? 0 }, hole, settings),
  );
}

/** By steps of half a degree: the expected strokes of a finite cloud are not smooth enough for anything finer. */
function bestAim(columns: ShotColumns, hole: Hole, settings: StrokesSettings): number {
  let best = { aim: 0, strokes: Number.POSITIVE_INFINITY };
  for (let half = 0; half <= 2 * WIDEST_AIM; half++) {
    for (const side of half === 0 ? [0] : [-1, 1]) {
      const aim = (side * half * Math.PI) / 360;
      const strokes = mean(scoresAt(columns, hole, settings, aim).map((score) => score.strokes));
      if (strokes < best.strokes - 1e-9) best = { aim, strokes };
    }
  }
  return best.aim;
}
