import { type Delivery, deliveryFields, strikeOffsetFields } from '../inputs/delivery.js';
import {
  choice,
  type Declared,
  type Field,
  type Fields,
  optional,
  type QuantityField,
  quantity,
  record,
  type VariantField,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import type { Angle, AngularSpeed, Length, Speed } from '../units/index.js';
import { RATIO, type SiUnit } from '../units/unit.js';

/** Standard deviations of a player's deliveries from shot to shot; what is left out does not scatter. */
export interface DeliverySd {
  /** Club speed [m/s], 0 to 44.5. */
  readonly clubSpeed?: Speed;
  /** Attack angle [rad], 0 to 0.6. */
  readonly attackAngle?: Angle;
  /** Club path [rad], 0 to 0.8. */
  readonly clubPath?: Angle;
  /** Face angle [rad], 0 to 0.8. */
  readonly faceAngle?: Angle;
  /** Dynamic loft [rad], 0 to 0.9. */
  readonly dynamicLoft?: Angle;
  /** Strike offset toward the toe [m], 0 to 0.06. */
  readonly toe?: Length;
  /** Strike offset up the face [m], 0 to 0.04. */
  readonly high?: Length;
  /** Closure rate [rad/s], 0 to 200. */
  readonly closureRate?: AngularSpeed;
}

/** Standard deviations of launches from shot to shot; what is left out does not scatter. */
export interface LaunchSd {
  /** Ball speed [m/s], 0 to 54.5. */
  readonly ballSpeed?: Speed;
  /** Launch angle [rad], 0 to π/2. */
  readonly launchAngle?: Angle;
  /** Launch direction [rad], 0 to π. */
  readonly launchDirection?: Angle;
  /** Spin rate [rad/s], 0 to 1,050. */
  readonly spinRate?: AngularSpeed;
  /** Tilt of the spin axis [rad], 0 to π. */
  readonly spinAxisTilt?: Angle;
  /** Rifle spin [rad/s], 0 to 2,100. */
  readonly rifleSpin?: AngularSpeed;
}

/** Correlation of two scattering quantities. */
export interface Correlation<Name extends string> {
  /** The two quantities. */
  readonly between: readonly [Name, Name];
  /** Pearson's correlation, −1 to 1. */
  readonly value: number;
}

/** The standard deviations that belong to deliveries or to launches. */
export type SdOf<Shot extends Delivery | Launch> = Shot extends Delivery ? DeliverySd : LaunchSd;

/** A spread that has standard deviations to scale: normal or Student t. */
export type ScalableSpread<Shot extends Delivery | Launch = Delivery> =
  /** Normal, with standard deviations and correlations. */
  | {
      readonly kind: 'normal';
      readonly sd: SdOf<Shot>;
      readonly correlations?: readonly Correlation<keyof SdOf<Shot> & string>[];
    }
  /**
   * Multivariate Student t with the same standard deviations and correlations: now and then a swing that is off in
   * everything at once. Ko S (2012, PhD thesis, Columbia) found that a normal distribution fits shots poorly and t
   * distributions are needed.
   */
  | {
      readonly kind: 'student-t';
      /**
       * Degrees of freedom, 2.01 to 1,000,000; default 5, a choice between normal and the heaviest tails.
       */
      readonly dof?: number;
      readonly sd: SdOf<Shot>;
      readonly correlations?: readonly Correlation<keyof SdOf<Shot> & string>[];
    };

/**
 * The player's own measured shots drawn again and again: their differences from their own mean are added to the usual
 * shot. Correlations and tails come along as they are.
 */
export interface OwnSpread<Shot extends Delivery | Launch = Delivery> {
  /** Says that the shots are the player's own. */
  readonly kind: 'own';
  /** The shots, 2 to 1,000,000; all by the hand of the usual one. */
  readonly shots: readonly Shot[];
}

/** How shots scatter about the usual one, a {@link Delivery} or a {@link Launch}. */
export type Spread<Shot extends Delivery | Launch = Delivery> = ScalableSpread<Shot> | OwnSpread<Shot>;

/** Degrees of freedom where nothing is said. @internal */
export const DEFAULT_DOF = 5;

/**
 * A standard deviation of a quantity: no distribution within a range scatters by more than half its width (Popoviciu
 * 1935, Mathematica 9, 129).
 */
function deviation<Si extends SiUnit>(
  field: QuantityField<Si>,
  example: number,
): QuantityField<Si> & { readonly optional: true } {
  const most = (field.max - field.min) / 2;
  return optional({ ...field, min: 0, max: most, example, label: `scatter of ${field.label}` });
}

/** Declaration of {@link DeliverySd}. @internal */
export const deliverySdFields: Declared<DeliverySd> = /* @__PURE__ */ frozen(() => ({
  clubSpeed: deviation(deliveryFields.clubSpeed, 0.7),
  attackAngle: deviation(deliveryFields.attackAngle, 0.02),
  clubPath: deviation(deliveryFields.clubPath, 0.035),
  faceAngle: deviation(deliveryFields.faceAngle, 0.035),
  dynamicLoft: deviation(deliveryFields.dynamicLoft, 0.02),
  toe: deviation(strikeOffsetFields.toe, 0.008),
  high: deviation(strikeOffsetFields.high, 0.006),
  closureRate: deviation(deliveryFields.closureRate, 5),
}));

/** Declaration of {@link LaunchSd}. @internal */
export const launchSdFields: Declared<LaunchSd> = /* @__PURE__ */ frozen(() => ({
  ballSpeed: deviation(launchFields.ballSpeed, 1),
  launchAngle: deviation(launchFields.launchAngle, 0.02),
  launchDirection: deviation(launchFields.launchDirection, 0.06),
  spinRate: deviation(launchFields.spinRate, 30),
  spinAxisTilt: deviation(launchFields.spinAxisTilt, 0.1),
  rifleSpin: deviation(launchFields.rifleSpin, 5),
}));

type Case<Kind extends Spread['kind']> = Omit<Extract<Spread, { readonly kind: Kind }>, 'kind'>;

/** A spread with standard deviations of these fields. */
function scalable(sdFields: Fields): VariantField {
  const names = Object.keys(sdFields);
  const correlation: Declared<Correlation<string>> = {
    between: {
      kind: 'list',
      of: choice(names, 'quantity'),
      least: 2,
      most: 2,
      label: 'correlated quantities',
    },
    value: quantity(RATIO, -1, 1, 0.4, 'correlation'),
  };
  const normal: Declared<Case<'normal'>> = {
    sd: record(sdFields as Declared<DeliverySd>, 'standard deviations'),
    correlations: optional({
      kind: 'list',
      of: record(correlation, 'correlation'),
      least: 0,
      most: (names.length * (names.length - 1)) / 2,
      label: 'correlations',
    }),
  };
  const studentT: Declared<Case<'student-t'>> = {
    ...normal,
    dof: optional(quantity(RATIO, 2.01, 1e6, DEFAULT_DOF, 'degrees of freedom')),
  };
  return {
    kind: 'variant',
    by: 'kind',
    cases: { normal: normal as Fields, 'student-t': studentT as Fields },
    label: 'spread',
  };
}

/** The same, or shots of one's own. */
function withOwn(spread: VariantField, shot: Field): VariantField {
  const own: Declared<Case<'own'>> = {
    shots: { kind: 'list', of: shot, least: 2, most: 1e6, label: 'own shots' },
  };
  return { ...spread, cases: { ...spread.cases, own: own as Fields } };
}

/** Declaration of a {@link ScalableSpread} of deliveries. @internal */
export const scalableSpreadField: VariantField = /* @__PURE__ */ frozen(() =>
  scalable(deliverySdFields as Fields),
);

/** Declaration of a {@link Spread} of deliveries. @internal */
export const deliverySpreadField: VariantField = /* @__PURE__ */ frozen(() =>
  withOwn(scalableSpreadField, record(deliveryFields, 'own shot')),
);

/** Declaration of a {@link Spread} of launches. @internal */
export const launchSpreadField: VariantField = /* @__PURE__ */ frozen(() =>
  withOwn(scalable(launchSdFields as Fields), record(launchFields, 'own shot')),
);
