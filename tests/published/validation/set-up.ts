import {
  type Air,
  type Angle,
  airAt,
  airAtAltitude,
  type Clubhead,
  type ClubheadName,
  clubheads,
  type Delivery,
  degrees,
  type Flight,
  fly,
  type LandingBall,
  type Launch,
  type Length,
  metres,
  metresPerSecond,
  rpm,
  type Scene,
  type Speed,
  type Strike,
  strike,
  type TurfName,
} from '../../../src/index.js';
import { type Conditions, inSi, inSiOr } from './conditions.js';

function airOf(c: Conditions): Air {
  if (c.altitude !== undefined) {
    return airAtAltitude({
      altitude: inSi(c, 'altitude'),
      ...(c.temperature !== undefined && { temperature: inSi(c, 'temperature') }),
      ...(c.humidity !== undefined && { relativeHumidity: inSi(c, 'humidity') }),
    });
  }
  const air = airAt({
    ...(c.temperature !== undefined && { temperature: inSi(c, 'temperature') }),
    ...(c.pressure !== undefined && { pressure: inSi(c, 'pressure') }),
    ...(c.humidity !== undefined && { relativeHumidity: inSi(c, 'humidity') }),
  });
  return { ...air, density: inSiOr(c, 'airDensity', air.density) };
}

/** The fairway named, by the bounce model asked for. */
export function turfOf({ turf = 'normal', bounce }: Conditions): TurfName {
  const name = bounce === 'penner-2002' ? `penner${turf.charAt(0).toUpperCase()}${turf.slice(1)}` : turf;
  return name as TurfName;
}

export function sceneOf(c: Conditions): Scene {
  const along = inSiOr(c, 'tailwind', 0) - inSiOr(c, 'headwind', 0);
  return {
    air: airOf(c),
    wind: {
      along: metresPerSecond(along),
      across: metresPerSecond(inSiOr(c, 'crosswind', 0)),
    },
    turf: turfOf(c),
    ...(c.model !== undefined && { aerodynamics: c.model }),
  };
}

/** The launch given, scaled in ball speed where it is to carry a given distance in still air. */
function launchGiven(c: Conditions): Launch {
  const launch: Launch = {
    ballSpeed: inSi(c, 'ballSpeed'),
    launchAngle: inSi(c, 'launchAngle'),
    spinRate: inSi(c, 'spin'),
  };
  if (c.scaledToCarry === undefined) return launch;
  const target = inSi<Length>(c, 'scaledToCarry');
  const still = { air: airOf(c) };
  const ballSpeed = bisect(
    0.5 * launch.ballSpeed,
    1.5 * launch.ballSpeed,
    (speed) => fly({ ...launch, ballSpeed: metresPerSecond(speed) }, still).carry < target,
  );
  return { ...launch, ballSpeed: metresPerSecond(ballSpeed) };
}

function bisect(low: number, high: number, tooLow: (x: number) => boolean): number {
  let [a, b] = [low, high];
  for (let halvings = 0; halvings < 60; halvings++) {
    const middle = (a + b) / 2;
    if (tooLow(middle)) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** One of the generic heads, with the changes that the conditions make. */
export function headOf(c: Conditions): Clubhead {
  const { bulge, roll, ...head } = clubheads[(c.clubhead ?? 'driver') as ClubheadName];
  const factor = inSiOr(c, 'inertiaFactor', 1);
  const { faceNormal, vertical, heelToe } = head.inertia;
  return {
    ...head,
    ...(c.face !== 'flat' && bulge !== undefined && { bulge }),
    ...(c.face !== 'flat' && roll !== undefined && { roll }),
    mass: inSiOr(c, 'headMass', head.mass),
    shaftMass: inSiOr(c, 'shaftMass', head.shaftMass),
    inertia: {
      faceNormal: (factor * faceNormal) as typeof faceNormal,
      vertical: (factor * vertical) as typeof vertical,
      heelToe: (factor * heelToe) as typeof heelToe,
    },
    centreOfGravity: {
      ...head.centreOfGravity,
      depth: inSiOr(c, 'centreDepth', head.centreOfGravity.depth),
      high: inSiOr(c, 'centreHigh', head.centreOfGravity.high),
    },
    restitution: restitutionOf(c, head.restitution),
    ...(c.tangentialRestitution !== undefined && {
      tangentialRestitution: { kind: 'constant', value: inSi(c, 'tangentialRestitution') },
    }),
  };
}

function restitutionOf(c: Conditions, law: Clubhead['restitution']): Clubhead['restitution'] {
  if (c.restitution !== undefined) {
    const atReference = inSi(c, 'restitution');
    return { ...law, atReference, atEdge: Math.min(atReference, law.atEdge), slope: 0 };
  }
  if (c.restitutionAtRest === undefined) return law;
  const atReference = inSi(c, 'restitutionAtRest');
  const slope = inSi(c, 'restitutionSlope');
  return {
    ...law,
    atReference,
    slope,
    referenceSpeed: metresPerSecond(0),
    atEdge: Math.min(atReference, law.atEdge),
  };
}

/** The strike: where a launch angle is given in place of the dynamic loft, the loft of the centred strike that has it. */
export function strikeOf(c: Conditions): Strike {
  return strike(deliveryOf(c), { clubhead: headOf(c) });
}

export function deliveryOf(c: Conditions): Delivery {
  const centred = {
    clubSpeed: inSi<Speed>(c, 'clubSpeed'),
    attackAngle: inSi<Angle>(c, 'attackAngle'),
    faceAngle: inSiOr(c, 'faceAngle', degrees(0)),
  };
  const strikeOffset = { toe: inSiOr(c, 'strikeToe', metres(0)), high: inSiOr(c, 'strikeHigh', metres(0)) };
  if (c.launchAngle === undefined) return { ...centred, dynamicLoft: inSi(c, 'dynamicLoft'), strikeOffset };
  const head = headOf(c);
  const target = inSi<Angle>(c, 'launchAngle');
  const loft = bisect(
    -10,
    60,
    (l) => strike({ ...centred, dynamicLoft: degrees(l) }, { clubhead: head }).launch.launchAngle < target,
  );
  return { ...centred, dynamicLoft: degrees(loft), strikeOffset };
}

export function launchOf(c: Conditions): Launch {
  return c.clubSpeed === undefined ? launchGiven(c) : strikeOf(c).launch;
}

export function flightOf(c: Conditions): Flight {
  return fly(launchOf(c), sceneOf(c));
}

/** The ball that lands: as given, or at the end of the flight. */
export function landingOf(c: Conditions): LandingBall {
  if (c.landingSpeed === undefined) return flightOf(c).landing;
  const speed = inSi<Speed>(c, 'landingSpeed');
  const angle = inSi<Angle>(c, 'landingAngle');
  return {
    position: { x: 0, y: 0, z: 0 },
    velocity: { x: speed * Math.cos(angle), y: -speed * Math.sin(angle), z: 0 },
    spinRate: inSiOr(c, 'landingSpin', rpm(0)),
    spinAxis: { x: 0, y: 0, z: 1 },
  };
}
