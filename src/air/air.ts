import type { Density, DynamicViscosity } from '../units/index.js';

/** The air a ball flies through, the same at every height: density changes by under 1 % over the tallest drive. */
export interface Air {
  /** Density [kg/m³]. */
  readonly density: Density;
  /** Dynamic viscosity [Pa s]. */
  readonly viscosity: DynamicViscosity;
}
