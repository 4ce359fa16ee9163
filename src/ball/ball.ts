import type { Source } from '../source.js';
import type { Length, Mass, MomentOfInertia } from '../units/index.js';
import { grams, kilogramSquareMetres, millimetres } from '../units/index.js';

/** A golf ball as a rigid sphere. */
export interface Ball {
  /** Name for reports. */
  readonly name: string;
  /** Mass [kg]. */
  readonly mass: Mass;
  /** Radius [m]. */
  readonly radius: Length;
  /** Moment of inertia about any diameter [kg m²]. */
  readonly inertia: MomentOfInertia;
  /** Where the numbers come from. */
  readonly source: Source;
}

const MASS = grams(45.93);
const RADIUS = millimetres(42.67 / 2);

/**
 * The heaviest and smallest ball the rules allow, which is what nearly every ball sold is: 45.93 g and 42.67 mm
 * (R&A and USGA, The Equipment Rules, 2019, part 4). Inertia of a uniform sphere, (2/5) m r².
 */
export const conformingBall: Ball = {
  name: 'conforming ball',
  mass: MASS,
  radius: RADIUS,
  inertia: kilogramSquareMetres(0.4 * MASS * RADIUS * RADIUS),
  source: {
    authors: 'The R&A and USGA',
    year: 2019,
    work: 'The Equipment Rules',
    locus: 'part 4, mass and size limits',
    confidence: 'published',
    note: 'Inertia is that of a uniform sphere, 83.6 g cm²; McNally et al. 2020 used 83.63 g cm².',
  },
};
