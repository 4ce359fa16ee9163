import type { AerodynamicModel, CoefficientLaw, ModelWords } from './model.js';

const laws = /* @__PURE__ */ new WeakMap<object, CoefficientLaw>();

/** A law with the words on it; {@link lawOf} finds the law again. @internal */
export function described(law: CoefficientLaw, words: ModelWords): AerodynamicModel {
  const model = { ...law, ...words };
  laws.set(model, law);
  return model;
}

/** The law of a described model; `undefined` for anything else. @internal */
export function lawOf(model: object): CoefficientLaw | undefined {
  return laws.get(model);
}
