import {
  aerodynamicModels,
  type ModelChoice,
  resolveModel,
  scaledModel,
  tabulatedModel,
  withReverseMagnus,
} from '../../../src/aerodynamics/index.js';
import type { Source } from '../../../src/source.js';
import { each, type Numbers, type Room } from '../room.js';

const source: Source = {
  authors: 'nobody',
  year: 2026,
  work: 'invented for tests',
  confidence: 'assumption',
};
const smits = aerodynamicModels['smits-smith-1994'];

/** An invented wind tunnel. */
export const ownTable: ModelChoice = tabulatedModel({
  id: 'own-table',
  reynolds: [50_000, 100_000, 200_000],
  spinRatio: [0, 0.1, 0.3],
  drag: [
    [0.4, 0.42, 0.47],
    [0.25, 0.27, 0.34],
    [0.22, 0.25, 0.33],
  ],
  lift: [
    [0, 0.08, 0.2],
    [0, 0.14, 0.25],
    [0, 0.15, 0.26],
  ],
  source,
});

/** Models made from others. */
export const ownModels: Readonly<Record<string, ModelChoice>> = {
  tabulated: ownTable,
  scaled: scaledModel(aerodynamicModels['fitted-modern'], { drag: 1.07, lift: 0.92 }),
  'scaled-lift-only': scaledModel(smits, { lift: 1.1 }),
  'reverse-magnus': withReverseMagnus(smits),
};

/** A drive, and a slow ball with much spin. */
const AT: Readonly<Record<string, readonly [reynolds: number, spinRatio: number]>> = {
  drive: [180_000, 0.09],
  slow: [60_000, 0.45],
};

const coefficients = (choice: ModelChoice): Numbers => {
  const model = resolveModel(choice);
  return Object.fromEntries(
    Object.entries(AT).flatMap(([name, [re, s]]) => [
      [`drag-${name}`, model.dragCoefficient(re, s)],
      [`lift-${name}`, model.liftCoefficient(re, s)],
    ]),
  );
};

/** Coefficients of lift and drag. */
export const aerodynamics: Room = {
  room: 'aerodynamics',
  digits: 12,
  questions: each({ ...aerodynamicModels, ...ownModels }, coefficients),
};
