import { described } from './described.js';
import type { AerodynamicModel, CoefficientLaw, ModelWords } from './model.js';
import type { ModelChoice, ModelData } from './model-data.js';
import { isModelData } from './model-fields.js';
import { type AerodynamicModelId, aerodynamicModels, defaultAerodynamics } from './registry.js';
import { resolveData, resolveLaw } from './resolve.js';
import { reverseMagnusWords } from './reverse-magnus.js';
import { scaledWords } from './scaled.js';
import { tableWords } from './table.js';

/** The described models of laws made from data, for as long as a law lives. */
const models = /* @__PURE__ */ new WeakMap<CoefficientLaw, AerodynamicModel>();

/**
 * The coefficient functions that a scene flies by: of a built-in model by its id, of a model held as data, or of a
 * record of functions, which is given back as it is. `undefined` gives the default. The same data give
 * the same functions.
 * @param field - name used in error messages
 * @throws `FairflightError` `invalid-input` or `outside-range` naming the entry that is wrong
 */
export function resolveModel(
  choice: ModelChoice = defaultAerodynamics,
  field = 'aerodynamics',
): AerodynamicModel {
  if (isModelData(choice)) return modelOfData(choice, field);
  const law = resolveLaw(choice, field);
  return typeof choice === 'string' ? aerodynamicModels[law.id as AerodynamicModelId] : choice;
}

function modelOfData(given: ModelData, field: string): AerodynamicModel {
  const { data, law } = resolveData(given, field);
  const known = models.get(law);
  if (known !== undefined) return known;
  const model = Object.freeze(described(law, wordsOn(data)));
  models.set(law, model);
  return model;
}

/** The words on a model held as data, already checked. */
function wordsOn(data: ModelData): ModelWords {
  switch (data.kind) {
    case 'table':
      return tableWords(data);
    case 'fitted':
      return { label: data.label ?? data.id, source: data.source, extrapolation: 'The formulas continue.' };
    case 'scaled':
      return scaledWords(resolveModel(data.of), data);
    case 'reverse-magnus':
      return reverseMagnusWords(resolveModel(data.of));
  }
}
