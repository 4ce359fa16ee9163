import type { Duration, Length } from '../units/index.js';
import { METRES, SECONDS } from '../units/unit.js';
import { type Declared, optional, quantity } from './field.js';
import { frozen } from './frozen.js';

/** How a flight is integrated. */
export interface FlightOptions {
  /**
   * Error of the landing point that integration may add to an ordinary flight [m], 1e-9 to 10; default 1e-4. In the
   * corners of the domain (spin ratio 2.5, 20 m/s of wind, 200 m drops) it may be ten times that, at the default under
   * 1 mm in every flight drawn from it by tests/flight/agreement.test.ts.
   */
  readonly tolerance?: Length;
  /** Longest flight computed [s], 0.01 to 600; default 60. */
  readonly timeLimit?: Duration;
}

/** Declaration of {@link FlightOptions}. @internal */
export const flightOptionFields: Declared<FlightOptions> = /* @__PURE__ */ frozen(() => ({
  tolerance: optional(quantity(METRES, 1e-9, 10, 1e-4, 'tolerance')),
  timeLimit: optional(quantity(SECONDS, 0.01, 600, 60, 'time limit')),
}));
