import type * as z from 'zod/mini';
import { FairflightError } from '../errors.js';
import type { Complaint } from './quantity.js';

const KEY_WITH_UNIT = /^(\w+)\s*\(([^()]+)\)$/;

/**
 * Turns every key with a unit, `"ballSpeed (mph)": 150`, into the long form, `"ballSpeed": { "value": 150, "unit": "mph" }`.
 * @throws FairflightError `invalid-input` when one field is given twice.
 */
function spreadUnits(name: string, given: unknown): unknown {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return given;
  const out: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(given)) {
    const match = KEY_WITH_UNIT.exec(key);
    const field = match?.[1] ?? key;
    if (Object.hasOwn(out, field)) {
      throw new FairflightError('invalid-input', `${name}.${field} is given twice; keep one of the two`, {
        field: `${name}.${field}`,
        value,
      });
    }
    out[field] = match === null ? spreadUnits(`${name}.${field}`, value) : { value, unit: match[2] };
  }
  return out;
}

/** Runs a schema over JSON whose keys may carry units, and reports what is wrong as one FairflightError. */
export function parseWith<T>(name: string, schema: z.ZodMiniType<T>, given: unknown): T {
  const spread = spreadUnits(name, given);
  const result = schema.safeParse(spread);
  if (result.success) return result.data;
  const issues = result.error.issues;
  const texts = issues.map((issue) => textOf(name, issue, spread));
  const first = issues[0];
  const complaint = (first?.code === 'custom' ? first.params : undefined) as Complaint | undefined;
  const { code, ...particulars } = complaint ?? { code: 'invalid-input' as const };
  throw new FairflightError(code, texts.join('; also ') || `${name} cannot be read`, {
    field: [name, ...(first?.path ?? [])].join('.'),
    value: valueAt(spread, first?.path ?? []),
    ...particulars,
  });
}

type Issue = z.core.$ZodIssue;

function textOf(name: string, issue: Issue, given: unknown): string {
  const where = [name, ...issue.path].join('.');
  switch (issue.code) {
    case 'custom':
      return `${where} ${issue.message}`;
    case 'unrecognized_keys':
      return `${where} has no field ${issue.keys.map((key) => JSON.stringify(key)).join(', ')}`;
    case 'invalid_type': {
      const value = valueAt(given, issue.path);
      return value === undefined
        ? `${where} is missing; it must be ${article(issue.expected)}`
        : `${where} must be ${article(issue.expected)}, got ${describe(value)}`;
    }
    case 'invalid_value':
      return `${where} must be one of ${issue.values.map(String).join(', ')}, got ${describe(valueAt(given, issue.path))}`;
    case 'too_small':
      return `${where} must be at least ${issue.minimum}, got ${describe(valueAt(given, issue.path))}`;
    case 'too_big':
      return `${where} must be at most ${issue.maximum}, got ${describe(valueAt(given, issue.path))}`;
    case 'invalid_union':
      return `${where} is none of the kinds known here`;
    default:
      return `${where} cannot be read: ${issue.message}`;
  }
}

function valueAt(given: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, key) => {
    if (typeof value !== 'object' || value === null) return undefined;
    return (value as Record<PropertyKey, unknown>)[key];
  }, given);
}

function article(kind: string): string {
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}

function describe(value: unknown): string {
  return (JSON.stringify(value) ?? String(value)).slice(0, 60);
}
