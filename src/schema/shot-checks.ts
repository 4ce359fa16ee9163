import type { MeasuredShot } from '../session/index.js';
import { rpm, toMph, toRpm, toYards } from '../units/index.js';
import type { QuantityField } from './columns.js';
import { UNIT_NAMES } from './unit-names.js';

/** Something that cannot be true of one shot. */
export interface Contradiction {
  readonly field: QuantityField;
  readonly message: string;
}

/**
 * Ball speed over club speed of a centred strike on a perfectly elastic face, 2/(1 + m/M) with m = 45.93 g and
 * M = 203 g: two-body impulse with restitution 1 (Cochran & Stobbs 1968). No driver can pass it.
 */
export const SMASH_LIMIT = 1.63;
/** Below this the ball was hardly struck, or its speed is in another unit: metres per second over mph gives 0.67. */
const SMASH_FLOOR = 0.72;
const GRAVITY = 9.80665;

/**
 * Readings of one shot that contradict each other, which is how a wrong unit or a misread betrays itself. Each rule is
 * a bound from mechanics with room for measuring error, so that no real shot is refused for being unusual.
 */
export function contradictions(
  shot: MeasuredShot,
  smashFactor: number | undefined,
): readonly Contradiction[] {
  return [
    ...smashContradictions(shot, smashFactor),
    ...spinContradictions(shot),
    ...distanceContradictions(shot),
    ...heightContradictions(shot),
  ];
}

function smashContradictions(
  { clubSpeed, ballSpeed }: MeasuredShot,
  stated: number | undefined,
): readonly Contradiction[] {
  if (clubSpeed === undefined || ballSpeed === undefined) return [];
  const smash = ballSpeed / clubSpeed;
  const said = `smash factor ${smash.toFixed(2)} (ball ${toMph(ballSpeed).toFixed(0)} mph, club ${toMph(clubSpeed).toFixed(0)} mph)`;
  if (smash > SMASH_LIMIT || smash < SMASH_FLOOR) {
    const limit =
      smash > SMASH_LIMIT ? `above ${SMASH_LIMIT}, which no face can give` : `below ${SMASH_FLOOR}`;
    return [{ field: 'ballSpeed', message: `${said} is ${limit}: a misread, or ${otherSpeedUnit(smash)}` }];
  }
  if (stated !== undefined && Math.abs(stated / smash - 1) > 0.03) {
    return [
      {
        field: 'ballSpeed',
        message: `the row says smash factor ${stated.toFixed(2)}, its speeds give ${said}`,
      },
    ];
  }
  return [];
}

/** Which pair of speed units would turn an impossible smash factor into a usual one. */
function otherSpeedUnit(smash: number): string {
  for (const ball of UNIT_NAMES.speed) {
    for (const club of UNIT_NAMES.speed) {
      const repaired = (smash * ball.toSi(1)) / club.toSi(1);
      if (ball !== club && repaired > 1.2 && repaired < 1.55) {
        return `a wrong unit: ball speed in ${ball.symbol} with club speed in ${club.symbol} would give ${repaired.toFixed(2)}`;
      }
    }
  }
  return 'one of the two speeds is wrong';
}

function spinContradictions({ ballSpeed, spinRate }: MeasuredShot): readonly Contradiction[] {
  if (ballSpeed === undefined || spinRate === undefined) return [];
  // 2,700 rpm is 283 rad/s or 45 rev/s; a full shot with so little spin has not been seen.
  if (ballSpeed < 35 || spinRate >= rpm(450)) return [];
  return [
    {
      field: 'spinRate',
      message: `${toRpm(spinRate).toFixed(0)} rpm is too little for a ball at ${toMph(ballSpeed).toFixed(0)} mph: a misread, or the column is in rad/s, rev/s or thousands`,
    },
  ];
}

function distanceContradictions(shot: MeasuredShot): readonly Contradiction[] {
  const { ballSpeed, carry, total, hangTime } = shot;
  const found: Contradiction[] = [];
  if (carry !== undefined && ballSpeed !== undefined && carry > (ballSpeed * ballSpeed) / GRAVITY) {
    found.push({
      field: 'carry',
      message: `${toYards(carry).toFixed(0)} yd is further than a ball at ${toMph(ballSpeed).toFixed(0)} mph flies without air: one of the two is a misread or in another unit`,
    });
  }
  if (
    carry !== undefined &&
    ballSpeed !== undefined &&
    hangTime !== undefined &&
    carry > ballSpeed * hangTime
  ) {
    found.push({
      field: 'hangTime',
      message: `${hangTime.toFixed(1)} s is too short for ${toYards(carry).toFixed(0)} yd at ${toMph(ballSpeed).toFixed(0)} mph`,
    });
  }
  if (carry !== undefined && total !== undefined && total < 0.85 * carry) {
    found.push({
      field: 'total',
      message: `total ${toYards(total).toFixed(0)} yd is far below the carry of ${toYards(carry).toFixed(0)} yd: one of the two is a misread or in another unit`,
    });
  }
  return found;
}

/**
 * Drag and backspin make a flight higher than the parabola of the same carry and launch angle, R tan(θ)/4, and a
 * flight stays near the triangle of its launch and descent tangents.
 */
function heightContradictions({
  apex,
  carry,
  launchAngle,
  descentAngle,
}: MeasuredShot): readonly Contradiction[] {
  if (apex === undefined || carry === undefined || launchAngle === undefined || carry < 50) return [];
  const rise = Math.tan(launchAngle);
  const parabola = (carry * rise) / 4;
  if (rise > 0.05 && apex < 0.85 * parabola) {
    return [
      {
        field: 'apex',
        message: `${apex.toFixed(1)} m is below the ${parabola.toFixed(1)} m that this launch angle and carry need: a misread, or the column is in another unit`,
      },
    ];
  }
  if (descentAngle === undefined || rise < 0.05) return [];
  const fall = Math.tan(descentAngle);
  const triangle = (carry * rise * fall) / (rise + fall);
  if (fall <= 0 || apex <= 1.8 * triangle) return [];
  return [
    {
      field: 'apex',
      message: `${apex.toFixed(1)} m is far above the ${triangle.toFixed(1)} m that launch angle, descent angle and carry allow: a misread, or a column is in another unit`,
    },
  ];
}
