/** Nodes of a path, from which `pathOf` and `stateAt` interpolate. Two nodes at one time are the two sides of a contact. */
export interface Track {
  /** Times of the nodes [s]. */
  readonly time: readonly number[];
  /** Seven numbers a node: x, y, z [m], vx, vy, vz [m/s], spin rate [rad/s]. */
  readonly state: readonly number[];
  /** Three numbers a node: acceleration [m/s²]. */
  readonly acceleration: readonly number[];
}

/** A track still being written. @internal */
export interface GrowingTrack extends Track {
  readonly time: number[];
  readonly state: number[];
  readonly acceleration: number[];
}
