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
  readonly shots: number;
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
  const played = worlds.map((drawn) => playedBoth(player, drawn, does, maximise));
  const after = worlds.flatMap(({ world }, k) => {
    const gain = gainOf(played[k]);
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
  const strokes = judge.scatter && strokesSaved(judge, judge.scatter, played);
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
      shots: judge.shots,
      training: step.change === 'speed',
    }),
    measure: named,
  };
}

/** A usual shot: how it leaves, and how far it goes where that can be computed. @internal */
export interface Played {
  readonly launch: UsualLaunch;
  readonly far: Distances | undefined;
}

/** The usual shot before a change, fitted where the change is, and after it. @internal */
export interface PlayedBoth {
  readonly before: Played | undefined;
  readonly after: Played | undefined;
}

/** What a change brings in one world; undefined where it cannot be computed. @internal */
export function gainOf({ before, after }: Partial<PlayedBoth> = {}): Distances | undefined {
  if (before?.far === undefined || after?.far === undefined) return undefined;
  return { carry: after.far.carry - before.far.carry, total: after.far.total - before.far.total };
}

/** Plays the usual shot of a world before and after a change. @internal */
export function playedBoth(
  player: ChangePlayer,
  { world, now }: DrawnWorld,
  { fitted, ...does }: SwingChange,
  maximise: MaximisedDistance,
): PlayedBoth {
  const play = (change: SwingChange): Played | undefined => {
    const launch = player.launch(world, change);
    return launch && { launch, far: player.distances(world, launch) };
  };
  const launch = player.launch(world, {});
  const asNow = launch && { launch, far: now };
  if (fitted === undefined) return { before: asNow, after: play(does) };
  const furthest = (shots: readonly (Played | undefined)[]): Played | undefined =>
    shots.reduce((best, shot) => {
      const beats = (shot?.far?.[maximise] ?? Number.NEGATIVE_INFINITY) > (best?.far?.[maximise] ?? 0);
      return beats ? shot : best;
    }, undefined);
  return {
    before: furthest(fitted.map((loft) => (loft === 0 ? asNow : play({ loft })))),
    after: furthest(fitted.map((loft) => play({ ...does, loft }))),
  };
}

/** Judges less scatter, in strokes. @internal */
export function judgeScatter(judge: Judge, scatter: PlayedScatter): readonly RankedChange[] {
  const { player, worlds } = judge;
  const pairs = scatteredPairs(worlds, (world, k) => [
    scatter.now[k],
    scatteredMeans(player, world, k, player.launch(world, {}), scatter.scored, 1 - LESS_SCATTER),
  ]);
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
      verdict: verdictOf({ gain: strokes, worth: WORTH_IN_STROKES, measure: [], shots: judge.shots }),
      measure: [],
    },
  ];
}

function strokesSaved(
  { player, worlds, settings }: Judge,
  { scored, now: asNow }: PlayedScatter,
  played: readonly Partial<PlayedBoth>[],
): StrokesSaved | undefined {
  const pairs = scatteredPairs(worlds, (world, k) => {
    const means = (shot: Played | undefined): ScatteredMeans | undefined =>
      scatteredMeans(player, world, k, shot?.launch, scored);
    const { before, after } = played[k] ?? {};
    return [before?.far === worlds[k]?.now ? asNow[k] : means(before), means(after)];
  });
  if (pairs.length === 0) return undefined;
  return drawnInterval(
    pairs.map(([now, then]) => now.strokes - then.strokes),
    settings.level,
  );
}

/** Scattered shots before and after a change, in some of the worlds; none where too few can be computed. */
function scatteredPairs(
  worlds: readonly DrawnWorld[],
  pairOf: (
    world: PlayerWorld,
    k: number,
  ) => readonly [now: ScatteredMeans | undefined, then: ScatteredMeans | undefined],
): readonly (readonly [ScatteredMeans, ScatteredMeans])[] {
  const some = worlds.slice(0, STROKE_WORLDS);
  const pairs = some.flatMap(({ world }, k): (readonly [ScatteredMeans, ScatteredMeans])[] => {
    const [now, then] = pairOf(world, k);
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
