import * as z from 'zod/mini';
import { type Dimension, findUnit, fromSi, UNIT_NAMES, unitSymbols } from './unit-names.js';

/** What a quantity in JSON may be: its kind and its allowed range in SI, both ends included. */
export interface QuantityRule {
  readonly dimension: Dimension;
  readonly range: readonly [minimum: number, maximum: number];
}

/** Particulars that travel in a zod issue until they become a FairflightError. */
export interface Complaint {
  readonly code: 'invalid-input' | 'outside-range';
  readonly unit?: string;
  readonly range?: readonly [minimum: number, maximum: number];
  readonly hint?: string;
}

/** Reads `{ "value": 150, "unit": "mph" }` into SI. */
export function quantity<Q extends number>({ dimension, range }: QuantityRule): z.ZodMiniType<Q> {
  const example = UNIT_NAMES[dimension][1] ?? UNIT_NAMES[dimension][0];
  const symbol = example?.symbol ?? '';
  return z.pipe(
    z.unknown(),
    z.transform((given: unknown, context): Q => {
      const refuse = (message: string, complaint: Complaint): never => {
        context.issues.push({ code: 'custom', message, input: given, params: { ...complaint } });
        return z.NEVER;
      };
      if (given === undefined) return refuse('is missing', { code: 'invalid-input' });
      if (typeof given === 'number') {
        const hint = `write { "value": ${given}, "unit": "${symbol}" } or put the unit in the key`;
        return refuse(`needs a unit (${unitSymbols(dimension)}); ${hint}`, { code: 'invalid-input', hint });
      }
      const pair = pairOf(given);
      if (pair === undefined) {
        return refuse(`must be a number with a unit, like { "value": 1, "unit": "${symbol}" }`, {
          code: 'invalid-input',
        });
      }
      const unit = findUnit(dimension, pair.unit);
      if (unit === undefined) {
        const known = unitSymbols(dimension);
        return refuse(`has the unit ${JSON.stringify(pair.unit)}; use one of ${known}`, {
          code: 'invalid-input',
          hint: `use one of ${known}`,
        });
      }
      const value = unit.toSi(pair.value);
      if (value < range[0] || value > range[1]) {
        const shown = [round(fromSi(unit, range[0])), round(fromSi(unit, range[1]))] as const;
        return refuse(`must be between ${shown[0]} and ${shown[1]} ${unit.symbol}, got ${pair.value}`, {
          code: 'outside-range',
          unit: unit.symbol,
          range: shown,
        });
      }
      return value as Q;
    }),
  ) as unknown as z.ZodMiniType<Q>;
}

function pairOf(given: unknown): { readonly value: number; readonly unit: string } | undefined {
  if (typeof given !== 'object' || given === null || Object.keys(given).length !== 2) return undefined;
  const { value, unit } = given as { readonly value?: unknown; readonly unit?: unknown };
  if (typeof value !== 'number' || !Number.isFinite(value) || typeof unit !== 'string') return undefined;
  return { value, unit };
}

function round(value: number): number {
  return Number(value.toPrecision(4));
}
