import { FairflightError } from '../errors.js';
import { davies1949 } from './davies-1949.js';
import { fittedModern } from './fitted-modern.js';
import type { AerodynamicModel } from './model.js';
import { pennerBearmanHarvey } from './penner-bearman-harvey.js';
import { smitsSmith1994 } from './smits-smith-1994.js';
import { testRangeLine } from './test-range-line.js';

/** Ids of the built-in models. */
export type AerodynamicModelId =
  | 'fitted-modern'
  | 'smits-smith-1994'
  | 'penner-bearman-harvey'
  | 'test-range-line'
  | 'davies-1949';

/** The built-in models by id. */
export const aerodynamicModels: Readonly<Record<AerodynamicModelId, AerodynamicModel>> = {
  'fitted-modern': fittedModern,
  'smits-smith-1994': smitsSmith1994,
  'penner-bearman-harvey': pennerBearmanHarvey,
  'test-range-line': testRangeLine,
  'davies-1949': davies1949,
};

/** The model used where none is named: {@link fittedModern}. */
export const defaultAerodynamics: AerodynamicModel = fittedModern;

/**
 * The model itself, from its id or from the model. `undefined` gives {@link defaultAerodynamics}.
 * @param choice - id of a built-in model, or a model
 * @param field - name used in error messages
 * @throws {@link FairflightError} `invalid-input` for an unknown id or a record that is not a model
 */
export function aerodynamicModel(
  choice: AerodynamicModel | string = defaultAerodynamics,
  field = 'aerodynamics',
): AerodynamicModel {
  if (typeof choice === 'string') {
    if (Object.hasOwn(aerodynamicModels, choice)) return aerodynamicModels[choice as AerodynamicModelId];
    const known = Object.keys(aerodynamicModels).join(', ');
    throw new FairflightError(
      'invalid-input',
      `${field} must be one of ${known}, or a model, got ${JSON.stringify(choice)}`,
      { field, value: choice, hint: 'pass your own grid through tabulated()' },
    );
  }
  const fault = faultOf(choice);
  if (fault !== undefined) {
    throw new FairflightError('invalid-input', `${field} is not a coefficient model: ${fault}`, {
      field,
      value: choice,
      hint: 'spread a built-in model and change what differs, or pass your own grid through tabulated()',
    });
  }
  return choice;
}

/** Says what keeps a record from being a model; the types cannot promise it to callers in plain JavaScript. */
function faultOf(model: Partial<AerodynamicModel> | null): string | undefined {
  if (typeof model !== 'object' || model === null) return `got ${String(model)}`;
  if (typeof model.id !== 'string' || model.id === '') return 'id must be a non-empty string';
  if (typeof model.dragCoefficient !== 'function') return 'dragCoefficient must be a function of Re and S';
  if (typeof model.liftCoefficient !== 'function') return 'liftCoefficient must be a function of Re and S';
  if (model.spinEntering !== 'across' && model.spinEntering !== 'total') {
    return "spinEntering must be 'across' or 'total'";
  }
  if (!isRange(model.validity?.reynolds) || !isRange(model.validity?.spinRatio)) {
    return 'validity must give min and max of reynolds and spinRatio';
  }
  if (typeof model.spinDecay !== 'number' || !(model.spinDecay >= 0 && model.spinDecay <= 1e-3)) {
    return 'spinDecay must be between 0 and 0.001';
  }
  return undefined;
}

function isRange(range: { readonly min: number; readonly max: number } | undefined): boolean {
  return typeof range === 'object' && range !== null && range.min <= range.max;
}
