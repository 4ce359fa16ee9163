/**
 * State of a running ball, in the frame of the ground: position [m], velocity [m/s] and spin vector [rad/s], each along
 * the plane, normal to it and across it, then time [s]. Kernels write into it in place, so that a batch of runs
 * allocates nothing.
 * @internal
 */
export type RunState = Float64Array;

/** Makes an empty state. @internal */
export function newRunState(): RunState {
  return new Float64Array(10);
}

/** Position along, normal to and across the plane: index in a state. @internal */
export const X = 0;
/** @internal */
export const Y = 1;
/** @internal */
export const Z = 2;
/** Velocity. @internal */
export const VX = 3;
/** @internal */
export const VY = 4;
/** @internal */
export const VZ = 5;
/** Spin. @internal */
export const WX = 6;
/** @internal */
export const WY = 7;
/** @internal */
export const WZ = 8;
/** Time. @internal */
export const TIME = 9;
