import type { Source } from '../source.js';
import type { Angle, Length, Mass, MomentOfInertia, Speed } from '../units/index.js';
import {
  DEGREES,
  G_CM2,
  GRAMS,
  METRES_PER_SECOND,
  MILLIMETRES,
  RATIO,
  SECONDS_PER_METRE,
} from '../units/unit.js';
import {
  choice,
  type Declared,
  type Fields,
  optional,
  type QuantityField,
  quantity,
  record,
  text,
  type VariantField,
} from './field.js';
import { frozen } from './frozen.js';
import { sourceFields } from './source.js';

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
  /** Coefficient of restitution of a centred strike at the reference speed, 0 to 1. */
  readonly atReference: number;
  /** Normal approach speed the first number belongs to [m/s], 0 to 100. */
  readonly referenceSpeed: Speed;
  /** Fall of restitution per m/s of normal approach speed [s/m], −0.02 to 0.02. */
  readonly slope: number;
  /** Restitution at and beyond `edgeDistance` from the face centre, 0 to 1. */
  readonly atEdge: number;
  /** Distance from the face centre at which the face has no spring effect left [m], 0.001 to 1. */
  readonly edgeDistance: Length;
}

/**
 * Tangential restitution e_t: slip velocity after impact = −e_t × slip velocity before. −1 no grip, 0 rolling at
 * release, +1 perfectly elastic grip.
 */
export type TangentialRestitution =
  | { readonly kind: 'constant'; readonly value: number }
  /** e_t = limit (1 − exp(−(θ − onset)/scale)) for θ above the onset, else 0; θ is the obliquity of the impact. */
  | { readonly kind: 'oblique'; readonly limit: number; readonly onset: Angle; readonly scale: Angle }
  /**
   * e_t = atReference − reach tanh(slope (V − referenceSpeed)/reach) at the club speed V: it falls by `slope` per m/s
   * about the reference speed and levels off `reach` above and below.
   */
  | {
      readonly kind: 'by-speed';
      readonly atReference: number;
      readonly referenceSpeed: Speed;
      readonly slope: number;
      readonly reach: number;
    };

/** A rigid clubhead with a curved face. Offsets are in the face frame: depth into the head, up the face, toward the toe. */
export interface Clubhead {
  /** Name for reports. */
  readonly name: string;
  /** Class of club. */
  readonly clubClass: ClubClass;
  /** Design loft [rad], −0.2 to 1.4. */
  readonly staticLoft: Angle;
  /** Mass of the head [kg], 0.1 to 0.6. */
  readonly mass: Mass;
  /** Mass of shaft that takes part in the impact [kg], 0 to 0.1. */
  readonly shaftMass: Mass;
  /** Principal moments of inertia about the centre of gravity, in the face frame [kg m²], 1e-5 to 0.005 each. */
  readonly inertia: {
    readonly faceNormal: MomentOfInertia;
    readonly vertical: MomentOfInertia;
    readonly heelToe: MomentOfInertia;
  };
  /**
   * Centre of gravity relative to the face centre [m]: depth behind the face, −0.02 to 0.08; height above its normal and
   * toe side of it, −0.03 to 0.03 each.
   */
  readonly centreOfGravity: { readonly depth: Length; readonly high: Length; readonly toe: Length };
  /** Horizontal radius of the face [m], 0.1 to 1,000,000; left out for a flat face. */
  readonly bulge?: Length;
  /** Vertical radius of the face [m], 0.1 to 1,000,000; left out for a flat face. */
  readonly roll?: Length;
  /** Normal restitution. */
  readonly restitution: RestitutionLaw;
  /** Tangential restitution. */
  readonly tangentialRestitution: TangentialRestitution;
  /** Coulomb friction coefficient of ball on face, 0 to 2: a cap on the tangential impulse. */
  readonly friction: number;
  /** Where the numbers come from. */
  readonly source: Source;
}

/** Classes of club, longest first. @internal */
export const CLUB_CLASSES: readonly ClubClass[] = [
  'driver',
  'fairway-wood',
  'hybrid',
  'long-iron',
  'mid-iron',
  'short-iron',
  'wedge',
];

type Grip<Kind extends TangentialRestitution['kind']> = Omit<
  Extract<TangentialRestitution, { readonly kind: Kind }>,
  'kind'
>;

/** Declaration of {@link RestitutionLaw}. @internal */
export const restitutionFields: Declared<RestitutionLaw> = /* @__PURE__ */ frozen(() => ({
  atReference: quantity(RATIO, 0, 1, 0.838, 'restitution at the reference speed'),
  referenceSpeed: quantity(METRES_PER_SECOND, 0, 100, 48.8, 'reference speed of restitution'),
  slope: quantity(SECONDS_PER_METRE, -0.02, 0.02, 0.0015, 'fall of restitution with speed'),
  atEdge: quantity(RATIO, 0, 1, 0.78, 'restitution at the edge'),
  edgeDistance: quantity(MILLIMETRES, 0.001, 1, 0.03, 'distance of the edge from the face centre'),
}));

/** Tangential restitution as a number. @internal */
export const tangentialRestitutionValueField: QuantityField<''> = /* @__PURE__ */ frozen(() =>
  quantity(RATIO, -1, 1, -0.2, 'tangential restitution'),
);

/** Declaration of {@link TangentialRestitution}. @internal */
export const tangentialRestitutionField: VariantField = /* @__PURE__ */ frozen(() => {
  const constant: Declared<Grip<'constant'>> = { value: tangentialRestitutionValueField };
  const oblique: Declared<Grip<'oblique'>> = {
    limit: { ...tangentialRestitutionValueField, example: 0.3, label: 'limit of tangential restitution' },
    onset: quantity(DEGREES, 0, 1.5, 0.21, 'onset of the oblique law'),
    scale: quantity(DEGREES, 1e-3, 3, 0.1, 'scale of the oblique law'),
  };
  const bySpeed: Declared<Grip<'by-speed'>> = {
    atReference: {
      ...tangentialRestitutionValueField,
      label: 'tangential restitution at the reference speed',
    },
    referenceSpeed: quantity(METRES_PER_SECOND, 0, 100, 48.9, 'reference speed of tangential restitution'),
    slope: quantity(SECONDS_PER_METRE, -0.1, 0.1, 0.02, 'fall of tangential restitution with club speed'),
    reach: quantity(RATIO, 1e-3, 1, 0.2, 'reach of tangential restitution'),
  };
  return {
    kind: 'variant',
    by: 'kind',
    cases: { constant: constant as Fields, oblique: oblique as Fields, 'by-speed': bySpeed as Fields },
    label: 'tangential restitution',
  };
});

/** Declaration of {@link Clubhead}. @internal */
export const clubheadFields: Declared<Clubhead> = /* @__PURE__ */ frozen(() => {
  const inertia = quantity(G_CM2, 1e-5, 5e-3, 4.8e-4, 'moment of inertia of the head');
  const radius = optional(quantity(MILLIMETRES, 0.1, 1e6, 0.305, 'radius of the face'));
  return {
    name: text('my driver', 'name'),
    clubClass: choice(CLUB_CLASSES, 'class of club'),
    staticLoft: quantity(DEGREES, -0.2, 1.4, 0.183, 'static loft'),
    mass: quantity(GRAMS, 0.1, 0.6, 0.2, 'mass of the head'),
    shaftMass: quantity(GRAMS, 0, 0.1, 0.003, 'mass of shaft in the impact'),
    inertia: record<Clubhead['inertia']>(
      { faceNormal: inertia, vertical: inertia, heelToe: inertia },
      'moments of inertia',
    ),
    centreOfGravity: record<Clubhead['centreOfGravity']>(
      {
        depth: quantity(MILLIMETRES, -0.02, 0.08, 0.04, 'depth of the centre of gravity'),
        high: quantity(MILLIMETRES, -0.03, 0.03, 0, 'height of the centre of gravity'),
        toe: quantity(MILLIMETRES, -0.03, 0.03, 0, 'centre of gravity toward the toe'),
      },
      'centre of gravity',
    ),
    bulge: radius,
    roll: radius,
    restitution: record(restitutionFields, 'restitution'),
    tangentialRestitution: tangentialRestitutionField,
    friction: quantity(RATIO, 0, 2, 0.3, 'friction of ball on face'),
    source: record(sourceFields, 'source'),
  };
});
