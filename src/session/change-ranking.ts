import type { AerodynamicModelId } from '../aerodynamics/registry.js';
import type { MaximisedDistance } from '../optimum/index.js';
import type { Length } from '../units/index.js';
import type { DistanceChange } from './attribution.js';

/**
 * What could be changed. `loft`: nominal loft. `attack-angle`: up, with the loft fitted
 * to it by up to 2°; the gain is what that brings over the same fitting without it. `strike`: half of the way back to
 * the ball speed of a centred strike. `speed`: more club speed. `scatter`: every shot nearer to the usual one.
 */
export type ChangeName = 'loft' | 'attack-angle' | 'strike' | 'speed' | 'scatter';

/**
 * What to make of a change. `advised`: worth it and clear of its own interval. `by-training`: so is this, but no fitting
 * and no lesson brings it, only weeks of training, which tire and can hurt; show it apart, with `trainingCautions`.
 * `too-few-shots`: it would be advised, were there five shots or more. `not-worth-it`: less than `worth`. `leave`: nothing
 * at all by the best estimate, so it is best left as it is. `not-clear`: the interval holds nothing gained.
 * `costs-the-other`: the other distance loses more than is uncertain. `measure-first`: its worth hangs on what was assumed,
 * named by `measure`.
 */
export type ChangeVerdict =
  | 'advised'
  | 'by-training'
  | 'not-worth-it'
  | 'leave'
  | 'too-few-shots'
  | 'not-clear'
  | 'costs-the-other'
  | 'measure-first';

/** What a judgement rests on and was either read from the shots or assumed. */
export type EvidenceName =
  | 'clubSpeed'
  | 'ballSpeed'
  | 'attackAngle'
  | 'dynamicLoft'
  | 'launchAngle'
  | 'spinRate';

/** Strokes saved, with their interval. */
export interface StrokesSaved {
  /** Best estimate. */
  readonly value: number;
  /** Lower end of the interval. */
  readonly low: number;
  /** Upper end of the interval. */
  readonly high: number;
}

/** One change, and what it brings. */
export interface RankedChange {
  /** Which. */
  readonly change: ChangeName;
  /**
   * By how much: loft and attack angle [rad], + more loft, + up; strike and scatter as a share, of ball speed gained and of
   * scatter lost; club speed [m/s].
   */
  readonly step: number;
  /** Carry gained [m]. */
  readonly carry: DistanceChange;
  /** Total distance gained [m]. */
  readonly total: DistanceChange;
  /** Strokes saved on the hole; present when one was given and the shots show how they scatter. */
  readonly strokes?: StrokesSaved;
  /** What to make of it. */
  readonly verdict: ChangeVerdict;
  /** Readings that were assumed and that the worth of the change hangs on; empty unless `measure-first`. */
  readonly measure: readonly EvidenceName[];
}

/** What {@link rankChanges} returns. */
export interface ChangeRanking {
  /** The distance judged. */
  readonly maximise: MaximisedDistance;
  /** Least gain of a distance that is advised [m]: 3 yd. An assumption: what a player can tell from nothing. */
  readonly worth: Length;
  /** Coverage of the intervals. */
  readonly level: number;
  /** The usual shot as it is, by the model. */
  readonly now: { readonly carry: DistanceChange; readonly total: DistanceChange };
  /** All changes: those advised first, what asks for training last, and among each kind the most gain first. */
  readonly changes: readonly RankedChange[];
  /** Best left as it is: no step that can be attained brings anything, or there is none to take. */
  readonly leave: readonly ChangeName[];
  /**
   * Carry against a centred strike with the same delivery, in two parts [m]. `ballSpeed` is what the strike loses, never
   * negative. `spin` is what another spin than the model's costs (+) or brings (−): of ball, head and height of strike
   * nothing tells which, so it is no mishit. Absent unless club and ball speed were measured.
   */
  readonly againstCentred?: { readonly ballSpeed: DistanceChange; readonly spin: DistanceChange };
  /** How many shots each reading rests on; 0 where it was assumed and varied over what players do. */
  readonly readings: { readonly [Name in EvidenceName]: number };
  /** Coefficient models the ball was drawn from: those of present-day balls whose range this flight keeps to. */
  readonly models: readonly AerodynamicModelId[];
}
