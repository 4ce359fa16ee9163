/**
 * State of a running ball, in the frame of the ground: along, normal, across. Kernels write into it in place, so that a
 * batch of runs allocates nothing. Position [m], velocity [m/s], spin [rad/s], then time [s].
 * @internal
 */
export type RunState = Float64Array;

/** Makes an empty state. @internal */
export function newRunState(): RunState {
  return new Float64Array(10);
}

/** Index of the first position, velocity and spin component, and of time. @internal */
export const POSITION = 0;
export const VELOCITY = 3;
export const SPIN = 6;
export const TIME = 9;
