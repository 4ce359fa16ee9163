/** A vector in the world frame: x along the target line, y up, z to the right seen by someone facing the target. */
export interface Vector3 {
  /** Along the target line. */
  readonly x: number;
  /** Up. */
  readonly y: number;
  /** To the right. */
  readonly z: number;
}
