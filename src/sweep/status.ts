import { frozen } from '../inputs/frozen.js';

/**
 * How a row ended. `landed`: it landed and, when a run was asked for, came to rest. `time-limit`: in the air at the
 * time limit. `below-ground`: never above the ground plane. `topped`: launched along the ground or into it, and never
 * in the air. `still-rolling`: landed, and was still rolling at the time limit of the run. In these five every output
 * is a number, but for `run.…` of a ball that did not land: the flight's figures then describe the last state computed
 * and there is no run, as in `Flight` and `Shot`.
 *
 * `outside-range`: an input or the launch made from it lies outside the range the library computes. `no-strike`: the
 * face does not reach the ball, or no impulse satisfies the laws of impact. `not-converged`: the integration gave up.
 * In these three the outputs that could not be computed are NaN.
 */
export type RowStatus =
  | 'landed'
  | 'time-limit'
  | 'below-ground'
  | 'topped'
  | 'still-rolling'
  | 'outside-range'
  | 'no-strike'
  | 'not-converged';

/** Names of the codes in a status column: `rowStatuses[code]`. */
export const rowStatuses: readonly RowStatus[] = /* @__PURE__ */ frozen(() => [
  'landed',
  'time-limit',
  'below-ground',
  'topped',
  'still-rolling',
  'outside-range',
  'no-strike',
  'not-converged',
]);

/** Codes of the status column by name. @internal */
export const STATUS_CODE = {
  landed: 0,
  timeLimit: 1,
  belowGround: 2,
  topped: 3,
  stillRolling: 4,
  outsideRange: 5,
  noStrike: 6,
  notConverged: 7,
} as const;
