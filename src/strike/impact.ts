import type { Launch } from '../inputs/launch.js';

/** A delivery as plain SI numbers, all fields filled in; ranges and signs are those of `Delivery`. @internal */
export interface StrikeInput {
  clubSpeed: number;
  attackAngle: number;
  clubPath: number;
  faceAngle: number;
  dynamicLoft: number;
  toe: number;
  high: number;
  closureRate: number;
  /** 1 right-handed, −1 left-handed. Angles stay in the world frame. */
  mirror: 1 | -1;
}

/** What a strike does, SI. Belongs to the striker and is overwritten by its next strike. @internal */
export interface StrikeResult {
  readonly launch: Required<Launch>;
  readonly backspin: number;
  readonly sidespin: number;
  readonly spinLoft: number;
  readonly faceToPath: number;
  readonly restitution: number;
  readonly tangentialRestitution: number;
  readonly slid: boolean;
  readonly frictionUsed: number;
  readonly clubSpeedAfter: number;
}

/**
 * Why there is no strike. `no-approach`: the face moves away from the ball or along it. `impossible-restitution`: the
 * head's law of restitution leaves 0 to 1. `makes-energy`: the impulse would give the two bodies energy.
 * @internal
 */
export type StrikeFailure = 'no-approach' | 'impossible-restitution' | 'makes-energy';

/** A level, square, centred strike of a right-handed player, for a caller to set what differs. @internal */
export function squareStrike(clubSpeed: number, attackAngle: number, dynamicLoft: number): StrikeInput {
  return {
    clubSpeed,
    attackAngle,
    clubPath: 0,
    faceAngle: 0,
    dynamicLoft,
    toe: 0,
    high: 0,
    closureRate: 0,
    mirror: 1,
  };
}
