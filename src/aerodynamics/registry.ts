import { frozen } from '../inputs/frozen.js';
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
export const aerodynamicModels: Readonly<Record<AerodynamicModelId, AerodynamicModel>> =
  /* @__PURE__ */ frozen(() => ({
    'fitted-modern': fittedModern,
    'smits-smith-1994': smitsSmith1994,
    'penner-bearman-harvey': pennerBearmanHarvey,
    'test-range-line': testRangeLine,
    'davies-1949': davies1949,
  }));

/** The model used where none is named: {@link fittedModern}. */
export const defaultAerodynamics: AerodynamicModel = fittedModern;
