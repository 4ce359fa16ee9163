import { type Ball, ballFields } from '../inputs/ball.js';
import { type NamedField, named } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { grams, kilogramSquareMetres, millimetres } from '../units/index.js';

/** Names of the bundled balls. */
export type BallName = 'conforming';

/**
 * Bundled balls. `conforming` is the heaviest and smallest ball the rules allow, which is what nearly every ball sold
 * is: 45.93 g and 42.67 mm (R&A and USGA, The Equipment Rules, 2019, part 4). Inertia of a uniform sphere, (2/5) m r².
 */
export const balls: Readonly<Record<BallName, Ball>> = /* @__PURE__ */ frozen(() => {
  const mass = grams(45.93);
  const radius = millimetres(42.67 / 2);
  return {
    conforming: {
      name: 'conforming ball',
      mass,
      radius,
      inertia: kilogramSquareMetres(0.4 * mass * radius * radius),
      source: {
        authors: 'The R&A and USGA',
        year: 2019,
        work: 'The Equipment Rules',
        locus: 'part 4, mass and size limits',
        confidence: 'published',
        note: 'Inertia is that of a uniform sphere, 83.6 g cm²; McNally et al. 2020 used 83.63 g cm².',
      },
    },
  };
});

/** A ball as an input. @internal */
export const ballField: NamedField = /* @__PURE__ */ frozen(() => named(balls, ballFields, 'ball'));
