import type { Source } from '../source.js';
import type { Angle, Length, Mass, MomentOfInertia, Speed } from '../units/index.js';

/** Class of club, which sets the generic properties and some models' constants. */
export type ClubClass =
  | 'driver'
  | 'fairway-wood'
  | 'hybrid'
  | 'long-iron'
  | 'mid-iron'
  | 'short-iron'
  | 'wedge';

/** Normal restitution: e = atReference − slope (v_n − referenceSpeed) − (atReference − atEdge) min(1, r²/edgeDistance²). */
export interface RestitutionLaw {
  /** Coefficient of restitution of a centred strike at the reference speed. */
  readonly atReference: number;
  /** Normal approach speed the first number belongs to [m/s]. */
  readonly referenceSpeed: Speed;
  /** Fall of restitution per m/s of normal approach speed [s/m]. */
  readonly slope: number;
  /** Restitution at and beyond `edgeDistance` from the face centre. */
  readonly atEdge: number;
  /** Distance from the face centre at which the face has no spring effect left [m]. */
  readonly edgeDistance: Length;
}

/**
 * Tangential restitution e_t: slip velocity after impact = −e_t × slip velocity before. −1 no grip, 0 rolling at
 * release, +1 perfectly elastic grip.
 */
export type TangentialRestitution =
  | { readonly kind: 'constant'; readonly value: number }
  /** e_t = limit (1 − exp(−(θ − onset)/scale)) for θ above the onset, else 0; θ is the obliquity of the impact. */
  | { readonly kind: 'oblique'; readonly limit: number; readonly onset: Angle; readonly scale: Angle };

/** A rigid clubhead with a curved face. Offsets are in the face frame: depth into the head, up the face, toward the toe. */
export interface Clubhead {
  /** Name for reports. */
  readonly name: string;
  /** Class of club. */
  readonly clubClass: ClubClass;
  /** Design loft [rad]. */
  readonly staticLoft: Angle;
  /** Mass of the head [kg]. */
  readonly mass: Mass;
  /** Mass of shaft that takes part in the impact [kg]. */
  readonly shaftMass: Mass;
  /** Principal moments of inertia about the centre of gravity, in the face frame [kg m²]. */
  readonly inertia: {
    readonly faceNormal: MomentOfInertia;
    readonly vertical: MomentOfInertia;
    readonly heelToe: MomentOfInertia;
  };
  /** Centre of gravity relative to the face centre [m]: depth behind the face, height above and toe side of its normal. */
  readonly centreOfGravity: { readonly depth: Length; readonly high: Length; readonly toe: Length };
  /** Horizontal radius of the face [m]; left out for a flat face. */
  readonly bulge?: Length;
  /** Vertical radius of the face [m]; left out for a flat face. */
  readonly roll?: Length;
  /** Normal restitution. */
  readonly restitution: RestitutionLaw;
  /** Tangential restitution. */
  readonly tangentialRestitution: TangentialRestitution;
  /** Coulomb friction coefficient of ball on face, a cap on the tangential impulse. */
  readonly friction: number;
  /** Where the numbers come from. */
  readonly source: Source;
}
