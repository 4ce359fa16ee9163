import { resolveModel } from '../../../src/aerodynamics/index.js';
import {
  type BiberBounce,
  balls,
  bestLoft,
  defaultAir,
  type LoftOptimum,
  type MaximisedDistance,
  playShot,
  runOut,
  type Shot,
  stateAt,
  toDegrees,
  toFeet,
  toMetresPerSecond,
  toMph,
  toRpm,
  toYards,
  turfs,
} from '../../../src/index.js';
import { type Conditions, inSi } from './conditions.js';
import { deliveryOf, flightOf, headOf, landingOf, launchOf, sceneOf, strikeOf, turfOf } from './set-up.js';

function shotOf(c: Conditions): Shot {
  return playShot(launchOf(c), sceneOf(c));
}

const found = new Map<string, LoftOptimum>();
function optimumOf(c: Conditions): LoftOptimum {
  const key = JSON.stringify(Object.entries(c).sort());
  const known =
    found.get(key) ??
    bestLoft({ clubSpeed: inSi(c, 'clubSpeed'), attackAngle: inSi(c, 'attackAngle') }, sceneOf(c), {
      maximise: (c.objective ?? 'carry') as MaximisedDistance,
      clubhead: headOf(c),
      ...(c.leastDescent !== undefined && { minimumDescentAngle: inSi(c, 'leastDescent') }),
    });
  found.set(key, known);
  return known;
}

function firstBounce(c: Conditions) {
  const [first] = runOut(landingOf(c), sceneOf(c)).bounces;
  if (first === undefined) throw new Error('no bounce');
  return first;
}

/** Least backspin of a landing that is still backspin after the bounce. */
function leastBackspinKept(c: Conditions): number {
  let [low, high] = [0, 2000];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    const [first] = runOut({ ...landingOf(c), spinRate: middle as never }, sceneOf(c)).bounces;
    if ((first?.backspinAfter ?? 0) > 0) high = middle;
    else low = middle;
  }
  return toRpm(high as never);
}

/** The bounce of the turf by the measured constants. */
function bounceOf(c: Conditions): BiberBounce {
  const { bounce } = turfs[turfOf(c)];
  if (bounce.model !== 'biber-2023') throw new Error(`${turfOf(c)} has another bounce`);
  return bounce;
}

const BALL_DIAMETER = 2 * balls.conforming.radius;

/** Re and S: given, or those of a speed and spin in the library's default air. */
export function pointOf(c: Conditions): readonly [reynolds: number, spinRatio: number] {
  if (c.airSpeed === undefined) return [inSi(c, 'reynolds'), inSi(c, 'spinRatio')];
  return numbersAt(inSi(c, 'airSpeed'), inSi(c, 'spin'));
}

function numbersAt(speed: number, spin: number): readonly [reynolds: number, spinRatio: number] {
  const reynolds = (defaultAir.density * speed * BALL_DIAMETER) / defaultAir.viscosity;
  return [reynolds, (spin * balls.conforming.radius) / speed];
}

type Coefficient = 'dragCoefficient' | 'liftCoefficient';

/** Mean of a coefficient over a quarter of the flight: half of the rise or half of the fall, in time. */
function meanCoefficient(c: Conditions, coefficient: Coefficient): number {
  const model = resolveModel(c.model);
  const flight = flightOf(c);
  const top = timeOfApex(c);
  const part = inSi(c, 'part');
  const [start, length] = part <= 2 ? [0, top / 2] : [top, (flight.hangTime - top) / 2];
  const samples = 40;
  let sum = 0;
  for (let i = 0; i < samples; i++) {
    const state = stateAt(flight, start + (((part - 1) % 2) + (i + 0.5) / samples) * length);
    sum += model[coefficient](...numbersAt(state.speed, state.spinRate));
  }
  return sum / samples;
}

function timeOfApex(c: Conditions): number {
  const flight = flightOf(c);
  let [low, high] = [0, Number(flight.hangTime)];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (stateAt(flight, middle).velocity.y > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Share of the direction of launch that the face decides: (launch − path)/(face − path), here in one plane. */
function faceShare(launch: number, path: number, face: number): number {
  return (launch - path) / (face - path);
}

/** What the library can be asked for, in the unit of the rows. */
const FIGURES: Readonly<Record<string, (c: Conditions) => number>> = {
  carry: (c) => toYards(flightOf(c).carry),
  drift: (c) => toYards(flightOf(c).side),
  apex: (c) => toYards(flightOf(c).apex),
  'apex in feet': (c) => toFeet(flightOf(c).apex),
  'descent angle': (c) => toDegrees(flightOf(c).descentAngle),
  'hang time': (c) => flightOf(c).hangTime,
  'landing speed': (c) => flightOf(c).landing.speed,
  'landing spin': (c) => toRpm(flightOf(c).landing.spinRate),
  'spin lost': (c) => {
    const flight = flightOf(c);
    return 100 * (1 - stateAt(flight, inSi(c, 'time')).spinRate / flight.launch.spinRate);
  },
  'spin lost per second': (c) => {
    const flight = flightOf(c);
    const time = inSi(c, 'time');
    return (toRpm(flight.launch.spinRate) - toRpm(stateAt(flight, time).spinRate)) / time;
  },
  total: (c) => toYards(shotOf(c).total),
  side: (c) => toYards(shotOf(c).side),
  run: (c) => toYards(runOut(landingOf(c), sceneOf(c)).distance),
  'speed after the bounce': (c) => toMetresPerSecond(firstBounce(c).speedAfter),
  'height of the first hop': (c) => firstBounce(c).hopHeight,
  'least backspin kept': leastBackspinKept,
  'tilt of the turf': (c) => toDegrees(bounceOf(c).tilt),
  'restitution of the turf': (c) => bounceOf(c).restitution,
  'friction of the turf': (c) => bounceOf(c).friction,
  'ball speed': (c) => toMph(strikeOf(c).launch.ballSpeed),
  'ball speed in m/s': (c) => toMetresPerSecond(strikeOf(c).launch.ballSpeed),
  'smash factor': (c) => strikeOf(c).smashFactor,
  'launch angle': (c) => toDegrees(strikeOf(c).launch.launchAngle),
  spin: (c) => toRpm(strikeOf(c).launch.spinRate),
  backspin: (c) => toRpm(strikeOf(c).backspin),
  sidespin: (c) => toRpm(strikeOf(c).sidespin),
  /** Hook spin per mm toward the toe, at a ball speed of 67 m/s. */
  'hook per mm': (c) => {
    const { launch, sidespin } = strikeOf(c);
    return (-toRpm(sidespin) * (67 / launch.ballSpeed)) / (1000 * inSi(c, 'strikeToe'));
  },
  'horizontal face share': (c) => faceShare(strikeOf(c).launch.launchDirection ?? 0, 0, inSi(c, 'faceAngle')),
  'vertical face share': (c) =>
    faceShare(strikeOf(c).launch.launchAngle, inSi(c, 'attackAngle'), deliveryOf(c).dynamicLoft),
  friction: (c) => headOf(c).friction,
  'best dynamic loft': (c) => toDegrees(optimumOf(c).dynamicLoft),
  'best nominal loft': (c) => toDegrees(optimumOf(c).dynamicLoft) - toDegrees(inSi(c, 'addedLoft')),
  'best launch angle': (c) => toDegrees(optimumOf(c).shot.launch.launchAngle),
  'best spin': (c) => toRpm(optimumOf(c).shot.launch.spinRate),
  'descent at the best loft': (c) => toDegrees(optimumOf(c).shot.flight.descentAngle),
  'drag coefficient': (c) => resolveModel(c.model).dragCoefficient(...pointOf(c)),
  'lift coefficient': (c) => resolveModel(c.model).liftCoefficient(...pointOf(c)),
  'mean drag coefficient': (c) => meanCoefficient(c, 'dragCoefficient'),
  'mean lift coefficient': (c) => meanCoefficient(c, 'liftCoefficient'),
};

/** The library's own figure. @throws Error for a measure it does not know */
export function figureOf(measure: string, conditions: Conditions): number {
  const figure = FIGURES[measure];
  if (figure === undefined) throw new Error(`no figure is called ${measure}`);
  return figure(conditions);
}
