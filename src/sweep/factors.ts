import { spinDecayField } from '../aerodynamics/model-fields.js';
import { scaleFields } from '../aerodynamics/scaled.js';
import { describe } from '../errors.js';
import {
  type Air,
  type AirPlace,
  type AirState,
  airFields,
  airStateFields,
  placeFields,
} from '../inputs/air.js';
import { type Ball, ballFields } from '../inputs/ball.js';
import { type Clubhead, clubheadFields } from '../inputs/clubhead.js';
import { type Delivery, deliveryFields, type StrikeOffset } from '../inputs/delivery.js';
import type { Field, Fields, QuantityField } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { type Ground, groundFields } from '../inputs/ground.js';
import { type Launch, launchFields } from '../inputs/launch.js';
import { allows } from '../inputs/read.js';
import { type ReadingErrors, readingErrorFields } from '../inputs/readings.js';
import { refusal } from '../inputs/refuse.js';
import { type BiberBounce, type PennerBounce, type Turf, turfFields } from '../inputs/turf.js';
import { type Wind, type WindProfile, windFields } from '../inputs/wind.js';
import { type WindReadingFields, windReadingFields } from '../inputs/wind-reading.js';

/** The numbers of a record under dotted names. */
type Numbers<Group extends string, T> = {
  readonly [K in keyof T & string as Exclude<T[K], undefined> extends number
    ? `${Group}.${K}`
    : never]-?: Exclude<T[K], undefined>;
};

/** Factors on the coefficients of the scene's model, and a spin decay in place of its own. */
interface ModelNumbers {
  readonly dragScale: number;
  readonly liftScale: number;
  readonly spinDecay: number;
}

/** One kind of a variant. */
type Kind<T, K extends string> = Extract<T, { readonly kind: K }>;

/**
 * Every input a sweep can vary or fix, by dotted name, with the unit of its value: the numbers of {@link Delivery},
 * {@link Clubhead}, {@link Launch}, air, wind, {@link Turf}, {@link Ground} and {@link Ball}. What is neither varied
 * nor fixed beside `air.temperature`, `air.pressure` and `air.relativeHumidity` is 20 °C, 1013.25 hPa and 50 %;
 * `air.altitude` sets the pressure, and the temperature when that is not given.
 *
 * `aerodynamics.…` are what is uncertain about the ball in the air: factors on the drag and the lift of the scene's
 * model, and a spin decay constant in place of its own. `readingError.…` says by how much a reading is above the truth,
 * speeds and spin as a share of the reading, angles in radians: `delivery.…` and `launch.…` are then what was read, and
 * the shot is that of the truth.
 */
export type FactorValues = Numbers<'delivery', Delivery> &
  Numbers<'delivery.strikeOffset', StrikeOffset> &
  Numbers<'clubhead', Omit<Clubhead, 'staticLoft'>> &
  Numbers<'clubhead.inertia', Clubhead['inertia']> &
  Numbers<'clubhead.centreOfGravity', Clubhead['centreOfGravity']> &
  Numbers<'clubhead.restitution', Clubhead['restitution']> &
  Numbers<'clubhead.tangentialRestitution', Kind<Clubhead['tangentialRestitution'], 'constant'>> &
  Numbers<'clubhead.tangentialRestitution', Kind<Clubhead['tangentialRestitution'], 'oblique'>> &
  Numbers<'clubhead.tangentialRestitution', Kind<Clubhead['tangentialRestitution'], 'by-speed'>> &
  Numbers<'launch', Launch> &
  Numbers<'readingError', ReadingErrors> &
  Numbers<'aerodynamics', ModelNumbers> &
  Numbers<'air', Omit<AirState, 'carbonDioxide'> & Pick<AirPlace, 'altitude'> & Air> &
  Numbers<'wind', Wind & Pick<WindReadingFields, 'speed' | 'from'>> &
  Numbers<'wind.profile', Kind<WindProfile, 'log'>> &
  Numbers<'wind.profile', Kind<WindProfile, 'power'>> &
  Numbers<'turf', Turf> &
  Numbers<'turf.bounce', PennerBounce> &
  Numbers<'turf.bounce', BiberBounce> &
  Numbers<'ground', Ground> &
  Numbers<'ball', Ball>;

/** Dotted name of a factor. */
export type FactorName = keyof FactorValues;

/** Unit and allowed range of a factor, both ends included. */
export interface FactorSpec {
  /** SI unit; empty for a ratio. */
  readonly unit: string;
  /** Smallest value. */
  readonly min: number;
  /** Largest value. */
  readonly max: number;
  /** What it is, in words. */
  readonly label: string;
}

/** The declaration of every factor: those of the inputs themselves. @internal */
export const factorFields: Readonly<Record<FactorName, QuantityField>> = /* @__PURE__ */ frozen(() => {
  // The static loft of a head plays no part in a strike.
  const { staticLoft: _, ...head } = clubheadFields;
  const { temperature, pressure, relativeHumidity } = airStateFields;
  const { speed, from } = windReadingFields([]);
  const signedErrors = Object.fromEntries(
    Object.entries(readingErrorFields).map(([name, field]) => [name, { ...field, min: -field.max }]),
  );
  const modelNumbers = {
    dragScale: scaleFields.drag,
    liftScale: scaleFields.lift,
    spinDecay: spinDecayField,
  };
  return Object.fromEntries([
    ...quantitiesOf('delivery', deliveryFields),
    ...quantitiesOf('clubhead', head),
    ...quantitiesOf('launch', launchFields),
    ...quantitiesOf('readingError', signedErrors),
    ...quantitiesOf('aerodynamics', modelNumbers),
    ...quantitiesOf('air', { temperature, pressure, relativeHumidity, altitude: placeFields.altitude }),
    ...quantitiesOf('air', airFields),
    ...quantitiesOf('wind', { along: windFields.along, across: windFields.across, speed, from }),
    ...quantitiesOf('wind', { profile: windFields.profile }),
    ...quantitiesOf('turf', turfFields),
    ...quantitiesOf('ground', groundFields),
    ...quantitiesOf('ball', ballFields),
  ]) as Record<FactorName, QuantityField>;
});

/** Every quantity of a record and of the records in it, by dotted name. */
function quantitiesOf(group: string, fields: Fields): readonly (readonly [string, QuantityField])[] {
  return Object.entries(fields).flatMap(([name, field]) => quantitiesIn(`${group}.${name}`, field));
}

function quantitiesIn(name: string, field: Field): readonly (readonly [string, QuantityField])[] {
  switch (field.kind) {
    case 'quantity':
      return [[name, field]];
    case 'record':
      return quantitiesOf(name, field.fields);
    case 'variant':
      return Object.values(field.cases).flatMap((fields) => quantitiesOf(name, fields));
    default:
      return [];
  }
}

/** Every factor with its unit and allowed range, as its input declares them. */
export const sweepFactors: Readonly<Record<FactorName, FactorSpec>> = /* @__PURE__ */ frozen(
  () =>
    Object.fromEntries(
      Object.entries(factorFields).map(([name, { si, min, max, label }]) => [
        name,
        { unit: si, min, max, label },
      ]),
    ) as Record<FactorName, FactorSpec>,
);

/**
 * Returns the name when it is that of a factor.
 * @throws `FairflightError` `invalid-input` that lists the names of the same group, or all groups
 * @internal
 */
export function requireFactor(field: string, name: unknown): FactorName {
  if (typeof name === 'string' && Object.hasOwn(factorFields, name)) return name as FactorName;
  const names = Object.keys(factorFields);
  const group = typeof name === 'string' ? name.split('.')[0] : undefined;
  const near = names.filter((known) => known.split('.')[0] === group);
  const known = (near.length > 0 ? near : names).join(', ');
  throw refusal(
    field,
    `${field} must be the name of a factor, got ${describe(name)}; known${near.length > 0 ? ` in ${group}` : ''}: ${known}`,
    { value: name, hint: 'sweepFactors lists every name with unit and range' },
  );
}

/** True for a number in the range of the factor. @internal */
export function isWithin(name: FactorName, value: number): boolean {
  return allows(factorFields[name], value);
}
