import { SPIN_DECAY_DENSITY } from '../../flight/problem.js';
import { float } from './number.js';

/**
 * What a flight starts from, in the order of the arrays that describe where each comes from. The names are those of
 * `LaunchColumns` and `ConditionColumns`. @internal
 */
export const INPUTS = [
  'ballSpeed',
  'launchAngle',
  'spinRate',
  'launchDirection',
  'spinAxisTilt',
  'rifleSpin',
  'airDensity',
  'airViscosity',
  'windAlong',
  'windAcross',
  'elevation',
  'dragScale',
  'liftScale',
  'spinDecay',
] as const;

/** Name of an input. @internal */
export type InputName = (typeof INPUTS)[number];

/** How an input of flight `i` is found: one number, a column, or a coordinate of a drawn point. @internal */
export type InputKind = 'fixed' | 'column' | 'drawn';

/**
 * The numbers of one run. A fixed input is `values[k].x`; a column is read at `places[k].x` + (i / places[k].y) mod
 * places[k].z; a drawn one lies between `values[k].x` and that plus `values[k].y`, by dimension `places[k].x` of a point.
 */
const SCENE = `
struct Scene {
  values: array<vec4f, ${INPUTS.length}>,
  places: array<vec4u, ${INPUTS.length}>,
  /** Flights, row of the first, flights an invocation, scramble of the points. */
  counts: vec4u,
  /** π r²/2m, radius. */
  ball: vec4f,
  /** Slopes, gravity, time limit. */
  ground: vec4f,
  /** Ranges of Reynolds number and spin ratio in the data of the model. */
  valid: vec4f,
  /** Cells of the table per spin ratio and Reynolds number. */
  cells: vec4f,
  /** Usable cells of both. */
  usable: vec4f,
  profile: vec4f,
}
@group(0) @binding(0) var<uniform> scene: Scene;
@group(0) @binding(1) var<storage, read> inputs: array<u32>;
`;

/** The problem of flight `i`: `setLaunch` and `setAir` in single precision. @internal */
export function problemText(kinds: readonly InputKind[], acrossOnly: boolean): string {
  const reading = INPUTS.map((name, k) => `let ${name} = ${source(kinds[k] ?? 'fixed', k)};`);
  return `${SCENE}
const ACROSS = ${acrossOnly};

struct Problem {
  velocity: vec3f, spin: f32, axis: vec3f, drag: f32, lift: f32, decay: f32, reynoldsPerSpeed: f32, elevation: f32,
  wind: vec2f, direction: vec2f,
}

fn column(i: u32, k: u32) -> f32 {
  let place = scene.places[k];
  return bitcast<f32>(inputs[place.x + (i / place.y) % place.z]);
}

fn problemOf(i: u32) -> Problem {
  ${reading.join('\n  ')}
  let angle = sineCosine(launchAngle);
  let across = sineCosine(launchDirection);
  let tilt = sineCosine(spinAxisTilt);
  let back = spinRate * tilt.y;
  let sideward = spinRate * tilt.x;
  let spin = vec3f(
    -back * across.x + sideward * angle.x * across.y + rifleSpin * angle.y * across.y,
    -sideward * angle.y + rifleSpin * angle.x,
    back * across.y + sideward * angle.x * across.x + rifleSpin * angle.y * across.x);
  let rate = length(spin);
  let force = airDensity * scene.ball.x;
  var p: Problem;
  p.velocity = ballSpeed * vec3f(angle.y * across.y, angle.x, angle.y * across.x);
  p.spin = rate;
  p.axis = select(vec3f(0.0, 0.0, 1.0), spin / rate, rate > 0.0);
  p.drag = dragScale * force;
  p.lift = liftScale * force;
  p.decay = spinDecay * (airDensity * ${float(1 / SPIN_DECAY_DENSITY)}) / scene.ball.y;
  p.reynoldsPerSpeed = airDensity * 2.0 * scene.ball.y / airViscosity;
  p.elevation = elevation;
  p.wind = vec2f(windAlong, windAcross);
  p.direction = across;
  return p;
}
`;
}

function source(kind: InputKind, k: number): string {
  switch (kind) {
    case 'fixed':
      return `scene.values[${k}].x`;
    case 'column':
      return `column(i, ${k}u)`;
    case 'drawn':
      return `scene.values[${k}].x + scene.values[${k}].y * coordinate(i, scene.places[${k}].x)`;
  }
}
