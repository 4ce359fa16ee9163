import type { Ball } from '../ball/index.js';
import type { Clubhead } from '../clubhead/index.js';
import { isFairflightError } from '../errors.js';
import type { NormalPrior } from '../inputs/prior.js';
import type { ReadingErrors } from '../inputs/readings.js';
import { type Stream, stream } from '../numerics/index.js';
import { inferLoft } from '../optimum/infer-loft.js';
import { squareStrike } from '../strike/impact.js';
import { defaultPriors } from '../strike/locate-model.js';
import { spinShare } from '../strike/spin-share.js';
import { createStriker, type Striker } from '../strike/striker.js';
import { si } from '../units/index.js';
import { drawMean, type PlayerEvidence } from './player-evidence.js';

/** A player who could have hit these shots, and how far the models may be wrong about him. Plain SI. @internal */
export interface PlayerWorld {
  readonly clubSpeed: number;
  readonly attackAngle: number;
  /** Of a centred strike that launches as this player's balls do. */
  readonly dynamicLoft: number;
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly spinRate: number;
  /** Which of the coefficient laws, 0 to 1. */
  readonly ball: number;
  /** Run over the modelled run, in standard errors of it. */
  readonly run: number;
  /** How much more the spin answers to a change than the strike model says, as a share. */
  readonly response: number;
  /** Spin over that of a centred strike. */
  readonly spinFactor: number;
}

/** Ball speed over that of a centred strike where nothing was read of it. Assumption. */
const USUAL_STRIKE: NormalPrior = { mean: 0.97, standardDeviation: 0.02 };

/** Spread that the height of strikes, and differences of head and ball, add to a player's spin, as a share. Assumption. */
const SPIN_BY_HEIGHT = 0.2;

/** What worlds are drawn from. @internal */
export interface WorldSource {
  readonly evidence: PlayerEvidence;
  readonly errors: ReadingErrors;
  readonly clubhead: Clubhead;
  readonly golfBall: Ball;
}

/** The player as the readings have him, all that is uncertain at its middle. @internal */
export function middleWorld(source: WorldSource): PlayerWorld | undefined {
  return worldFrom(source, { normal: () => 0, uniform: () => 0.5 });
}

/** Candidates that every draw is chosen from. */
const CANDIDATES = 2;

/**
 * Draws players; those that no strike or no loft explains are left out. Launch and spin together tell something of the
 * attack angle: players whose spin the strike model explains better are drawn more often (importance resampling).
 * @internal
 */
export function drawWorlds(source: WorldSource, draws: number, seed: number): readonly PlayerWorld[] {
  const candidates = Array.from({ length: CANDIDATES * draws }, (_, k) =>
    worldFrom(source, stream(seed, k)),
  ).flatMap((world) => world ?? []);
  const spread = Math.hypot(spinShare(source.clubhead), SPIN_BY_HEIGHT);
  const unlikeliness = candidates.map(({ spinFactor }) => (Math.log(spinFactor) / spread) ** 2 / 2);
  const least = Math.min(...unlikeliness);
  if (!Number.isFinite(least) || source.evidence.spinRate === undefined) return candidates.slice(0, draws);
  return resampled(
    candidates,
    unlikeliness.map((each) => Math.exp(least - each)),
    Math.min(draws, Math.floor(candidates.length / CANDIDATES)),
  );
}

/** Systematic resampling: each as often as its weight says, to within one. */
function resampled<T>(candidates: readonly T[], weights: readonly number[], draws: number): readonly T[] {
  const step = weights.reduce((sum, weight) => sum + weight, 0) / draws;
  const chosen: T[] = [];
  let reached = 0;
  candidates.forEach((candidate, k) => {
    reached += weights[k] ?? 0;
    while (chosen.length < draws && (chosen.length + 0.5) * step < reached) chosen.push(candidate);
  });
  return chosen;
}

function worldFrom(source: WorldSource, random: Pick<Stream, 'normal' | 'uniform'>): PlayerWorld | undefined {
  try {
    return drawn(source, random as Stream);
  } catch (error) {
    if (isFairflightError(error)) return undefined;
    throw error;
  }
}

function drawn(
  { evidence, errors, clubhead, golfBall }: WorldSource,
  random: Stream,
): PlayerWorld | undefined {
  const { normal, uniform } = random;
  const prior = defaultPriors(clubhead, golfBall, {
    ...(evidence.ballSpeed && { ballSpeed: si(evidence.ballSpeed.mean) }),
  });
  const fromPrior = ({ mean, standardDeviation }: NormalPrior): number => mean + standardDeviation * normal();
  const angle = (name: 'attackAngle' | 'launchAngle' | 'dynamicLoft'): number | undefined => {
    const of = evidence[name];
    return of && drawMean(of, random) + errors[name] * normal();
  };
  const share = (name: 'clubSpeed' | 'ballSpeed' | 'spinRate'): number => Math.exp(errors[name] * normal());

  const attackAngle = angle('attackAngle') ?? fromPrior(prior.attackAngle);
  const speeds = speedsOf(evidence, random, prior.clubSpeed);
  const clubSpeed = speeds.club * share('clubSpeed');
  const launched = angle('launchAngle');
  const dynamicLoft =
    launched === undefined
      ? (angle('dynamicLoft') ?? fromPrior(prior.dynamicLoft))
      : inferLoft({ launchAngle: si(launched), attackAngle: si(attackAngle) }, clubhead, golfBall)
          .dynamicLoft;
  const centred = centredStrike(
    createStriker({ clubhead, ball: golfBall }),
    clubSpeed,
    attackAngle,
    dynamicLoft,
  );
  if (centred === undefined) return undefined;
  const ballSpeed = speeds.ball ?? centred.ballSpeed * fromPrior(USUAL_STRIKE);
  const spread = spinShare(clubhead);
  const spinRate = evidence.spinRate
    ? drawMean(evidence.spinRate, random) * share('spinRate')
    : centred.spinRate * Math.exp(spread * normal());
  return {
    clubSpeed,
    attackAngle,
    dynamicLoft,
    ballSpeed: ballSpeed * share('ballSpeed'),
    launchAngle: launched ?? centred.launchAngle,
    spinRate,
    ball: uniform(),
    run: normal(),
    response: spread * normal(),
    spinFactor: spinRate / centred.spinRate,
  };
}

/** Mean speeds drawn. Ball and club scatter together, so the smash factor tells them apart. */
function speedsOf(
  { clubSpeed, ballSpeed, smash }: PlayerEvidence,
  random: Stream,
  prior: NormalPrior,
): { readonly club: number; readonly ball: number | undefined } {
  if (clubSpeed === undefined) {
    const club = prior.mean + prior.standardDeviation * random.normal();
    return { club, ball: ballSpeed && drawMean(ballSpeed, random) };
  }
  const club = drawMean(clubSpeed, random);
  if (ballSpeed === undefined || smash === undefined)
    return { club, ball: ballSpeed && drawMean(ballSpeed, random) };
  const scatter = club / clubSpeed.mean + drawMean(smash, random) / smash.mean - 1;
  return { club, ball: ballSpeed.mean * scatter };
}

/** How a centred strike leaves, copied. @internal */
export interface CentredStrike {
  readonly ballSpeed: number;
  readonly launchAngle: number;
  readonly spinRate: number;
}

/** A level, square, centred strike; undefined where there is none. @internal */
export function centredStrike(
  { strike }: Striker,
  clubSpeed: number,
  attackAngle: number,
  dynamicLoft: number,
): CentredStrike | undefined {
  if (!(clubSpeed > 0)) return undefined;
  const struck = strike(squareStrike(clubSpeed, attackAngle, dynamicLoft));
  if (typeof struck === 'string') return undefined;
  const { ballSpeed, launchAngle, spinRate } = struck.launch;
  return { ballSpeed, launchAngle, spinRate };
}
