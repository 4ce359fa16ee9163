import type { MaximisedDistance } from '../optimum/index.js';
import type { ChangePlayer, Distances, SwingChange, UsualLaunch } from './change-player.js';
import type { ChangeRanking, EvidenceName, RankedChange, StrokesSaved } from './change-ranking.js';
import { type ChangeStep, swingChange } from './change-steps.js';
import { type ScatteredMeans, type ScoredScatter, STROKE_WORLDS, scatteredMeans } from './change-strokes.js';
import {
  drawnDistance,
  drawnInterval,
  hangsOn,
  verdictOf,
  WORTH,
  WORTH_IN_STROKES,
} from './change-verdict.js';
import type { PlayerEvidence } from './player-evidence.js';
import type { PlayerWorld } from './player-worlds.js';
import type { RankSettings } from './rank-options.js';

/** A drawn player and the usual shot as it is. @internal */
export interface DrawnWorld {
  readonly world: PlayerWorld;
  readonly now: Distances;
}

/** What changes are judged by. @internal */
export interface Judge {
  readonly player: ChangePlayer;
  readonly worlds: readonly DrawnWorld[];
  readonly evidence: PlayerEvidence;
  readonly settings: RankSettings;
  readonly scatter: PlayedScatter | undefined;
}

/** The scatter of a player, and in the worlds in which strokes are counted what it comes to as it is. @internal */
export interface PlayedScatter {
  readonly scored: ScoredScatter;
  readonly now: readonly (ScatteredMeans | undefined)[];
}

/** Plays the scattered shots as they are, once for all changes. @internal */
export function playedScatter(
  player: ChangePlayer,
  worlds: readonly DrawnWorld[],
  scored: ScoredScatter,
): PlayedScatter {
  const now = worlds
    .slice(0, STROKE_WORLDS)
    .map(({ world }, k) => scatteredMeans(player, world, k, player.launch(world, {}), scored));
  return { scored, now };
}

/** Share of the draws in which a change must be computed. */
const ENOUGH = 0.9;
/** Scatter lost by the step. Assumption. */
const LESS_SCATTER = 0.1;

/** Judges one step; undefined where fewer than nine draws of ten can be computed. @internal */
export function judgeStep(judge: Judge, step: ChangeStep): RankedChange | undefined {
  const { player, worlds, evidence, settings } = judge;
  const { maximise, level } = settings;
  const does = swingChange(step);
  const after = worlds.flatMap(({ world, now }) => {
    const gain = gainOf(player, world, does, maximise, now);
    return gain === undefined ? [] : [{ world, ...gain }];
  });
  if (after.length < ENOUGH * worlds.length) return undefined;
  const gains = after.map((each) => each[maximise]);
  const carry = drawnDistance(
    after.map((each) => each.carry),
    level,
  );
  const total = drawnDistance(
    after.map((each) => each.total),
    level,
  );
  const [gain, other] = maximise === 'carry' ? [carry, total] : [total, carry];
  const measure = assumedIn(evidence).filter(({ name, of }) => {
    const assumed = after.map(({ world }) => of(world));
    // Nobody is told to change what nobody has measured.
    const own = step.change === 'attack-angle' && name === 'attackAngle' && gain.high >= WORTH;
    return own || hangsOn(assumed, gains, WORTH);
  });
  const named = measure.map(({ name }) => name);
  const strokes = judge.scatter && strokesSaved(judge, judge.scatter, does);
  return {
    ...step,
    carry,
    total,
    ...(strokes && { strokes }),
    verdict: verdictOf({
      gain,
      worth: WORTH,
      other,
      measure: named,
      training: step.change === 'speed',
    }),
    measure: named,
  };
}

/** What a change brings in one world. @internal */
export function gainOf(
  player: ChangePlayer,
  world: PlayerWorld,
  does: SwingChange,
  maximise: MaximisedDistance,
  now: Distances | undefined,
): Distances | undefined {
  const then = player.distances(world, launchAfter(player, world, does, maximise));
  const before = does.fitted
    ? player.distances(world, launchAfter(player, world, { fitted: does.fitted }, maximise))
    : now;
  return then && before && { carry: then.carry - before.carry, total: then.total - before.total };
}

/** The launch after a change; where lofts are fitted to it, that of the one that goes furthest. */
function launchAfter(
  player: ChangePlayer,
  world: PlayerWorld,
  { fitted = [0], ...change }: SwingChange,
  maximise: MaximisedDistance,
): UsualLaunch | undefined {
  let best: UsualLaunch | undefined;
  let furthest = Number.NEGATIVE_INFINITY;
  for (const loft of fitted) {
    const launch = player.launch(world, {
      ...change,
      ...(loft !== 0 && { loft: loft + (change.loft ?? 0) }),
    });
    if (fitted.length === 1) return launch;
    const far = player.distances(world, launch)?.[maximise] ?? Number.NEGATIVE_INFINITY;
    if (far > furthest) {
      best = launch;
      furthest = far;
    }
  }
  return best;
}

/** Judges less scatter, in strokes. @internal */
export function judgeScatter(judge: Judge, scatter: PlayedScatter): readonly RankedChange[] {
  const pairs = scatteredPairs(judge, scatter, {}, 1 - LESS_SCATTER);
  if (pairs.length === 0) return [];
  const { level } = judge.settings;
  const gained = (of: 'carry' | 'total'): readonly number[] => pairs.map(([now, then]) => then[of] - now[of]);
  const strokes = drawnInterval(
    pairs.map(([now, then]) => now.strokes - then.strokes),
    level,
  );
  return [
    {
      change: 'scatter',
      step: LESS_SCATTER,
      carry: drawnDistance(gained('carry'), level),
      total: drawnDistance(gained('total'), level),
      strokes,
      verdict: verdictOf({ gain: strokes, worth: WORTH_IN_STROKES, measure: [] }),
      measure: [],
    },
  ];
}

function strokesSaved(judge: Judge, scatter: PlayedScatter, does: SwingChange): StrokesSaved | undefined {
  const pairs = scatteredPairs(judge, scatter, does);
  if (pairs.length === 0) return undefined;
  return drawnInterval(
    pairs.map(([now, then]) => now.strokes - then.strokes),
    judge.settings.level,
  );
}

/** Scattered shots as they are and after a change, in some of the worlds; none where too few can be computed. */
function scatteredPairs(
  { player, worlds, settings: { maximise } }: Judge,
  { scored, now: asNow }: PlayedScatter,
  does: SwingChange,
  scale = 1,
): readonly (readonly [ScatteredMeans, ScatteredMeans])[] {
  const some = worlds.slice(0, STROKE_WORLDS);
  const pairs = some.flatMap(({ world }, k): (readonly [ScatteredMeans, ScatteredMeans])[] => {
    const means = (change: SwingChange, of: number): ScatteredMeans | undefined =>
      scatteredMeans(player, world, k, launchAfter(player, world, change, maximise), scored, of);
    const now = does.fitted ? means({ fitted: does.fitted }, 1) : asNow[k];
    const then = means(does, scale);
    return now && then ? [[now, then]] : [];
  });
  return pairs.length < ENOUGH * some.length ? [] : pairs;
}

interface Assumed {
  readonly name: EvidenceName;
  readonly of: (world: PlayerWorld) => number;
}

/** What was assumed of the player. */
function assumedIn({
  clubSpeed,
  ballSpeed,
  attackAngle,
  launchAngle,
  dynamicLoft,
  spinRate,
}: PlayerEvidence): readonly Assumed[] {
  return [
    ...(clubSpeed ? [] : [{ name: 'clubSpeed', of: (world) => world.clubSpeed } satisfies Assumed]),
    ...(ballSpeed
      ? []
      : [{ name: 'ballSpeed', of: (world) => world.ballSpeed / world.clubSpeed } satisfies Assumed]),
    ...(attackAngle ? [] : [{ name: 'attackAngle', of: (world) => world.attackAngle } satisfies Assumed]),
    ...(launchAngle || dynamicLoft
      ? []
      : [{ name: 'launchAngle', of: (world) => world.launchAngle } satisfies Assumed]),
    ...(spinRate ? [] : [{ name: 'spinRate', of: (world) => world.spinRate } satisfies Assumed]),
  ];
}

/** Carry against a centred strike, its ball speed and its spin apart. @internal */
export function againstCentred({
  player,
  worlds,
  settings,
}: Judge): Required<ChangeRanking>['againstCentred'] {
  const parts = worlds.flatMap(({ world, now }) => {
    const centred = player.centred(world);
    if (centred === undefined) return [];
    const { launchAngle, spinRate } = world;
    // The mean of strikes on the face is no faster than a strike in its centre, whatever the readings say.
    const ballSpeed = Math.max(world.ballSpeed, centred.ballSpeed);
    const full = player.distances(world, { ballSpeed, launchAngle, spinRate });
    const alike = player.distances(world, { ballSpeed, launchAngle, spinRate: centred.spinRate });
    if (full === undefined || alike === undefined) return [];
    return [{ ballSpeed: full.carry - now.carry, spin: alike.carry - full.carry }];
  });
  return {
    ballSpeed: drawnDistance(
      parts.map((part) => Math.max(0, part.ballSpeed)),
      settings.level,
    ),
    spin: drawnDistance(
      parts.map((part) => part.spin),
      settings.level,
    ),
  };
}

/** Those advised first, what asks for training last; by strokes where a hole is given, else by the distance judged. @internal */
export function ranked(
  changes: readonly RankedChange[],
  { maximise }: RankSettings,
): readonly RankedChange[] {
  const byStrokes = changes.every(({ strokes }) => strokes !== undefined);
  const gain = (each: RankedChange): number =>
    byStrokes ? (each.strokes?.value ?? 0) : each[maximise].value;
  const place = ({ verdict }: RankedChange): number =>
    verdict === 'advised' ? 0 : verdict === 'by-training' ? 2 : 1;
  return [...changes].sort((a, b) => place(a) - place(b) || gain(b) - gain(a));
}

/** True where the best estimate of a step is that it brings nothing: what it would change is best left as it is. @internal */
export function bringsNothing(change: RankedChange, { maximise }: RankSettings): boolean {
  return change.verdict === 'not-worth-it' && change.change !== 'scatter' && change[maximise].value <= 0;
}
