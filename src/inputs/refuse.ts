import { describe, type ErrorCode, type ErrorDetails, FairflightError } from '../errors.js';
import { fromUnit, inUnit, type Unit } from '../units/unit.js';
import type { QuantityField } from './field.js';

/** An error whose message ends in what the caller can do about it. @internal */
export function refusal(
  field: string,
  message: string,
  details: Omit<ErrorDetails, 'field'> = {},
  code: ErrorCode = 'invalid-input',
): FairflightError {
  const advice = details.hint === undefined ? '' : `; ${details.hint}`;
  return new FairflightError(code, `${message}${advice}`, { field, ...details });
}

/** Longest name of a field that a path repeats. */
const LONGEST_NAME = 60;

/** `launch.ballSpeed`, or `options.fixed['launch.ballSpeed']` where the name is not a plain one. @internal */
export function memberPath(path: string, name: string): string {
  const short = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME)}…` : name;
  return /^[\w$]+$/.test(short) ? `${path}.${short}` : `${path}['${short}']`;
}

/** Enough digits for a message, and no more. */
function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}

const SYMBOLS: Readonly<Record<string, string>> = {
  'kg m2': 'kg m²',
  'g cm2': 'g cm²',
  'kg/m3': 'kg/m³',
  deg: '°',
  C: '°C',
  F: '°F',
};

function symbol(unit: string): string {
  return SYMBOLS[unit] ?? unit;
}

/** `150 m/s`; no blank before a degree sign. */
function withUnit(value: string, unit: string): string {
  const text = symbol(unit);
  return text === '' || text === '°' ? `${value}${text}` : `${value} ${text}`;
}

/** The allowed range in SI and in the unit people say: `between 1 and 90 m/s (2.237 and 201.3 mph)`. @internal */
export function rangeText({
  min,
  max,
  si,
  said,
}: Pick<QuantityField, 'min' | 'max' | 'si' | 'said'>): string {
  const plain = `between ${short(min)} and ${withUnit(short(max), si)}`;
  if (said.symbol === si) return plain;
  const [low, high] = [short(inUnit(said, min)), short(inUnit(said, max))];
  return `${plain} (${said.symbol === 'deg' ? `${low}°` : low} and ${withUnit(high, said.symbol)})`;
}

/** Most digits of a number that a person may have typed. */
const TYPED_DIGITS = 6;

function digitsOf(value: number): number {
  return value
    .toPrecision(12)
    .replace(/e.*$|[-.]/g, '')
    .replace(/^0+|0+$/g, '').length;
}

/**
 * `; if 150 was meant as mph, pass mph(150)`: only for a number a person may have typed, one short in digits, that would
 * be allowed in that unit. One that is shorter in that unit than in SI, as 178.816 m/s is 400 mph, came out of it.
 */
function hintFor(field: QuantityField, value: unknown): string | undefined {
  const { said, si, min, max } = field;
  if (typeof value !== 'number' || said.symbol === si) return undefined;
  const meant = fromUnit(said, value);
  if (!(meant >= min && meant <= max)) return undefined;
  const digits = digitsOf(value);
  if (digits > TYPED_DIGITS || digits > digitsOf(inUnit(said, value))) return undefined;
  const pass = said.maker === undefined ? Number(meant.toPrecision(6)) : `${said.maker}(${value})`;
  return `if ${value} was meant as ${symbol(said.symbol)}, pass ${pass}`;
}

function gotText(value: unknown, { si, said }: QuantityField): string {
  if (typeof value !== 'number' || !Number.isFinite(value)) return describe(value);
  const plain = withUnit(short(value), si);
  if (said.symbol === si) return plain;
  return `${plain} (${withUnit(short(inUnit(said, value)), said.symbol)})`;
}

/**
 * Refuses a number that is none, or lies outside its field's range.
 * @param subject - what the message speaks of, where the path alone does not say what the number is
 * @internal
 */
export function refuseQuantity(
  field: QuantityField,
  value: unknown,
  path: string,
  subject: string = path,
): FairflightError {
  return refuseNumber(field, value, path, subject, hintFor(field, value));
}

/** {@link refuseQuantity} for a value that was written with its unit: which one was meant is no question. @internal */
export function refuseWritten(
  field: QuantityField,
  unit: Unit,
  value: unknown,
  path: string,
): FairflightError {
  return refuseNumber({ ...field, said: unit }, value, path, path, undefined);
}

function refuseNumber(
  field: QuantityField,
  value: unknown,
  path: string,
  subject: string,
  hint: string | undefined,
): FairflightError {
  const finite = typeof value === 'number' && Number.isFinite(value);
  return refusal(
    path,
    mustBe(subject, rangeText(field), value, gotText(value, field)),
    { value, unit: symbol(field.si), range: [field.min, field.max], ...(hint !== undefined && { hint }) },
    finite ? 'outside-range' : 'invalid-input',
  );
}

/** Refuses a value of the wrong type: `launch must be an object, got an array`. @internal */
export function refuseType(path: string, wanted: string, value: unknown): FairflightError {
  return refusal(path, mustBe(path, wanted, value, describe(value)), { value });
}

function mustBe(subject: string, wanted: string, value: unknown, got: string): string {
  return value === undefined
    ? `${subject} is missing; it must be ${wanted}`
    : `${subject} must be ${wanted}, got ${got}`;
}
