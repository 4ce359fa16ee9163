import {
  type Clubhead,
  clubheads,
  type Delivery,
  defaultReadingErrors,
  degrees,
  type Launch,
  metresPerSecond,
  millimetres,
  type Strike,
  type StrikeMeasurement,
  strike,
  toDegrees,
} from '../../src/index.js';
import type { ReadingErrors } from '../../src/inputs/readings.js';
import { si } from '../../src/units/index.js';

/** The generic driver with the one tangential restitution for all speeds that the reference set has. */
export const steadyDriver: Clubhead = {
  ...clubheads.driver,
  tangentialRestitution: { kind: 'constant', value: -0.2 },
};

/** Case b of the reference set: 50.5 m/s, 1.3° down, loft solved for a 10.9° launch of the centred strike. */
export const CASE_B = { clubSpeed: 50.5, attackAngle: -1.3, launchAngle: 10.9 } as const;

/** Dynamic loft [deg] with which a centred strike launches at the angle asked for. */
export function loftForLaunch(
  clubSpeed: number,
  attackAngle: number,
  launchAngle: number,
  head: Clubhead = steadyDriver,
): number {
  let low = -10;
  let high = 60;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    const hit = strike(
      {
        clubSpeed: metresPerSecond(clubSpeed),
        attackAngle: degrees(attackAngle),
        dynamicLoft: degrees(middle),
      },
      { clubhead: head },
    );
    if (toDegrees(hit.launch.launchAngle) < launchAngle) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A strike of case b with this head, off centre by millimetres. */
export function strikeB(toe: number, high: number, head: Clubhead = steadyDriver, loft?: number): Strike {
  return strike(
    {
      clubSpeed: metresPerSecond(CASE_B.clubSpeed),
      attackAngle: degrees(CASE_B.attackAngle),
      dynamicLoft: degrees(
        loft ?? loftForLaunch(CASE_B.clubSpeed, CASE_B.attackAngle, CASE_B.launchAngle, head),
      ),
      strikeOffset: { toe: millimetres(toe), high: millimetres(high) },
    },
    { clubhead: head },
  );
}

/** That driver with some numbers changed. */
export function driverWith(change: Partial<Clubhead>): Clubhead {
  return { ...steadyDriver, ...change };
}

/** A copy of a head with a flat face. */
export function flat(head: Clubhead): Clubhead {
  const { bulge: _bulge, roll: _roll, ...rest } = head;
  return rest;
}

/** A delivery with every optional field given. */
export type FullDelivery = Required<Omit<Delivery, 'strikeOffset'>> & Pick<Delivery, 'strikeOffset'>;

/** What a device reads of a strike: every value with its error, drawn by `normal`. */
export function measuredStrike(
  delivery: Delivery,
  launch: Launch,
  normal: () => number,
  e: ReadingErrors = defaultReadingErrors,
): Required<Omit<StrikeMeasurement, 'hand'>> {
  const times = (value: number, share: number): never => si<never>(value * (1 + share * normal()));
  const plus = (value = 0, sd: number): never => si<never>(value + sd * normal());
  const measured = {
    clubSpeed: times(delivery.clubSpeed, e.clubSpeed),
    attackAngle: plus(delivery.attackAngle, e.attackAngle),
    clubPath: plus(delivery.clubPath, e.clubPath),
    faceAngle: plus(delivery.faceAngle, e.faceAngle),
    dynamicLoft: plus(delivery.dynamicLoft, e.dynamicLoft),
    ballSpeed: times(launch.ballSpeed, e.ballSpeed),
    launchAngle: plus(launch.launchAngle, e.launchAngle),
    launchDirection: plus(launch.launchDirection, e.launchDirection),
    spinRate: times(launch.spinRate, e.spinRate),
    spinAxisTilt: plus(launch.spinAxisTilt, e.spinAxisTilt),
  };
  const tilt = measured.spinAxisTilt;
  return { ...measured, spinAxisTilt: si<never>(Math.atan2(Math.sin(tilt), Math.cos(tilt))) };
}
