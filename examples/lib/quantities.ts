import {
  type Angle,
  degrees,
  feet,
  kph,
  type Length,
  metres,
  metresPerSecond,
  mph,
  radians,
  type Speed,
  yards,
} from 'fairflight/units';
import { UsageError } from './usage-error.js';

/** A number with its unit as typed, for example `1200m`. */
export interface Typed {
  readonly value: number;
  readonly unit: string;
}

/** Splits `1200m` or `-1.5 deg`. @throws UsageError without a number or a unit */
export function typed(option: string, text: string, example: string): Typed {
  const said = text.trim();
  // No two parts may share a run of characters: what can be shared out in many ways is tried in all.
  const number = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)/u.exec(said)?.[0] ?? '';
  const value = Number(number);
  const unit = said.slice(number.length).trim();
  if (number === '' || unit === '' || /^[\d.]/u.test(unit) || !Number.isFinite(value)) {
    throw new UsageError(
      `--${option} needs a number with its unit, like ${example}; got ${JSON.stringify(text)}`,
    );
  }
  return { value, unit };
}

const SPEEDS: Readonly<Record<string, (value: number) => Speed>> = {
  mph,
  'km/h': kph,
  kph,
  'm/s': metresPerSecond,
};
const ANGLES: Readonly<Record<string, (value: number) => Angle>> = {
  deg: degrees,
  '°': degrees,
  rad: radians,
};

/** A speed such as `100mph`. */
export function typedSpeed(option: string, text: string): Speed {
  return made(option, typed(option, text, '100mph'), SPEEDS);
}

/** An angle such as `10.5deg`. */
export function typedAngle(option: string, text: string): Angle {
  return made(option, typed(option, text, '10.5deg'), ANGLES);
}

function made<Q>(
  option: string,
  { value, unit }: Typed,
  makers: Readonly<Record<string, (value: number) => Q>>,
): Q {
  const make = makers[unit.toLowerCase()];
  if (make !== undefined) return make(value);
  throw new UsageError(
    `--${option}: ${JSON.stringify(unit)} is not a unit known here; use ${Object.keys(makers).join(', ')}`,
  );
}

const LENGTHS: Readonly<Record<string, (value: number) => Length>> = { yd: yards, m: metres, ft: feet };

/** A length such as `32yd`. */
export function typedLength(option: string, text: string): Length {
  return made(option, typed(option, text, '32yd'), LENGTHS);
}

/** A whole number. @throws UsageError when it is none or out of range */
export function typedWhole(option: string, text: string, least: number, most?: number): number {
  const value = Number(text);
  const fits = value >= least && value <= (most ?? Number.MAX_SAFE_INTEGER);
  if (text.trim() !== '' && Number.isInteger(value) && fits) return value;
  const range = most === undefined ? `from ${least}` : `from ${least} to ${most}`;
  throw new UsageError(`--${option} needs a whole number ${range}; got ${JSON.stringify(text)}`);
}

/** Takes the unit off the end of `380,410,520yd`; undefined where the text is not of that form. */
export function unitAtEnd(text: string): { readonly numbers: string; readonly unit: string } | undefined {
  const [, numbers, unit] = /^([\d.\s,]+)([a-z/]+)$/i.exec(text.trim()) ?? [];
  return numbers === undefined || unit === undefined ? undefined : { numbers, unit };
}

/** Lengths with one unit at the end, such as `380,410,520yd`. */
export function typedLengths(option: string, text: string): readonly Length[] {
  const { numbers, unit } = unitAtEnd(text) ?? { numbers: text, unit: '' };
  return numbers.split(',').map((each) => typedLength(option, `${each.trim()}${unit}`));
}
