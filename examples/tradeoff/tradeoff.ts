import type { Clubhead, Scene } from 'fairflight';
import {
  type Dispersion,
  disperse,
  type FasterOrStraighter,
  fasterOrStraighter,
  type GolferSkill,
  type Hole,
  type ScalableSpread,
  type ScatterLaw,
} from 'fairflight/dispersion';
import type { ChangeRanking } from 'fairflight/session';
import { type Angle, type Length, mph, type Speed, si, toMph } from 'fairflight/units';
import { adviceOn } from '../lib/advice.js';
import type { Progress } from '../lib/progress.js';
import { type ChosenLaw, factorsOf, type Player } from './player.js';

/** The course as the player meets it from the tee. */
export interface Course {
  readonly lengths: readonly Length[];
  readonly fairway: Length;
  /** Distance of trees from the middle of the fairway, on both sides; absent without trees. */
  readonly trees: Length | undefined;
  /** Distance of out of bounds, likewise. */
  readonly bounds: Length | undefined;
  readonly skill: GolferSkill;
}

/** The cloud of shots at one speed. */
export interface Cloud {
  readonly clubSpeed: Speed;
  readonly dispersion: Dispersion;
}

/** The whole answer. */
export interface Tradeoff {
  readonly player: Player;
  readonly course: Course;
  readonly clubhead: Clubhead;
  readonly scene: Scene;
  readonly answer: FasterOrStraighter;
  /** The same with scatter that stays as it is; absent when that is the law. */
  readonly constant: FasterOrStraighter | undefined;
  /** Best speed were the player's trend at either end of its interval; absent without a measured law. */
  readonly ends: { readonly low: FasterOrStraighter; readonly high: FasterOrStraighter } | undefined;
  readonly now: Cloud;
  readonly faster: Cloud;
  /** What could be changed at the present speed; absent where no strike explains the shots. */
  readonly advice: ChangeRanking | undefined;
}

/** What to work out. */
export interface TradeoffQuestion {
  readonly player: Player;
  readonly course: Course;
  readonly clubhead: Clubhead;
  readonly scene: Scene;
  readonly shots: number;
}

/** Steps of work for a progress bar. */
export const WORK = 100;
/** How much faster the second cloud of the plan view is [mph]. */
const STEP_SHOWN = 8;

/** Works the trade-off out. */
export function tradeoffOf(question: TradeoffQuestion, progress: Progress): Tradeoff {
  const { player, course, clubhead, scene, shots } = question;
  const { law } = player;
  const laws = lawsOf(law);
  const { usual, spread } = player;
  const ask = (growth: ScatterLaw, count: number, from: number, to: number): FasterOrStraighter =>
    fasterOrStraighter({ delivery: usual, spread, hole: holesOf(course), law: growth }, scene, {
      clubhead,
      skill: course.skill,
      shots: count,
      onProgress: (done) => progress.tick(from + (to - from) * done),
    });
  const answer = ask(law.growth, shots, 0, laws.constant ? 30 : 90);
  const constant = laws.constant && ask(laws.constant, shots, 30, laws.low ? 60 : 90);
  const ends = laws.low &&
    laws.high && {
      low: ask(laws.low, Math.ceil(shots / 2), 60, 75),
      high: ask(laws.high, Math.ceil(shots / 2), 75, 90),
    };
  const cloud = (clubSpeed: Speed): Cloud => ({
    clubSpeed,
    dispersion: disperse({ delivery: { ...usual, clubSpeed }, spread: scaled(player, clubSpeed) }, scene, {
      clubhead,
      shots: 1024,
      fairway: { width: course.fairway },
      ...(course.trees !== undefined && { limits: { left: course.trees, right: course.trees } }),
    }),
  });
  const now = cloud(usual.clubSpeed);
  const faster = cloud(si<Speed>(usual.clubSpeed + mph(STEP_SHOWN)));
  progress.tick(WORK);
  const advice = adviceOn(player.now.shots, scene, { clubhead });
  return { player, course, clubhead, scene, answer, constant, ends, now, faster, advice };
}

interface Laws {
  readonly constant: ScatterLaw | undefined;
  readonly low: ScatterLaw | undefined;
  readonly high: ScatterLaw | undefined;
}

/** What the law is compared with. */
function lawsOf(law: ChosenLaw): Laws {
  if (law.kind !== 'measured') {
    return { constant: law.kind === 'asked' ? {} : undefined, low: undefined, high: undefined };
  }
  const { low, high } = law.trend.interval;
  return { constant: {}, low: { directionPerMph: low }, high: { directionPerMph: high } };
}

function holesOf({ lengths, fairway, trees, bounds }: Course): readonly Hole[] {
  const both = (kind: 'trees' | 'out-of-bounds', at: Length | undefined): NonNullable<Hole['hazards']> =>
    at === undefined
      ? []
      : [
          { kind, acrossFrom: at },
          { kind, acrossTo: si<Length>(-at) },
        ];
  const hazards = [...both('trees', trees), ...both('out-of-bounds', bounds)];
  return lengths.map((length) => ({ length, fairway: { width: fairway }, hazards }));
}

function scaled({ spread, law, usual }: Player, clubSpeed: Speed): ScalableSpread {
  const { direction, strike } = factorsOf(law.growth, toMph(si<Speed>(clubSpeed - usual.clubSpeed)));
  const angle = (value: Angle | undefined): Angle => si<Angle>((value ?? 0) * direction);
  const length = (value: Length | undefined): Length => si<Length>((value ?? 0) * strike);
  const { clubPath, faceAngle, toe, high } = spread.sd;
  return {
    ...spread,
    sd: {
      ...spread.sd,
      clubPath: angle(clubPath),
      faceAngle: angle(faceAngle),
      toe: length(toe),
      high: length(high),
    },
  };
}
