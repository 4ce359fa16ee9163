import { DRIVER_GRIP_SPEEDS } from '../clubhead/driver-grip.js';
import type { Clubhead } from '../clubhead/index.js';
import { type ModelWarning, outsideRange } from '../warnings/warning.js';
import type { StrikeInput } from './impact.js';
import { BALL_TEMPERATURES } from './kernel/warmth.js';

/** Id of the strike model. @internal */
export const STRIKE_MODEL = 'rigid-body impulse';
/** Club speeds of the averages and ball tests the restitution laws were calibrated on, 80 to 125 mph [m/s]. */
const SPEED = { min: 35.7, max: 55.9 };
/** Spin lofts of a driver and of the other clubs for which tangential restitution was calibrated [rad]. */
const CONSTANT_GRIP = { min: 4 * (Math.PI / 180), max: 20 * (Math.PI / 180) };
const OBLIQUE_GRIP = { min: 12 * (Math.PI / 180), max: 42 * (Math.PI / 180) };

/** Says which inputs lie outside the range the model was calibrated for. @internal */
export function strikeWarnings(
  { clubSpeed, toe, high }: Readonly<StrikeInput>,
  { tangentialRestitution, restitution }: Clubhead,
  { temperature = BALL_TEMPERATURES.min }: { readonly temperature?: number },
  spinLoft: number,
): readonly ModelWarning[] {
  const { kind } = tangentialRestitution;
  const speeds = kind === 'by-speed' ? DRIVER_GRIP_SPEEDS : SPEED;
  const grip = kind === 'oblique' ? OBLIQUE_GRIP : CONSTANT_GRIP;
  const face = { min: 0, max: restitution.edgeDistance };
  return [
    outsideRange('club-speed-outside-data', STRIKE_MODEL, 'clubSpeed', speeds, clubSpeed),
    outsideRange('spin-loft-outside-data', STRIKE_MODEL, 'spinLoft', grip, spinLoft),
    outsideRange('strike-beyond-face-map', STRIKE_MODEL, 'strikeOffset', face, Math.hypot(toe, high)),
    outsideRange(
      'ball-temperature-outside-data',
      STRIKE_MODEL,
      'ballTemperature',
      BALL_TEMPERATURES,
      temperature,
    ),
  ].filter((warning) => warning !== undefined);
}
