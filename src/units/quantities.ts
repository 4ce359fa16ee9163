declare const unit: unique symbol;

/**
 * A number that carries its SI unit in its type. It is a plain number at run time; only the constructors of this
 * room make one, so a bare `150` where a {@link Speed} is due does not compile.
 */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

/** Speed in metres per second. */
export type Speed = Quantity<'m/s'>;
/** Plane angle in radians. */
export type Angle = Quantity<'rad'>;
/** Length in metres. */
export type Length = Quantity<'m'>;
/** Angular speed in radians per second. */
export type AngularSpeed = Quantity<'rad/s'>;
/** Mass in kilograms. */
export type Mass = Quantity<'kg'>;
/** Moment of inertia in kilogram square metres. */
export type MomentOfInertia = Quantity<'kg m2'>;
/** Thermodynamic temperature in kelvin. */
export type Temperature = Quantity<'K'>;
/** Pressure in pascals. */
export type Pressure = Quantity<'Pa'>;
/** Density in kilograms per cubic metre. */
export type Density = Quantity<'kg/m3'>;
/** Dynamic viscosity in pascal seconds. */
export type DynamicViscosity = Quantity<'Pa s'>;
/** Time in seconds. */
export type Duration = Quantity<'s'>;

/** Any quantity of this room. */
export type AnyQuantity =
  | Speed
  | Angle
  | Length
  | AngularSpeed
  | Mass
  | MomentOfInertia
  | Temperature
  | Pressure
  | Density
  | DynamicViscosity
  | Duration;

/** Puts the brand on a number that is already in SI: the one door back from a kernel. */
export function si<Q extends AnyQuantity>(value: number): Q {
  return value as Q;
}
