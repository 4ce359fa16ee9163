import type { Air } from '../air/index.js';
import type { Ball } from '../ball/index.js';
import { STANDARD_GRAVITY } from '../gravity.js';
import type { Turf, TurfBounce } from '../inputs/turf.js';
import { biberLaw } from './biber-2023.js';
import type { BounceLaw } from './bounce-law.js';
import { pennerLaw } from './penner-2002.js';

/** Drag coefficient of a ball hopping: slow, little spin; an assumption. @internal */
export const HOP_DRAG = 0.3;
/** Drag coefficient of a ball rolling; an assumption. @internal */
export const ROLL_DRAG = 0.45;

/** Everything the run needs beside the state of the ball, as plain SI numbers; made once for many runs. @internal */
export interface RunConstants {
  /** How the turf throws the ball back. */
  readonly law: BounceLaw;
  /** Ball radius [m]. */
  readonly radius: number;
  /** I / (I + m r²), 2/7 for a uniform sphere: share of the slip that gripping takes from the velocity. */
  readonly gripShare: number;
  /** Deceleration of level rolling on the plane [m/s²]. */
  readonly rollDeceleration: number;
  /** Deceleration by air over speed squared, hopping [1/m]. */
  readonly hopDrag: number;
  /** Deceleration by air over speed squared, skidding [1/m]. */
  readonly skidDrag: number;
  /** Gravity in the frame of the ground [m/s²]: along, into the plane, across. */
  readonly gravityAlong: number;
  readonly gravityInto: number;
  readonly gravityAcross: number;
  /** The frame of the ground in the world frame: along lies in the plane above the x axis, then the plane's normal. */
  readonly alongX: number;
  readonly alongY: number;
  readonly normalX: number;
  readonly normalY: number;
  readonly normalZ: number;
  /** Rise of the plane along the x and z axes. */
  readonly slopeX: number;
  readonly slopeZ: number;
  /** Longest time computed [s]. */
  readonly timeLimit: number;
}

function lawOf(bounce: TurfBounce): BounceLaw {
  return bounce.model === 'biber-2023' ? biberLaw(bounce) : pennerLaw(bounce);
}

/** Gathers the constants of a run. Slopes in radians as in the scene's ground. @internal */
export function runConstants(
  turf: Turf,
  ball: Ball,
  air: Pick<Air, 'density'>,
  slope: number,
  crossSlope: number,
  timeLimit: number,
): RunConstants {
  const gripShare = ball.inertia / (ball.inertia + ball.mass * ball.radius ** 2);
  const drag = (air.density * Math.PI * ball.radius ** 2) / (2 * ball.mass);
  const slopeX = Math.tan(slope);
  const slopeZ = Math.tan(crossSlope);
  const n = 1 / Math.hypot(1, slopeX, slopeZ);
  const a = 1 / Math.hypot(1, slopeX);
  const normalX = -slopeX * n;
  const normalY = n;
  const normalZ = -slopeZ * n;
  const alongX = a;
  const alongY = slopeX * a;
  return {
    law: lawOf(turf.bounce),
    radius: ball.radius,
    gripShare,
    rollDeceleration: (1 - gripShare) * turf.rollingResistance * STANDARD_GRAVITY * normalY,
    hopDrag: drag * HOP_DRAG,
    skidDrag: drag * ROLL_DRAG,
    gravityAlong: -STANDARD_GRAVITY * alongY,
    gravityInto: STANDARD_GRAVITY * normalY,
    gravityAcross: STANDARD_GRAVITY * alongX * normalZ,
    alongX,
    alongY,
    normalX,
    normalY,
    normalZ,
    slopeX,
    slopeZ,
    timeLimit,
  };
}
