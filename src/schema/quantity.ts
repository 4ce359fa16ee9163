import { describe, isRecord } from '../errors.js';
import type { QuantityField } from '../inputs/field.js';
import { allows, readQuantity } from '../inputs/read.js';
import { refusal, refuseType, refuseWritten } from '../inputs/refuse.js';
import { fromUnit, inUnit } from '../units/unit.js';
import { findUnit, symbolOf, unitSymbols } from './unit-names.js';

/** True for a number that people say without a unit. Humidity is none: 30 might be 30 % or, as 0.3, be read as 0.3 %. */
export function isPlain({ said }: QuantityField): boolean {
  return said.symbol === '';
}

/**
 * Reads `{ "value": 150, "unit": "mph" }` into SI; a number that people say without a unit may stand by itself.
 * @throws FairflightError naming the range in SI and in the unit that was written
 */
export function readWithUnit(field: QuantityField, given: unknown, path: string): number {
  if (given === undefined || (isPlain(field) && !isRecord(given))) return readQuantity(field, given, path);
  const said = symbolOf(field.said);
  if (typeof given === 'number' && Number.isFinite(given)) {
    throw refusal(path, `${path} needs a unit (${unitSymbols(field.si)})`, {
      value: given,
      hint: `write { "value": ${given}, "unit": "${said}" } or put the unit in the key`,
    });
  }
  const pair = pairOf(given);
  if (pair === undefined) {
    const example = Number(inUnit(field.said, field.example).toPrecision(3));
    throw refuseType(path, `a number with a unit, like { "value": ${example}, "unit": "${said}" }`, given);
  }
  const unit = findUnit(field.si, pair.unit);
  if (unit === undefined) {
    throw refusal(path, `${path} has the unit ${describe(pair.unit)}`, {
      value: pair.unit,
      hint: `use one of ${unitSymbols(field.si)}`,
    });
  }
  const value = typeof pair.value === 'number' ? fromUnit(unit, pair.value) : pair.value;
  if (allows(field, value)) return value as number;
  throw refuseWritten(field, unit, value, path);
}

function pairOf(given: unknown): { readonly value: unknown; readonly unit: string } | undefined {
  if (!isRecord(given) || Object.keys(given).length !== 2) return undefined;
  if (!Object.hasOwn(given, 'value') || !Object.hasOwn(given, 'unit')) return undefined;
  const { value, unit } = given;
  return typeof unit === 'string' ? { value, unit } : undefined;
}
