import type { Ball } from '../../ball/index.js';
import type { ValidRange } from '../../source.js';

/** Share of ball speed gained per kelvin, ± 0.0003. @internal */
export const GAIN_PER_KELVIN = 0.00045;
/** Temperature at which the restitution of the heads holds [K]: 20 °C. @internal */
export const REFERENCE_TEMPERATURE = 293.15;

/** Temperatures of the rows the gain is derived from, 52 to 92 °F [K]. @internal */
export const BALL_TEMPERATURES: ValidRange = { min: 284.26, max: 306.49 };

/**
 * What the temperature of the ball multiplies the speed by at which it leaves the face along the normal,
 * 1 + 0.00045 (T − 293.15 K), ± 0.0003 a kelvin; 1 where the ball has no temperature. The restitution e of the strike
 * becomes (1 + e) times this, less 1.
 *
 * Derived from trade rows of carry between 52 and 92 °F (golf press 2018 and 2023, and an anonymous model), less what the
 * air does there: `tests/strike/warm-ball.test.ts` works it out. The rows agree only just, and nothing measured on balls of
 * different temperatures was found.
 * @internal
 */
export function warmth({ temperature }: Ball): number {
  return temperature === undefined ? 1 : 1 + GAIN_PER_KELVIN * (temperature - REFERENCE_TEMPERATURE);
}
