import type { TangentialRestitution } from '../inputs/clubhead.js';

/**
 * The one number that raises or lowers a law of tangential restitution: its value, its limit where it is oblique, its
 * value at the reference speed where it follows the club speed.
 * @internal
 */
export function gripLevel(law: TangentialRestitution): number {
  if (law.kind === 'constant') return law.value;
  return law.kind === 'oblique' ? law.limit : law.atReference;
}

/** The same law at another level. @internal */
export function withGripLevel(law: TangentialRestitution, level: number): TangentialRestitution {
  if (law.kind === 'constant') return { ...law, value: level };
  return law.kind === 'oblique' ? { ...law, limit: level } : { ...law, atReference: level };
}
