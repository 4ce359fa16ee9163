import type { Clubhead } from '../clubhead/index.js';
import { type Delivery, deliveryFields } from '../inputs/delivery.js';
import { type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions, readRecord } from '../inputs/read.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { Shot } from '../shot/index.js';
import { spinShare } from '../strike/spin-share.js';
import { type Angle, type Length, mph, type Speed, si } from '../units/index.js';
import { createSearch, requireComputed, type Search } from './deliverer.js';
import {
  type DistanceOptimum,
  type DriftWindow,
  type LaunchWindow,
  type OptimumOptions,
  optimumOptionFields,
} from './optimum.js';
import { bestLoftAt, boundsOf, descentWarnings, requireLanded } from './over-loft.js';
import type { Trial } from './search.js';
import { ANGLE_STEP, launchWindow, windowsFor } from './window.js';

/** The swing a loft is wanted for. */
export interface LoftQuestion {
  /** Club speed [m/s], 1 to 90. */
  readonly clubSpeed: Speed;
  /** Attack angle [rad], + up, −0.6 to 0.6. */
  readonly attackAngle: Angle;
  /** Dynamic loft the clubhead comes with now [rad], −0.4 to 1.4, from `inferDynamicLoft`; asks for advice. */
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
   * Distance to be gained [m]. Negative when the present flight is flatter than `minimumDescentAngle` allows and lives on
   * run; then look at `carryGain`.
   */
  readonly gain: Length;
  /** Carry to be gained [m]. */
  readonly carryGain: Length;
  /** The gain of this change, should the strikes spin one standard error less or more than the model has them. */
  readonly gainBand: { readonly low: Length; readonly high: Length };
}

/** The loft that goes furthest. */
export interface LoftOptimum extends DistanceOptimum {
  /** Best dynamic loft [rad]. */
  readonly dynamicLoft: Angle;
  /**
   * Best dynamic loft should the strike spin one standard error less or more than the model has it (`strike.spinBand`):
   * how well the peak is known. `window` says how little it matters.
   */
  readonly loftBand: { readonly low: Angle; readonly high: Angle };
  /** How far each input may drift. More speed never loses distance. */
  readonly window: LaunchWindow & {
    readonly clubSpeed: DriftWindow<Speed>;
    readonly attackAngle: DriftWindow<Angle>;
    readonly dynamicLoft: DriftWindow<Angle>;
  };
  /** Present when `deliveredLoft` was given. */
  readonly advice?: LoftAdvice;
}

/** Declaration of {@link LoftQuestion}. @internal */
export const loftQuestionFields: Declared<LoftQuestion> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: deliveryFields.clubSpeed,
  attackAngle: deliveryFields.attackAngle,
  deliveredLoft: optional({ ...deliveryFields.dynamicLoft, label: 'delivered loft' }),
}));

/**
 * The dynamic loft that carries, or goes in total, furthest at a club speed and attack angle, through the strike model
 * for level, square, centred strikes: launch and spin are what this head can deliver, not free.
 *
 * The optimum is flat; read `window`. The longest totals are lower flights than the longest carries: with 3–5° less loft
 * on level ground, coming down at 20–30° and living on run. Hard turf and slow speeds take that further; `warnings` says
 * when a landing is flatter than any bounce measured, and `minimumDescentAngle` keeps such flights out. Spin from a
 * strike is known to ±13 % with the driver, which `loftBand` and `advice.gainBand` count, and the run to ±25 %. Before a club is changed,
 * a fitter should watch it hit, and the rules of the game and local rules apply.
 *
 * Compare Penner 2001, Am. J. Phys. 69, 563, which asks the same of head speed with an older ball and head.
 * @param swing - club speed and attack angle; a speed whose ball would leave faster than 110 m/s is refused
 * @param scene - air, wind, ground, turf, ball and coefficient model
 * @param options - what to maximise, clubhead, lofts looked at, least descent
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the field; `outside-range` for
 *   `scene.ground` when no loft in the range lands the ball on it
 * @example bestLoft({ clubSpeed: mph(95), attackAngle: degrees(0) }).dynamicLoft
 */
export function bestLoft(swing: LoftQuestion, scene: Scene = {}, options: OptimumOptions = {}): LoftOptimum {
  const search = createSearch(resolveScene(scene), readOptions(optimumOptionFields, options));
  const { clubSpeed, attackAngle, deliveredLoft } = readRecord(loftQuestionFields, swing, 'delivery');
  const { deliverer, player, lofts, minimumDescent } = search;
  requireComputed(deliverer, clubSpeed, attackAngle, lofts.min, 'delivery.clubSpeed');

  const best = bestLoftAt(deliverer, clubSpeed, attackAngle, lofts);
  requireLanded(best);
  const dynamicLoft = si<Angle>(best.x);
  const delivery = { clubSpeed, attackAngle, dynamicLoft };
  const shot = player.fromDelivery(delivery);
  return {
    maximised: search.maximise,
    distance: si(best.value),
    dynamicLoft,
    loftBand: loftBandOf(search, delivery),
    shot,
    heldBy: boundsOf(best, 'dynamic-loft'),
    steepEnough: best.met,
    window: {
      ...launchWindow(deliverer, windowsFor(best, deliverer), shot.launch),
      ...swingWindow(search, windowsFor(best, deliverer), delivery),
    },
    ...(deliveredLoft !== undefined && { advice: adviceFor(search, delivery, deliveredLoft, shot) }),
    warnings: [...shot.warnings, ...descentWarnings(best, minimumDescent, shot.flight.descentAngle)],
  };
}

function swingWindow(
  { deliverer: { strike, trial } }: Search,
  edges: ReturnType<typeof windowsFor>,
  { clubSpeed, attackAngle, dynamicLoft }: Delivery,
): Omit<LoftOptimum['window'], keyof LaunchWindow> {
  const at = (speed: number, attack: number, loft: number): Trial => trial(strike(speed, attack, loft));
  const { clubSpeed: speeds, attackAngle: attacks, dynamicLoft: lofts } = deliveryFields;
  return {
    clubSpeed: edges((v) => at(v, attackAngle, dynamicLoft), {
      x: clubSpeed,
      lower: speeds.min,
      upper: clubSpeed,
      step: mph(1),
      power: 1,
    }),
    attackAngle: edges((a) => at(clubSpeed, a, dynamicLoft), {
      x: attackAngle,
      lower: attacks.min,
      upper: attacks.max,
      step: ANGLE_STEP,
      power: 1,
    }),
    dynamicLoft: edges((l) => at(clubSpeed, attackAngle, l), {
      x: dynamicLoft,
      lower: lofts.min,
      upper: lofts.max,
      step: ANGLE_STEP,
      power: 2,
    }),
  };
}

/** How far from the best loft one is looked for with another spin [rad]; a fifth of the spin moves it by 3° or less. */
const AROUND = 6 * ANGLE_STEP;

function loftBandOf(
  { deliverer, clubhead, lofts }: Search,
  { clubSpeed, attackAngle, dynamicLoft }: Delivery,
): LoftOptimum['loftBand'] {
  const near = {
    min: si<Angle>(Math.max(lofts.min, dynamicLoft - AROUND)),
    max: si<Angle>(Math.min(lofts.max, dynamicLoft + AROUND)),
  };
  const best = spinFactors(clubhead).map(
    (spin) => bestLoftAt(deliverer, clubSpeed, attackAngle, near, spin).x,
  );
  return { low: si(Math.min(dynamicLoft, ...best)), high: si(Math.max(dynamicLoft, ...best)) };
}

/** Spins one standard error below and above the model's, in units of it. */
function spinFactors(clubhead: Clubhead): readonly number[] {
  const share = spinShare(clubhead);
  return [1 - share, 1 + share];
}

function adviceFor(
  { player, clubhead, maximise, deliverer }: Search,
  best: Delivery,
  delivered: Angle,
  shot: Shot,
): LoftAdvice {
  const { staticLoft } = clubhead;
  const now = player.fromDelivery({ ...best, dynamicLoft: delivered });
  // A ball that does not land now has no distance.
  const landed = now.flight.ended === 'landed' ? 1 : 0;
  const gain = shot[maximise] - landed * now[maximise];
  const { clubSpeed, attackAngle } = best;
  const gains = spinFactors(clubhead).map((spin) => {
    const far = (loft: number): number =>
      Math.max(0, deliverer.distance(deliverer.strike(clubSpeed, attackAngle, loft, spin)));
    return far(best.dynamicLoft) - far(delivered);
  });
  return {
    change: si(best.dynamicLoft - delivered),
    nominalLoft: si(staticLoft + best.dynamicLoft - delivered),
    addedLoft: si(delivered - staticLoft),
    now,
    gain: si(gain),
    carryGain: si(shot.carry - landed * now.carry),
    gainBand: { low: si(Math.min(gain, ...gains)), high: si(Math.max(gain, ...gains)) },
  };
}
