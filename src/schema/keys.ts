import { requireKnown } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import type { JsonFields } from './json-field.js';

const KEY_WITH_UNIT = /^(\w+)\s*\(([^()]+)\)$/;

/** `ballSpeed (mph)` as field and unit; a key that has no unit is the field. */
function splitKey(key: string): { readonly name: string; readonly unit?: string } {
  const [, name, unit] = KEY_WITH_UNIT.exec(key) ?? [];
  return name === undefined || unit === undefined ? { name: key } : { name, unit };
}

/** True when the record has a key for one of the fields, with or without a unit. */
export function hasAny(record: object, names: readonly string[]): boolean {
  return Object.keys(record).some((key) => names.includes(splitKey(key).name));
}

/**
 * Puts units written in keys beside their values: `"ballSpeed (mph)": 150` becomes
 * `"ballSpeed": { "value": 150, "unit": "mph" }`. One level only: fields below are read in their turn.
 * @throws FairflightError for no record, a field that is unknown, inherited or given twice, and a unit where none is due
 */
export function spreadUnits(fields: JsonFields, given: unknown, path: string): object {
  // Every key of its own is known to the record itself: this refuses what is no record, and inherited keys.
  const own = requireKnown(given as Readonly<Record<string, unknown>>, given, path);
  const spread = new Map<string, unknown>();
  for (const key of Object.keys(own)) {
    const { name, unit } = splitKey(key);
    const value = own[key];
    requireKnown(fields, { [name]: value }, path);
    if (value === undefined) continue;
    if (spread.has(name)) {
      throw refusal(`${path}.${name}`, `${path}.${name} is given twice; keep one of the two`, { value });
    }
    if (fields[name]?.kind !== 'quantity' && unit !== undefined) {
      throw refusal(`${path}.${name}`, `${path}.${name} takes no unit; write the key as "${name}"`, {
        value,
      });
    }
    spread.set(name, unit === undefined ? value : { value, unit });
  }
  return Object.fromEntries(spread);
}
