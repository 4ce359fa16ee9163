import { clubheads } from '../clubhead/index.js';
import { FairflightError, requireRecord } from '../errors.js';
import type { Launch } from '../scene/index.js';
import { playShot, type Shot, type ShotSetup } from '../shot/index.js';
import type { ModelWarning } from '../source.js';
import { type Angle, degrees, type Length, mph, type Speed, si } from '../units/index.js';
import { type Deliverer, LIMITS, prepare, requireLimit } from './deliverer.js';
import type { Bound, LaunchWindow, Optimum, OptimumSetup, Window } from './optimum.js';
import { type Maximum, maximise, reach, type Trial } from './search.js';

/** Which loft is best for this speed and attack angle? */
export interface LoftQuestion extends OptimumSetup {
  /** Club speed [m/s], 1 to 90. */
  readonly clubSpeed: Speed;
  /** Attack angle [rad], + up, −0.6 to 0.6. */
  readonly attackAngle: Angle;
  /** Dynamic loft the clubhead comes with now [rad], from {@link inferDynamicLoft}; asks for advice. */
  readonly deliveredLoft?: Angle;
}

/** What to change, for a player who goes on delivering the head as now. */
export interface LoftAdvice {
  /** Change of nominal loft [rad], + more loft. */
  readonly change: Angle;
  /** Nominal loft after it [rad]: the head's design loft and the change. */
  readonly nominalLoft: Angle;
  /** What the delivery adds to the nominal loft [rad]: dynamic less design loft. Taken to stay. */
  readonly addedLoft: Angle;
  /** A centred strike with the loft delivered now. */
  readonly now: Shot;
  /**
   * Distance to be gained [m]. Negative when the present flight is flatter than the least descent allows and the model
   * lets it live on run; then look at `carryGain`.
   */
  readonly gain: Length;
  /** Carry to be gained [m]. */
  readonly carryGain: Length;
}

/** The loft that goes furthest. */
export interface LoftOptimum extends Optimum {
  /** Best dynamic loft [rad]. */
  readonly dynamicLoft: Angle;
  /** How far each input may drift. More speed never loses distance. */
  readonly window: LaunchWindow & {
    readonly clubSpeed: Window<Speed>;
    readonly attackAngle: Window<Angle>;
    readonly dynamicLoft: Window<Angle>;
  };
  /** Present when `deliveredLoft` was given. */
  readonly advice?: LoftAdvice;
}

/** Share of the distance that a window may lose. */
const LOSS = 0.01;
/** Widest cell of the search [rad]: the humps of total against loft are 3° apart. */
const CELL = degrees(1);

/**
 * The dynamic loft that carries, or goes in total, furthest at a club speed and attack angle, through the strike model
 * for level, square, centred strikes: launch and spin are what this head can deliver, not free.
 *
 * When total is maximised the flight must come down at 30° or more, unless `minimumDescentAngle` says otherwise: below,
 * the model would find its longest totals where no bounce has been measured. The optimum is flat; read `window`.
 * Spin from a strike is known to ±20 % and the run to ±30 %, which moves the best loft by a degree or two. Before a
 * club is changed, a fitter should watch it hit, and the rules of the game and local rules apply.
 *
 * Compare Penner 2001, Am. J. Phys. 69, 563, which asks the same of head speed with an older ball and head.
 * @throws {@link FairflightError} `invalid-input` or `outside-range` naming the field; `outside-range` for
 *   `scene.ground` when no loft in the range lands the ball on it
 * @example bestLoft({ clubSpeed: mph(95), attackAngle: degrees(0), maximise: 'total' }).dynamicLoft
 */
export function bestLoft(question: LoftQuestion): LoftOptimum {
  requireRecord('question', question, [...SETUP_FIELDS, 'clubSpeed', 'attackAngle', 'deliveredLoft']);
  const speed = requireLimit('clubSpeed', question.clubSpeed);
  const attack = requireLimit('attackAngle', question.attackAngle);
  const { deliverer, lofts, minimumDescent } = prepare(question);
  const delivered = question.deliveredLoft;
  if (delivered !== undefined) requireLimit('dynamicLoft', delivered, 'deliveredLoft');

  const best = bestLoftAt(deliverer, speed, attack, lofts);
  requireLanded(best);
  const loft = best.x;
  const shot = playShot(
    { clubSpeed: si(speed), attackAngle: si(attack), dynamicLoft: si(loft) },
    shotSetup(question),
  );
  const { strike, trial } = deliverer;
  const at = (v: number, a: number, l: number): Trial => trial(strike(v, a, l));
  const edges = windowsFor(best);
  const [lowAttack, highAttack] = LIMITS.attackAngle;
  const [lowLoft, highLoft] = LIMITS.dynamicLoft;
  return {
    maximised: question.maximise,
    distance: si(best.value),
    dynamicLoft: si(loft),
    shot,
    heldBy: boundsOf(best, 'dynamic-loft'),
    steepEnough: best.met,
    window: {
      ...launchWindow(deliverer, edges, shot.launch),
      clubSpeed: edges((v) => at(v, attack, loft), speed, LIMITS.clubSpeed[0], speed, mph(1)),
      attackAngle: edges((a) => at(speed, a, loft), attack, lowAttack, highAttack, CELL),
      dynamicLoft: edges((l) => at(speed, attack, l), loft, lowLoft, highLoft, CELL),
    },
    ...(delivered !== undefined && {
      advice: adviceFor(question, loft, delivered, shot),
    }),
    warnings: [...shot.warnings, ...descentWarnings(best, minimumDescent, shot.flight.descentAngle)],
  };
}

/** Fields of {@link OptimumSetup}. @internal */
export const SETUP_FIELDS = [
  'maximise',
  'clubhead',
  'scene',
  'flight',
  'dynamicLoft',
  'minimumDescentAngle',
] as const;

/** The best loft at one speed and attack angle. @internal */
export function bestLoftAt(
  { strike, trial }: Deliverer,
  speed: number,
  attack: number,
  [low, high]: readonly [number, number],
): Maximum {
  const cells = Math.max(2, Math.ceil((high - low) / CELL));
  return maximise((loft) => trial(strike(speed, attack, loft)), low, high, cells);
}

/** @throws FairflightError when nothing landed @internal */
export function requireLanded(best: Maximum): void {
  if (best.value > Number.NEGATIVE_INFINITY) return;
  throw new FairflightError(
    'outside-range',
    'scene.ground is out of reach: at no point of the range searched does the ball land on it',
    { field: 'scene.ground', hint: 'check speed, elevation and slope' },
  );
}

/** Clubhead, scene and integration options for the final shot. @internal */
export function shotSetup({ clubhead, scene, flight }: ShotSetup): ShotSetup {
  return { ...(clubhead && { clubhead }), ...(scene && { scene }), ...(flight && { flight }) };
}

/** What holds an optimum over loft. @internal */
export function boundsOf(best: Maximum, range: Bound): readonly Bound[] {
  if (best.heldBy === 'nothing') return [];
  return best.heldBy === 'range' ? [range] : ['minimum-descent-angle'];
}

/** Finds the window of one input between two limits. @internal */
export type Edges = <Q extends number>(
  trial: (x: number) => Trial,
  x: number,
  lower: number,
  upper: number,
  step: number,
) => Window<Q>;

/** Windows around an optimum. Where nothing is steep enough, only the distance counts. @internal */
export function windowsFor(best: Maximum): Edges {
  const keep = (1 - LOSS) * best.value;
  return <Q extends number>(
    trial: (x: number) => Trial,
    x: number,
    lower: number,
    upper: number,
    step: number,
  ): Window<Q> => {
    const judged = best.met ? trial : (at: number) => ({ ...trial(at), margin: Number.POSITIVE_INFINITY });
    const { low, high } = reach(judged, x, keep, lower, upper, step);
    const held = [low?.byConstraint && ('low' as const), high?.byConstraint && ('high' as const)].filter(
      (end) => end === 'low' || end === 'high',
    );
    return {
      ...(low && { low: low.x as Q }),
      ...(high && { high: high.x as Q }),
      ...(held.length > 0 && { heldByDescent: held }),
    };
  };
}

/** How far the launch of an optimum may drift; more ball speed never loses distance. @internal */
export function launchWindow({ trial }: Deliverer, edges: Edges, launch: Launch): LaunchWindow {
  const [lowest, highest] = LIMITS.launchAngle;
  const [least, most] = LIMITS.spinRate;
  const { ballSpeed, launchAngle, spinRate } = launch;
  const step = Math.max(1, spinRate / 20);
  return {
    ballSpeed: edges(
      (v) => trial({ ...launch, ballSpeed: si(v) }),
      ballSpeed,
      LIMITS.ballSpeed[0],
      ballSpeed,
      mph(1),
    ),
    launchAngle: edges((a) => trial({ ...launch, launchAngle: si(a) }), launchAngle, lowest, highest, CELL),
    spinRate: edges((w) => trial({ ...launch, spinRate: si(w) }), spinRate, least, most, step),
  };
}

/** Says so when nothing comes down as steeply as asked. @internal */
export function descentWarnings(
  best: Maximum,
  minimum: number | undefined,
  descent: number,
): readonly ModelWarning[] {
  if (best.met || minimum === undefined) return [];
  const degree = 180 / Math.PI;
  return [
    {
      model: 'optimum',
      quantity: 'descentAngle',
      range: { min: minimum, max: Math.PI / 2 },
      value: descent,
      message: `No flight in the range searched comes down at ${(minimum * degree).toFixed(0)}° or more; this is the steepest, ${(descent * degree).toFixed(1)}°.`,
    },
  ];
}

function adviceFor(question: LoftQuestion, best: number, delivered: Angle, shot: Shot): LoftAdvice {
  const { clubSpeed, attackAngle, maximise } = question;
  const { staticLoft } = question.clubhead ?? clubheads.driver;
  const now = playShot({ clubSpeed, attackAngle, dynamicLoft: delivered }, shotSetup(question));
  // A ball that does not land now has no distance.
  const landed = now.flight.ended === 'landed' ? 1 : 0;
  return {
    change: si(best - delivered),
    nominalLoft: si(staticLoft + best - delivered),
    addedLoft: si(delivered - staticLoft),
    now,
    gain: si(shot[maximise] - landed * now[maximise]),
    carryGain: si(shot.carry - landed * now.carry),
  };
}
