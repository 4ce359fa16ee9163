import { gripLevel, withGripLevel } from '../../src/clubhead/grip-level.js';
import type { Clubhead } from '../../src/clubhead/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import type { Delivery } from '../../src/inputs/delivery.js';
import type { ReadingErrors, StrikeMeasurement } from '../../src/inputs/readings.js';
import type { Stream } from '../../src/numerics/index.js';
import { defaultReadingErrors, strike } from '../../src/strike/index.js';
import { degrees, mph, si } from '../../src/units/index.js';
import { measuredStrike } from '../strike/helpers.js';

/** A drive and what a device reads of it. */
export interface SimulatedStrike {
  readonly truth: Delivery;
  readonly toe: number;
  readonly high: number;
  readonly measured: Required<Omit<StrikeMeasurement, 'hand'>>;
}

/** A head that differs from the one it is taken for, as heads of one class do: invented. */
export function anotherHead(random: Stream): Clubhead {
  const { driver } = clubheads;
  const about = (value: number, share: number): never => si<never>(value * (1 + share * random.normal()));
  const { inertia } = driver;
  return {
    ...driver,
    mass: about(driver.mass, 0.02),
    centreOfGravity: { ...driver.centreOfGravity, depth: about(driver.centreOfGravity.depth, 0.1) },
    inertia: {
      faceNormal: about(inertia.faceNormal, 0.08),
      vertical: about(inertia.vertical, 0.08),
      heelToe: about(inertia.heelToe, 0.08),
    },
    ...(driver.bulge !== undefined && { bulge: about(driver.bulge, 0.1) }),
    ...(driver.roll !== undefined && { roll: about(driver.roll, 0.1) }),
    restitution: {
      ...driver.restitution,
      atReference: driver.restitution.atReference + 0.008 * random.normal(),
    },
  };
}

/** A strike drawn from the priors of `locateStrike`, read with the default errors times `noise`. */
export function simulatedStrike(
  random: Stream,
  { head = clubheads.driver, noise = 1 }: { readonly head?: Clubhead; readonly noise?: number } = {},
): SimulatedStrike {
  const { normal } = random;
  // The face ends at 55 and 38 mm.
  const within = (value: number, limit: number): number => Math.max(-limit, Math.min(limit, value));
  const toe = within(0.015 * normal(), 0.055);
  const high = within(0.01 * normal(), 0.038);
  const truth: Delivery = {
    clubSpeed: mph(95 + 8 * normal()),
    attackAngle: degrees(3.5 * normal()),
    clubPath: degrees(4 * normal()),
    faceAngle: degrees(4 * normal()),
    dynamicLoft: si(clubheads.driver.staticLoft + degrees(2 + 4 * normal())),
    strikeOffset: { toe: si(toe), high: si(high) },
  };
  const grip = head.tangentialRestitution;
  const off = 0.1 * normal();
  const gripped: Clubhead = {
    ...head,
    tangentialRestitution: withGripLevel(grip, gripLevel(grip) + off),
  };
  const { launch } = strike(truth, { clubhead: gripped });
  const errors = Object.fromEntries(
    Object.entries(defaultReadingErrors).map(([name, error]) => [name, noise * error]),
  ) as unknown as ReadingErrors;
  return {
    truth,
    toe,
    high,
    measured: measuredStrike(truth, launch, normal, errors),
  };
}
