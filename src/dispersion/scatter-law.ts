import { type Declared, optional, quantity } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Speed, si, toMph } from '../units/index.js';
import { RATIO } from '../units/unit.js';

/**
 * How scatter changes as a player swings faster or slower than now: by a share with each mph, compounding; 0.03 is 3 %
 * a mph. A share left out is 0, the same degrees or millimetres at every speed: lateral scatter grows with distance
 * only.
 */
export interface ScatterLaw {
  /** Growth of the scatter of path and face, −0.5 to 1 a mph; `scatterTrend` finds it from measured shots. */
  readonly directionPerMph?: number;
  /** Growth of the scatter of the strike on the face, −0.5 to 1 a mph. */
  readonly strikePerMph?: number;
}

/** Declaration of {@link ScatterLaw}. @internal */
export const scatterLawFields: Declared<ScatterLaw> = /* @__PURE__ */ frozen(() => ({
  directionPerMph: optional(quantity(RATIO, -0.5, 1, 0.02, 'growth of direction scatter a mph')),
  strikePerMph: optional(quantity(RATIO, -0.5, 1, 0.02, 'growth of strike scatter a mph')),
}));

/** Factors on direction and strike scatter at another club speed. @internal */
export function factorsAt(
  { directionPerMph = 0, strikePerMph = 0 }: ScatterLaw,
  from: Speed,
  to: Speed,
): { direction: number; strike: number } {
  const steps = toMph(si<Speed>(to - from));
  return { direction: (1 + directionPerMph) ** steps, strike: (1 + strikePerMph) ** steps };
}
