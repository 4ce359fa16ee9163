import type { QuantityRange } from '../inputs/between.js';
import { refusal } from '../inputs/refuse.js';
import { type Angle, RADIANS_PER_DEGREE } from '../units/index.js';
import type { ModelWarning } from '../warnings/index.js';
import type { Deliverer } from './deliverer.js';
import type { OptimumBound } from './optimum.js';
import { type Maximum, maximise } from './search.js';

/** Widest cell of the search [rad]: the humps of total against loft are 3° apart, carry has one. */
const LOFT_CELL = { total: RADIANS_PER_DEGREE, carry: 4 * RADIANS_PER_DEGREE };

/** The best loft at one speed and attack angle, the strike's spin times a factor. @internal */
export function bestLoftAt(
  { strike, trial, smooth }: Deliverer,
  speed: number,
  attack: number,
  { min, max }: QuantityRange<Angle>,
  spin?: number,
): Maximum {
  const cell = smooth ? LOFT_CELL.carry : LOFT_CELL.total;
  const cells = Math.max(2, Math.ceil((max - min) / cell));
  return maximise((loft) => trial(strike(speed, attack, loft, spin)), min, max, cells);
}

/** @throws FairflightError when nothing landed @internal */
export function requireLanded(best: Maximum): void {
  if (best.value > Number.NEGATIVE_INFINITY) return;
  throw refusal(
    'scene.ground',
    'scene.ground is out of reach: at no point of the range searched does the ball land on it',
    { hint: 'check speed, elevation and slope' },
    'outside-range',
  );
}

/** What holds an optimum over loft. @internal */
export function boundsOf(best: Maximum, range: OptimumBound): readonly OptimumBound[] {
  if (best.heldBy === 'nothing') return [];
  return best.heldBy === 'range' ? [range] : ['minimum-descent-angle'];
}

/** Says so when nothing comes down as steeply as asked. @internal */
export function descentWarnings(
  best: Maximum,
  minimum: number | undefined,
  descent: number,
): readonly ModelWarning[] {
  if (best.met || minimum === undefined) return [];
  return [
    {
      code: 'flatter-than-asked',
      severity: 'caution',
      model: 'optimum',
      quantity: 'descentAngle',
      range: { min: minimum, max: Math.PI / 2 },
      value: descent,
    },
  ];
}
