/**
 * Exact conversion factors to SI.
 * Sources: international yard and pound agreement of 1959 (yard 0.9144 m, pound 0.45359237 kg; NIST SP 811, 2008,
 * appendix B); BIPM SI Brochure, 9th ed. 2019, table 8 (minute, degree); standard atmosphere of ISO 2533:1975.
 */
export const METRES_PER_YARD = 0.9144;
/** Metres per foot, exact: a third of a yard. */
export const METRES_PER_FOOT = 0.3048;
/** Metres per inch, exact: a 36th of a yard. */
export const METRES_PER_INCH = 0.0254;
/** Metres per second in one mile per hour, exact: 1609.344 m / 3600 s. */
export const METRES_PER_SECOND_PER_MPH = 0.44704;
/** Metres per second in one foot per second, exact. */
export const METRES_PER_SECOND_PER_FPS = 0.3048;
/** Metres per second in one knot, exact: 1852 m / 3600 s. */
export const METRES_PER_SECOND_PER_KNOT: number = 1852 / 3600;
/** Radians in one degree. */
export const RADIANS_PER_DEGREE: number = Math.PI / 180;
/** Radians per second in one revolution per minute. */
export const RADIANS_PER_SECOND_PER_RPM: number = Math.PI / 30;
/** Kilograms in one avoirdupois ounce, exact: a 16th of a pound. */
export const KILOGRAMS_PER_OUNCE = 0.028349523125;
/** Kilogram square metres in one gram square centimetre, exact. */
export const KG_M2_PER_G_CM2 = 1e-7;
/** Kelvin at 0 degrees Celsius, exact. */
export const KELVIN_AT_ZERO_CELSIUS = 273.15;
/** Kelvin in one degree Fahrenheit, exact: 5/9. */
export const KELVIN_PER_FAHRENHEIT: number = 5 / 9;
/** Pascals in one hectopascal, exact. */
export const PASCALS_PER_HECTOPASCAL = 100;
/** Pascals in one conventional inch of mercury (0 °C), NIST SP 811 table B.8. */
export const PASCALS_PER_INCH_OF_MERCURY = 3386.389;
