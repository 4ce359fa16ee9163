import { STANDARD_GRAVITY } from '../gravity.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { rpm, toMph, toRpm, toYards } from '../units/index.js';
import { KPH, METRES_PER_SECOND, MPH, type Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';

/** Something that cannot be true of one shot. */
export interface Contradiction {
  readonly field: NumberName;
  readonly message: string;
}

/**
 * Ball speed over club speed of a centred strike on a perfectly elastic face, 2/(1 + m/M) with m = 45.93 g and
 * M = 203 g: two-body impulse with restitution 1 (Cochran & Stobbs 1968). No driver can pass it.
 */
export const SMASH_LIMIT = 1.63;
/** Below this the ball was hardly struck, or its speed is in another unit: metres per second over mph gives 0.67. */
const SMASH_FLOOR = 0.72;
/** Drop [m] that the longest carry is reckoned for: room for landings 25 m below the tee and winds of 12 m/s. */
const LONGEST_DROP = 40;

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

/** Units that devices really use for speeds. */
const USUAL_UNITS: readonly Unit[] = [METRES_PER_SECOND, MPH, KPH];

/** What would turn an impossible smash factor into that of a good strike: two columns exchanged, or another unit. */
function otherSpeedUnit(smash: number): string {
  const exchanged =
    1 / smash > 1.3 && 1 / smash < 1.55
      ? `the two columns exchanged, which would give ${(1 / smash).toFixed(2)}, or `
      : '';
  for (const ball of USUAL_UNITS) {
    for (const club of USUAL_UNITS) {
      const repaired = (smash * ball.size) / club.size;
      if (ball !== club && repaired > 1.3 && repaired < 1.55) {
        return `${exchanged}a wrong unit: ball speed in ${ball.symbol} with club speed in ${club.symbol} would give ${repaired.toFixed(2)}`;
      }
    }
  }
  return `${exchanged}one of the two speeds is wrong`;
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

/**
 * Carry [m] that no ball of a speed [m/s] passes: the range of a projectile without air onto ground 40 m lower,
 * v/g √(v² + 2 g h) (any text of mechanics). The drop makes room for tailwinds and lift, which slow balls owe most of a
 * long carry to: with 12 m/s behind it and a landing 25 m below, the flight model reaches nine tenths of this.
 */
function longestCarry(ballSpeed: number): number {
  return (ballSpeed / STANDARD_GRAVITY) * fastest(ballSpeed);
}

/** Speed [m/s] that no ball passes: that of the projectile as it lands, by its energy. */
function fastest(ballSpeed: number): number {
  return Math.sqrt(ballSpeed * ballSpeed + 2 * STANDARD_GRAVITY * LONGEST_DROP);
}

function distanceContradictions(shot: MeasuredShot): readonly Contradiction[] {
  const { ballSpeed, carry, total, hangTime } = shot;
  const found: Contradiction[] = [];
  if (carry !== undefined && ballSpeed !== undefined && carry > longestCarry(ballSpeed)) {
    found.push({
      field: 'carry',
      message: `${toYards(carry).toFixed(0)} yd is further than a ball at ${toMph(ballSpeed).toFixed(0)} mph flies: one of the two is a misread or in another unit`,
    });
  }
  if (
    carry !== undefined &&
    ballSpeed !== undefined &&
    hangTime !== undefined &&
    carry > fastest(ballSpeed) * hangTime
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
 * Drag and backspin make a flight higher than the parabola of the same carry and launch angle, R tan(θ)/4, and it stays
 * near the triangle of its launch and descent tangents. The factors leave room for landings 25 m above or below the
 * tee and for winds of 12 m/s, as the flight model says.
 */
function heightContradictions(shot: MeasuredShot): readonly Contradiction[] {
  const { apex, carry, launchAngle } = shot;
  if (apex === undefined || carry === undefined || launchAngle === undefined) return [];
  if (carry < 100 || launchAngle < 0.1) return [];
  const parabola = (carry * Math.tan(launchAngle)) / 4;
  const triangle = tangentTriangle(shot);
  const wrong = 'a misread, or one of the columns is in another unit';
  if (apex < 0.4 * parabola) {
    const need = `${parabola.toFixed(0)} m is the least that this launch angle and carry need on level ground`;
    return [{ field: 'apex', message: `${apex.toFixed(1)} m is too low: ${need}; ${wrong}` }];
  }
  if (triangle !== undefined && apex > 5 * triangle) {
    const allowed = `launch angle, descent angle and carry allow about ${triangle.toFixed(0)} m`;
    return [{ field: 'apex', message: `${apex.toFixed(0)} m is too high: ${allowed}; ${wrong}` }];
  }
  return [];
}

/** Height of the triangle between the tangents at launch and landing. */
function tangentTriangle({ carry, launchAngle, descentAngle }: MeasuredShot): number | undefined {
  if (carry === undefined || launchAngle === undefined || descentAngle === undefined) return undefined;
  const rise = Math.tan(launchAngle);
  const fall = Math.tan(descentAngle);
  return rise > 0.05 && fall > 0.05 ? (carry * rise * fall) / (rise + fall) : undefined;
}
