import * as z from 'zod/mini';
import { type FairflightError, isFairflightError, isRecord } from '../errors.js';
import type { ChoiceField, Field, Fields, ListField, VariantField } from '../inputs/field.js';
import { readChoice, readField, readList } from '../inputs/read.js';
import { refuseType } from '../inputs/refuse.js';
import type { JsonField, JsonFields, JsonRecordField, Way, WaysField } from './json-field.js';
import { hasAny, spreadUnits } from './keys.js';
import { readWithUnit } from './quantity.js';

/** What an issue of these schemas carries: the refusal, once it is known under which path the value stands. */
export interface Fault {
  readonly refuse: (path: string) => FairflightError;
}

type Read = (given: never, path: string) => unknown;

/**
 * The zod schema of a declared input: JSON with units in, SI out. Reading and refusing are the declaration's own, so
 * that JSON and code get the same verdict; zod gathers every fault of a document with its path.
 */
export function schemaOf(field: JsonField): z.ZodMiniType {
  switch (field.kind) {
    case 'quantity':
      return reading((given, path) => readWithUnit(field, given, path));
    case 'record':
      return recordSchema(field);
    case 'list':
      return z.pipe(reading(listReader(field)), z.array(schemaOf(field.of)));
    case 'variant':
      return variantSchema(field);
    case 'named': {
      const own = schemaOf(field.of);
      const names = Object.keys(field.presets);
      const wanted = `an object or one of ${names.join(', ')}`;
      const name = reading((given, path) => {
        if (typeof given !== 'string') throw refuseType(path, wanted, given);
        return readChoice(names, given, path);
      });
      return choosing((given) => (isRecord(given) ? own : name));
    }
    case 'ways':
      return waysSchema(field);
    default:
      return reading((given, path) => readField(field, given, path));
  }
}

/** A schema that reads by a function of the library; what that refuses becomes an issue. */
function reading(read: Read): z.ZodMiniType {
  return z.transform((given: unknown, context) => {
    const attempt = (path: string): { value: unknown } | { error: FairflightError } => {
      try {
        return { value: read(given as never, path) };
      } catch (error) {
        if (isFairflightError(error)) return { error };
        throw error;
      }
    };
    const first = attempt('');
    if ('value' in first) return first.value;
    // zod tells the path only at the end. A getter may by then have changed its answer.
    const refuse = (path: string): FairflightError => {
      const again = attempt(path);
      return 'error' in again ? again.error : first.error;
    };
    context.issues.push({ code: 'custom', input: given, params: { refuse } satisfies Fault });
    return z.NEVER;
  });
}

/** A schema that looks at the value to see by which schema to read it. */
function choosing(choose: (given: unknown) => z.ZodMiniType): z.ZodMiniType {
  return z.transform((given: unknown, context) => {
    const result = choose(given).safeParse(given);
    if (result.success) return result.data;
    context.issues.push(...(result.error.issues as typeof context.issues));
    return z.NEVER;
  });
}

function recordSchema({ fields, relate }: Pick<JsonRecordField, 'fields' | 'relate'>): z.ZodMiniType {
  const shape = Object.entries(fields as JsonFields).map(([name, field]) => {
    const schema = schemaOf(field);
    return [name, field.optional === true ? z.exactOptional(schema) : schema] as const;
  });
  const spread = reading((given, path) => spreadUnits(fields, given, path));
  const record: z.ZodMiniType = z.pipe(
    spread as z.ZodMiniType<Record<string, unknown>>,
    z.object(Object.fromEntries(shape)),
  );
  if (relate === undefined) return record;
  const related = reading((given, path) => {
    relate(given, path);
    return given;
  });
  return z.pipe(record, related);
}

/** Refuses what is no list, or of the wrong length; the entries are read by their own schema. */
function listReader({ least, most }: ListField): Read {
  const entry: Field = { kind: 'custom', read: (value) => value, label: '' };
  return (given, path) => readList({ of: entry, least, most }, given, path);
}

function variantSchema({ by, cases }: VariantField): z.ZodMiniType {
  const names = Object.keys(cases);
  const schemas = new Map(
    Object.entries(cases).map(([name, fields]) => {
      const only: ChoiceField = { kind: 'choice', names: [name], example: name, label: by };
      return [name, recordSchema({ fields: { [by]: only, ...fields } as Fields })];
    }),
  );
  const none = reading((given, path) => {
    if (!isRecord(given)) throw refuseType(path, 'an object', given);
    return readChoice(names, Object.hasOwn(given, by) ? given[by] : undefined, `${path}.${by}`);
  });
  return choosing((given) => {
    const name = isRecord(given) && Object.hasOwn(given, by) ? (given as { [key: string]: unknown })[by] : '';
    return schemas.get(name as string) ?? none;
  });
}

function waysSchema({ ways, otherwise }: WaysField): z.ZodMiniType {
  const schemaFor = ({ record, make }: Way): z.ZodMiniType =>
    make === undefined ? schemaOf(record) : z.pipe(schemaOf(record), reading(make));
  const told = ways.map((way) => ({ toldBy: way.toldBy, schema: schemaFor(way) }));
  const rest = schemaFor(otherwise);
  return choosing((given) => {
    if (!isRecord(given)) return rest;
    return told.find(({ toldBy }) => hasAny(given, toldBy))?.schema ?? rest;
  });
}
