import {
  degrees,
  fly,
  type Launch,
  metresPerSecond,
  mph,
  playShot,
  rpm,
  type Scene,
  type Speed,
  type TurfName,
  toYards,
  type Wind,
} from '../../../src/index.js';

/** Launch from ball speed in mph, launch angle in degrees, backspin in rpm. */
export function launchOf(ballSpeed: number, launchAngle: number, spin: number): Launch {
  return { ballSpeed: mph(ballSpeed), launchAngle: degrees(launchAngle), spinRate: rpm(spin) };
}

/** Carry [yd]. */
export function carry(launch: Launch, scene: Scene = {}): number {
  return toYards(fly(launch, scene).carry);
}

/** Total [yd]. */
export function total(launch: Launch, turf: TurfName = 'normal', scene: Scene = {}): number {
  return toYards(playShot(launch, { scene: { ...scene, turf } }).total);
}

/** The same launch at the ball speed that carries `target` yards in the default scene. */
export function scaledToCarry(launch: Launch, target: number): Launch {
  let [slow, fast]: [number, number] = [0.5 * launch.ballSpeed, 1.5 * launch.ballSpeed];
  for (let halvings = 0; halvings < 50; halvings++) {
    const middle = (slow + fast) / 2;
    if (carry({ ...launch, ballSpeed: metresPerSecond(middle) }) < target) slow = middle;
    else fast = middle;
  }
  return { ...launch, ballSpeed: metresPerSecond((slow + fast) / 2) };
}

const uniform = (along: Speed, across: Speed): Scene => ({ wind: { along, across } satisfies Wind });
/** Headwind of so many mph at every height. */
export const headwind = (speed: number): Scene => uniform(mph(-speed), mph(0));
/** Tailwind of so many mph at every height. */
export const tailwind = (speed: number): Scene => uniform(mph(speed), mph(0));
/** Wind from the left of so many mph at every height. */
export const crosswind = (speed: number): Scene => uniform(mph(0), mph(speed));

/** Tour averages, from memory: see data/tour-averages.json. */
export const tour: Readonly<Record<'driver' | 'sixIron' | 'sevenIron' | 'womenDriver', Launch>> = {
  driver: launchOf(167, 10.9, 2686),
  sixIron: launchOf(127, 14.1, 6231),
  sevenIron: launchOf(120, 16.3, 7097),
  womenDriver: launchOf(140, 13.2, 2611),
};
/** The shot of the anonymous engineer's model. */
export const engineer: Launch = launchOf(155, 18, 3500);
