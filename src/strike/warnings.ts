import type { Clubhead } from '../clubhead/index.js';
import type { ModelWarning } from '../source.js';
import type { StrikeInput } from './impact.js';

/** Id of the strike model. @internal */
export const STRIKE_MODEL = 'rigid-body impulse';
/** Club speeds of the averages and ball tests the restitution laws were calibrated on, 80 to 125 mph [m/s]. */
const SPEED = { min: 35.7, max: 55.9 };
/** Spin lofts for which constant and oblique tangential restitution were tabulated or calibrated [rad]. */
const CONSTANT_GRIP = { min: 4 * (Math.PI / 180), max: 20 * (Math.PI / 180) };
const OBLIQUE_GRIP = { min: 12 * (Math.PI / 180), max: 42 * (Math.PI / 180) };

/** Says which inputs lie outside the range the model was calibrated for. @internal */
export function strikeWarnings(
  delivery: Readonly<StrikeInput>,
  head: Clubhead,
  spinLoft: number,
): readonly ModelWarning[] {
  const warnings: ModelWarning[] = [];
  const note = (
    quantity: string,
    range: { min: number; max: number },
    value: number,
    message: string,
  ): void => {
    if (value < range.min || value > range.max)
      warnings.push({ model: STRIKE_MODEL, quantity, range, value, message });
  };
  note(
    'clubSpeed',
    SPEED,
    delivery.clubSpeed,
    'Restitution was calibrated between 80 and 125 mph of club speed; outside it its slope with speed is extrapolated.',
  );
  note(
    'spinLoft',
    head.tangentialRestitution.kind === 'constant' ? CONSTANT_GRIP : OBLIQUE_GRIP,
    spinLoft,
    'The grip law of this head was calibrated for other spin lofts; treat the spin rate as a rough figure.',
  );
  note(
    'strikeOffset',
    { min: 0, max: head.restitution.edgeDistance },
    Math.hypot(delivery.toe, delivery.high),
    'The strike lies beyond the part of the face the restitution map describes; edge restitution is used there.',
  );
  return warnings;
}
