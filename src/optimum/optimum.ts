import { between, type QuantityRange } from '../inputs/between.js';
import { deliveryFields } from '../inputs/delivery.js';
import { choice, type Declared, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { Shot, ShotOptions } from '../shot/index.js';
import { shotOptionFields } from '../shot/shot-options.js';
import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';
import { DEGREES } from '../units/unit.js';
import type { ModelWarning } from '../warnings/index.js';

export type { QuantityRange };

/** What an optimum maximises: carry, or carry and run. */
export type MaximisedDistance = 'carry' | 'total';

/**
 * How far one input may drift, the others held, before 1 % of the distance is lost or the flight becomes flatter than
 * the least descent. An end is left out where neither happens within what the library computes.
 */
export interface DriftWindow<Q extends number> {
  /** Lower end. */
  readonly low?: Q;
  /** Upper end. */
  readonly high?: Q;
  /**
   * Ends set by the least descent asked for. The distance holds beyond them, on flatter flights.
   */
  readonly heldByDescent?: readonly ('low' | 'high')[];
}

/** Options that the questions about an optimum have in common. */
export interface OptimumOptions extends ShotOptions {
  /** What to maximise; default carry. Total rests on a run known to ±25 %, and its longest flights are low. */
  readonly maximise?: MaximisedDistance;
  /** Dynamic lofts looked at [rad], −0.4 to 1.4 each end; default 2° to 60°. */
  readonly dynamicLoft?: QuantityRange<Angle>;
  /**
   * Flattest descent accepted [rad], below the horizontal, −π/2 to 1.4; default none. Where it decides, `heldBy` says so.
   * 30° to 40° marks a well-matched drive (common practice, no source); bounces have been measured down to 16°.
   */
  readonly minimumDescentAngle?: Angle;
}

/** Declaration of {@link OptimumOptions}. @internal */
export const optimumOptionFields: Declared<OptimumOptions> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  maximise: optional(choice<MaximisedDistance>(['carry', 'total'], 'what to maximise')),
  dynamicLoft: optional(between(deliveryFields.dynamicLoft, 'dynamic loft')),
  minimumDescentAngle: optional(quantity(DEGREES, -Math.PI / 2, 1.4, 0.52, 'flattest descent')),
}));

/** What may hold an optimum back. */
export type OptimumBound =
  /** A flatter flight would go further. */
  | 'minimum-descent-angle'
  /** The best lies at an end of the lofts looked at. */
  | 'dynamic-loft'
  /** The best lies at an end of the attack angles looked at. */
  | 'attack-angle'
  /** The best lies at an end of the launch angles allowed. */
  | 'launch-angle'
  /** The best lies at an end of the spin rates allowed. */
  | 'spin-rate';

/** What every optimum reports. */
export interface DistanceOptimum {
  /** What was maximised. */
  readonly maximised: MaximisedDistance;
  /** The distance reached [m]: carry or total. */
  readonly distance: Length;
  /** The whole shot at the optimum. */
  readonly shot: Shot;
  /** What holds the optimum: empty when it is a true peak. */
  readonly heldBy: readonly OptimumBound[];
  /** False when no loft comes down as steeply as asked; then this is the steepest, and a warning says so. */
  readonly steepEnough: boolean;
  /** Warnings of strike, flight and run at the optimum, and of the search. */
  readonly warnings: readonly ModelWarning[];
}

/** How far launch conditions may drift from an optimum. */
export interface LaunchWindow {
  /** Ball speed [m/s]. */
  readonly ballSpeed: DriftWindow<Speed>;
  /** Launch angle at the same spin [rad]. */
  readonly launchAngle: DriftWindow<Angle>;
  /** Spin rate at the same launch angle [rad/s]. */
  readonly spinRate: DriftWindow<AngularSpeed>;
}
