import type { ValidRange } from '../source.js';
import type { Length } from '../units/index.js';

/** What a warning is about; stable, for programs. {@link warningText} makes the sentence. */
export type WarningCode =
  /** A flight left the Reynolds numbers a coefficient model has data for. */
  | 'reynolds-outside-data'
  /** A flight left the spin ratios a coefficient model has data for. */
  | 'spin-ratio-outside-data'
  /** The ball was still in the air at the time limit. */
  | 'still-in-the-air'
  /** The ball never came above the ground plane. */
  | 'never-above-ground'
  /** The ball was launched along the ground or into it and never flew. */
  | 'topped'
  /** The club speed is outside what the strike was calibrated on. */
  | 'club-speed-outside-data'
  /** The spin loft is outside what the head's grip law was calibrated on. */
  | 'spin-loft-outside-data'
  /** The strike lies beyond the part of the face the restitution map describes. */
  | 'strike-beyond-face-map'
  /** The ball is colder or warmer than in the rows its effect on the strike is derived from. */
  | 'ball-temperature-outside-data'
  /** The ball lands faster or slower than the bounce was measured. */
  | 'landing-speed-outside-data'
  /** The ball comes in flatter or steeper than the bounce was measured. */
  | 'descent-outside-data'
  /** No flight of a search comes down as steeply as asked. */
  | 'flatter-than-asked';

/** `note`: worth knowing, an ordinary shot may raise it. `caution`: do not build on the figure without a look. */
export type Severity = 'note' | 'caution';

/** Says that a result rests on a model outside the range it was published for. The result is still computed. */
export interface ModelWarning {
  /** What it is about. */
  readonly code: WarningCode;
  /** How much it matters. */
  readonly severity: Severity;
  /** Id of the model. */
  readonly model: string;
  /** Quantity that left the range, for example `spinRatio`. */
  readonly quantity: string;
  /** Published range [SI]. */
  readonly range: ValidRange;
  /** The value furthest outside the range [SI]. */
  readonly value: number;
  /** What it may change, where that can be told. */
  readonly effect?: {
    /** Carry, plus or minus [m]. */
    readonly carry?: Length;
  };
}

/** How far past an end of its range, as a share of that end, a value is merely worth a note. */
const NEAR = 0.25;

/** What may be off for a value outside a range. @internal */
export interface CarryEffect {
  /** Carry, plus or minus [m]. */
  readonly carry: Length;
  /** The same as a share of the carry. */
  readonly share: number;
}

/** The share of the carry up to which an effect is merely worth a note. */
const SMALL = 0.1;

/**
 * The warning for a value outside a range, or undefined for one inside. A note up to a quarter past the end, because
 * every coefficient model and impact law here bends slowly over such a stretch, and a note where the effect can be told
 * and is at most a tenth of the carry, as at the end of a wedge shot. A caution otherwise.
 * @param effect - what it may change, where that can be told
 * @internal
 */
export function outsideRange(
  code: WarningCode,
  model: string,
  quantity: string,
  { min, max }: ValidRange,
  value: number,
  effect?: CarryEffect,
): ModelWarning | undefined {
  if (value >= min && value <= max) return undefined;
  const end = value < min ? min : max;
  const small = effect !== undefined && effect.share <= SMALL;
  const severity = small || Math.abs(value - end) <= NEAR * Math.abs(end) ? 'note' : 'caution';
  const range = { min, max };
  if (effect === undefined) return { code, severity, model, quantity, range, value };
  return { code, severity, model, quantity, range, value, effect: { carry: effect.carry } };
}
