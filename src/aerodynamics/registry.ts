import { frozen } from '../inputs/frozen.js';
import { bearmanHarvey1976, bearmanHarveyLaw } from './bearman-harvey-1976.js';
import { davies1949, daviesLaw } from './davies-1949.js';
import { fittedLaw, fittedModern } from './fitted-modern.js';
import { lieberman2001, liebermanLaw } from './lieberman-2001.js';
import type { AerodynamicModel, CoefficientLaw } from './model.js';
import { naruo2004, naruoLaw } from './naruo-2004.js';
import { pennerBearmanHarvey, pennerLaw } from './penner-bearman-harvey.js';
import { smitsSmith1994, smitsSmithLaw } from './smits-smith-1994.js';
import { testRangeLaw, testRangeLine } from './test-range-line.js';

/** Ids of the built-in models. */
export type AerodynamicModelId =
  | 'fitted-modern'
  | 'lieberman-2001'
  | 'naruo-2004'
  | 'smits-smith-1994'
  | 'bearman-harvey-1976'
  | 'penner-bearman-harvey'
  | 'test-range-line'
  | 'davies-1949';

/** The laws of the built-in models by id: what a flight needs of them. @internal */
export const coefficientLaws: Readonly<Record<AerodynamicModelId, CoefficientLaw>> = /* @__PURE__ */ frozen(
  () => ({
    'fitted-modern': fittedLaw,
    'lieberman-2001': liebermanLaw,
    'naruo-2004': naruoLaw,
    'smits-smith-1994': smitsSmithLaw,
    'bearman-harvey-1976': bearmanHarveyLaw,
    'penner-bearman-harvey': pennerLaw,
    'test-range-line': testRangeLaw,
    'davies-1949': daviesLaw,
  }),
);

/** The built-in models by id. */
export const aerodynamicModels: Readonly<Record<AerodynamicModelId, AerodynamicModel>> =
  /* @__PURE__ */ frozen(() => ({
    'fitted-modern': fittedModern,
    'lieberman-2001': lieberman2001,
    'naruo-2004': naruo2004,
    'smits-smith-1994': smitsSmith1994,
    'bearman-harvey-1976': bearmanHarvey1976,
    'penner-bearman-harvey': pennerBearmanHarvey,
    'test-range-line': testRangeLine,
    'davies-1949': davies1949,
  }));

/** The built-in models of a ball as they are made today; the others are balls of their time. */
export const presentDayModels: readonly AerodynamicModelId[] = /* @__PURE__ */ frozen(() => [
  'fitted-modern',
  'test-range-line',
  'naruo-2004',
  'lieberman-2001',
]);

/** The model used where none is named: {@link fittedModern}. */
export const defaultAerodynamics: AerodynamicModel = fittedModern;
