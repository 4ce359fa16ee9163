import { FairflightError, requireRecord } from '../errors.js';
import { type Flight, fly } from '../flight/index.js';
import type { Launch, Scene } from '../scene/index.js';
import { type Delivery, type Strike, strike } from '../strike/index.js';
import type { Run, RunOptions } from '../turf/index.js';
import { runOnGround } from '../turf/run-out.js';
import { si } from '../units/index.js';
import type { Shot, ShotSetup } from './shot.js';

/**
 * Plays one shot: strike, flight and run, from a delivery of the club or from a launch of the ball. Which of the two
 * is told by `clubSpeed` or `ballSpeed`.
 *
 * Carry is the number to trust; the run is a band of ±30 % (`run.band`), and the spin of a strike is known to ±20 %.
 * @param from - how the club comes to the ball, or how the ball leaves
 * @param setup - clubhead (with a delivery), scene and integration options; each field has a default
 * @throws {@link FairflightError} `invalid-input` or `outside-range`, naming field, value, unit and allowed range
 * @example playShot({ clubSpeed: mph(95), attackAngle: degrees(0), dynamicLoft: degrees(15) }).total
 */
export function playShot(from: Delivery | Launch, setup: ShotSetup = {}): Shot {
  requireRecord('setup', setup, ['clubhead', 'scene', 'flight']);
  const scene = setup.scene ?? {};
  const struck = isDelivery(from) ? strikeIn(scene, from, setup.clubhead) : undefined;
  const launch = struck?.launch ?? (from as Launch);
  const flight = fly(launch, scene, setup.flight);
  const run = runOfFlight(flight, scene);
  const { x, z } = run?.restsAt ?? flight.landing.position;
  return {
    ...(struck && { strike: struck }),
    launch,
    flight,
    ...(run && { run }),
    carry: flight.carry,
    total: si(Math.hypot(x, z)),
    side: si(z),
    warnings: [...(struck?.warnings ?? []), ...flight.warnings, ...(run?.warnings ?? [])],
  };
}

/**
 * The run that follows a flight on the scene's turf, slope, air and with its ball; undefined when the flight did not land.
 * @internal
 */
export function runOfFlight(flight: Flight, scene: Scene): Run | undefined {
  if (flight.ended !== 'landed') return undefined;
  const { slope, crossSlope } = scene.ground ?? {};
  const options: RunOptions = {
    ...(slope !== undefined && { slope }),
    ...(crossSlope !== undefined && { crossSlope }),
    ...(scene.ball && { ball: scene.ball }),
    ...(scene.air && { air: scene.air }),
  };
  return runOnGround(flight.landing, scene.turf, options, scene.ground?.elevation ?? 0);
}

function strikeIn(scene: Scene, delivery: Delivery, clubhead: ShotSetup['clubhead']): Strike {
  return strike(delivery, clubhead, scene.ball ? { ball: scene.ball } : {});
}

/** True for a delivery, false for a launch. @throws FairflightError when it is neither or both. @internal */
export function isDelivery(from: Delivery | Launch): from is Delivery {
  if (typeof from !== 'object' || from === null) {
    throw new FairflightError('invalid-input', 'from must be a delivery or a launch', {
      field: 'from',
      value: from,
    });
  }
  const club = 'clubSpeed' in from;
  const ball = 'ballSpeed' in from;
  if (club !== ball) return club;
  throw new FairflightError(
    'invalid-input',
    club
      ? 'from has clubSpeed and ballSpeed; give a delivery (clubSpeed, attackAngle, dynamicLoft) or a launch (ballSpeed, launchAngle, spinRate), not both'
      : 'from must be a delivery with clubSpeed or a launch with ballSpeed; it has neither',
    { field: 'from', value: from },
  );
}
