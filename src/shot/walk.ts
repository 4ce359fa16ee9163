import { defaultAir } from '../air/index.js';
import { conformingBall } from '../ball/index.js';
import { createFlightEngine } from '../flight/engine/general.js';
import { resolveFlightOptions } from '../flight/fly.js';
import type { FlightOptions } from '../flight/index.js';
import { flightProblem } from '../flight/problem.js';
import type { Launch, Scene } from '../scene/index.js';
import { runConstants } from '../turf/constants.js';
import { run, toGround, worldX, worldZ } from '../turf/kernel.js';
import { resolveTurf } from '../turf/presets.js';
import { newRunState, SPIN, VELOCITY } from '../turf/state.js';

/** What a walk reports, as plain SI numbers. Belongs to the walk and is overwritten by the next. @internal */
export interface WalkResult {
  /** False when the ball did not land; then only the apex means anything. */
  landed: boolean;
  carry: number;
  apex: number;
  descentAngle: number;
  hangTime: number;
  /** Horizontal distance from the start to where the ball rests; the carry when the run was not asked for. */
  total: number;
  /** Where it rests, or lands when the run was not asked for. */
  x: number;
  z: number;
}

/** Plays many launches in one scene: the walk of `playShot` without its records, for searches and maps. @internal */
export interface Walk {
  readonly play: (launch: Launch, withRun: boolean) => WalkResult;
}

const RUN_TIME_LIMIT = 60;

/** Makes a walk with scratch of its own. @throws FairflightError for a bad scene or bad options @internal */
export function createWalk(scene: Scene = {}, options: FlightOptions = {}): Walk {
  const { tolerance, timeLimit } = resolveFlightOptions(options);
  const engine = createFlightEngine();
  const { slope = 0, crossSlope = 0 } = scene.ground ?? {};
  const turf = resolveTurf(scene.turf);
  const ball = scene.ball ?? conformingBall;
  const ground = runConstants(turf, ball, scene.air ?? defaultAir, slope, crossSlope, RUN_TIME_LIMIT);
  const s = newRunState();
  const result: WalkResult = {
    landed: false,
    carry: 0,
    apex: 0,
    descentAngle: 0,
    hangTime: 0,
    total: 0,
    x: 0,
    z: 0,
  };

  function play(launch: Launch, withRun: boolean): WalkResult {
    const problem = flightProblem(launch, scene);
    const end = engine.fly(problem, tolerance, timeLimit);
    const [x, , z, vx, vy, vz, spin] = end.state as unknown as readonly [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    result.landed = end.ending === 'landed';
    result.carry = Math.hypot(x, z);
    result.apex = end.apex;
    result.descentAngle = Math.atan2(-vy, Math.hypot(vx, vz));
    result.hangTime = end.time;
    result.x = x;
    result.z = z;
    if (withRun && result.landed) {
      s.fill(0);
      toGround(ground, vx, vy, vz, s, VELOCITY);
      toGround(ground, spin * problem.nx, spin * problem.ny, spin * problem.nz, s, SPIN);
      run(ground, s);
      const [along, normal, across] = s as unknown as readonly [number, number, number];
      result.x += worldX(ground, along, normal, across);
      result.z += worldZ(ground, normal, across);
    }
    result.total = Math.hypot(result.x, result.z);
    return result;
  }
  return { play };
}
