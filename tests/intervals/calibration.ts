import { fittedModern, scaledModel } from '../../src/aerodynamics/index.js';
import { gripLevel, withGripLevel } from '../../src/clubhead/grip-level.js';
import { type Clubhead, clubheads } from '../../src/clubhead/index.js';
import { fly } from '../../src/flight/index.js';
import { type Stream, studentTQuantile } from '../../src/numerics/index.js';
import {
  type CalibrationTarget,
  calibrate,
  defaultFlightReadingErrors,
  type MeasuredShot,
} from '../../src/session/index.js';
import { defaultReadingErrors, strike } from '../../src/strike/index.js';
import { degrees, type Length, mph, si } from '../../src/units/index.js';
import type { Outcome, Study } from './study.js';

/** A place on the face, drawn again where it is off it: beyond four standard deviations. */
function onFace(random: Stream, sd: number): Length {
  const away = random.normal();
  return Math.abs(away) < 4 ? si(sd * away) : onFace(random, sd);
}

/** A session of drives through a head and a ball drawn from the priors, read with the default errors times `noise`. */
function session(
  random: Stream,
  count: number,
  noise: number,
  flown: boolean,
): { readonly truth: Readonly<Record<CalibrationTarget, number>>; readonly shots: MeasuredShot[] } {
  const { normal } = random;
  const { driver } = clubheads;
  const law = driver.tangentialRestitution;
  const truth = {
    restitution: driver.restitution.atReference + 0.02 * normal(),
    tangentialRestitution: gripLevel(law) + 0.1 * normal(),
    dragScale: 1 + 0.1 * normal(),
    liftScale: 1 + 0.15 * normal(),
  };
  const clubhead: Clubhead = {
    ...driver,
    restitution: {
      ...driver.restitution,
      atReference: truth.restitution,
      atEdge: driver.restitution.atEdge + truth.restitution - driver.restitution.atReference,
    },
    tangentialRestitution: withGripLevel(law, truth.tangentialRestitution),
  };
  const aerodynamics = scaledModel(fittedModern, { drag: truth.dragScale, lift: truth.liftScale });
  const e = { ...defaultReadingErrors, ...defaultFlightReadingErrors };
  const times = (value: number, share: number): never => si<never>(value * (1 + noise * share * normal()));
  const plus = (value: number, sd: number): never => si<never>(value + noise * sd * normal());
  const shots = Array.from({ length: count }, (): MeasuredShot => {
    const club = {
      clubSpeed: mph(95 + 3 * normal()),
      attackAngle: degrees(2 * normal()),
      clubPath: degrees(2 * normal()),
      faceAngle: degrees(2 * normal()),
      dynamicLoft: degrees(13 + 1.5 * normal()),
    };
    const strikeOffset = { toe: onFace(random, 0.015), high: onFace(random, 0.01) };
    const { launch } = strike({ ...club, strikeOffset }, { clubhead });
    const ball = {
      ballSpeed: times(launch.ballSpeed, e.ballSpeed),
      launchAngle: plus(launch.launchAngle, e.launchAngle),
      launchDirection: plus(launch.launchDirection ?? 0, e.launchDirection),
      spinRate: times(launch.spinRate, e.spinRate),
      spinAxisTilt: plus(launch.spinAxisTilt ?? 0, e.spinAxisTilt),
    };
    if (flown) {
      const { carry, apex, landing } = fly(launch, { aerodynamics });
      return {
        ...ball,
        carry: times(carry, e.carry),
        apex: times(apex, e.apex),
        descentAngle: plus(landing.descentAngle, e.descentAngle),
      };
    }
    return {
      ...ball,
      clubSpeed: times(club.clubSpeed, e.clubSpeed),
      attackAngle: plus(club.attackAngle, e.attackAngle),
      clubPath: plus(club.clubPath, e.clubPath),
      faceAngle: plus(club.faceAngle, e.faceAngle),
      dynamicLoft: plus(club.dynamicLoft, e.dynamicLoft),
    };
  });
  return { truth, shots };
}

const STAGES: readonly (readonly CalibrationTarget[])[] = [
  ['restitution', 'tangentialRestitution'],
  ['dragScale', 'liftScale'],
];

/** Studies of `calibrate`. */
export const calibrationStudies: readonly Study[] = STAGES.flatMap((what) =>
  [
    { count: 6, noise: 1 },
    { count: 20, noise: 1 },
    { count: 20, noise: 2 },
  ].map(
    ({ count, noise }): Study => ({
      call: 'calibrate',
      conditions: `${what.includes('dragScale') ? 'ball' : 'head'} from ${count} shots, ${noise === 1 ? 'errors as stated' : `errors ${noise} times the stated`}`,
      stated: noise === 1,
      // Three tenths of a second each: fewer where nothing is claimed.
      draws: noise === 1 ? 1000 : 400,
      draw: (random) => {
        const { truth, shots } = session(random, count, noise, what.includes('dragScale'));
        const { values } = calibrate(shots, {}, { what });
        const t = studentTQuantile(0.975, count - what.length);
        return Object.fromEntries(
          values.map(({ target, value, standardError }): [string, Outcome[]] => [
            `${target} ± t standard errors`,
            [{ covered: Math.abs(value - truth[target]) <= t * standardError, width: 2 * t * standardError }],
          ]),
        );
      },
    }),
  ),
);
