import type { QuantityField } from '../inputs/field.js';
import { rangeText } from '../inputs/refuse.js';
import { inUnit, type Unit } from '../units/unit.js';
import type { JsonField, JsonFields, JsonSchema } from './json-field.js';
import { isPlain } from './quantity.js';
import { symbolOf, UNIT_KINDS } from './unit-names.js';

/** The JSON Schema of what {@link schemaOf} reads, by the same walk over the declaration. */
export function describeField(field: JsonField): JsonSchema {
  const description = field.label;
  switch (field.kind) {
    case 'quantity':
      return quantitySchema(field);
    case 'count':
      return { description, type: 'integer', minimum: field.min, maximum: field.max };
    case 'choice':
      return { description, enum: [...field.names] };
    case 'text':
      return { description, type: 'string', examples: [field.example] };
    case 'flag':
      return { description, type: 'boolean' };
    case 'record':
      return { description, ...recordSchema(field.fields) };
    case 'list': {
      const { least, most } = field;
      return { description, type: 'array', items: describeField(field.of), minItems: least, maxItems: most };
    }
    case 'variant': {
      const cases = Object.entries(field.cases).map(([name, fields]) =>
        recordSchema({
          [field.by]: { kind: 'choice', names: [name], example: name, label: name },
          ...fields,
        }),
      );
      return { description, anyOf: cases };
    }
    case 'named':
      return { description, anyOf: [{ enum: Object.keys(field.presets) }, describeField(field.of)] };
    case 'ways': {
      const ways = [...field.ways, field.otherwise];
      return { description, anyOf: ways.map(({ record }) => describeField(record)) };
    }
    case 'custom':
      return { description, ...('json' in field && field.json) };
  }
}

/** An object whose quantities have their unit in the key, `clubSpeed (mph)`, or beside the value. */
function recordSchema(fields: JsonFields): JsonSchema {
  const named = Object.entries(fields);
  const keys = named.flatMap(([name, field]) => (field.kind === 'quantity' ? keysWithUnit(name, field) : []));
  const due = named.filter(([, field]) => field.optional !== true);
  const required = due.flatMap(([name, field]) => (field.kind === 'quantity' ? [] : [name]));
  const either = due.flatMap(([name, field]) => (field.kind === 'quantity' ? [someKey(name)] : []));
  return {
    type: 'object',
    properties: Object.fromEntries(named.map(([name, field]) => [name, describeField(field)])),
    ...(keys.length > 0 && { patternProperties: Object.fromEntries(keys) }),
    additionalProperties: false,
    ...(required.length > 0 && { required }),
    ...(either.length > 0 && { allOf: either }),
  };
}

/** Asks for the field under one of its keys: not every key is another's. */
function someKey(name: string): JsonSchema {
  return { not: { propertyNames: { not: { pattern: `^${name}(\\s*\\(.+\\))?$` } } } };
}

function quantitySchema(field: QuantityField): JsonSchema {
  const description = `${field.label}, ${rangeText(field)}`;
  const withUnit = UNIT_KINDS[field.si].units.map(({ unit, spellings }) => ({
    type: 'object',
    properties: { value: rangeIn(unit, field), unit: { enum: writings(unit, spellings) } },
    required: ['value', 'unit'],
    additionalProperties: false,
  }));
  const { said } = field;
  const example = Number(inUnit(said, field.example).toPrecision(4));
  if (isPlain(field)) return { description, examples: [example], anyOf: [rangeIn(said, field), ...withUnit] };
  return { description, examples: [{ value: example, unit: said.symbol }], anyOf: withUnit };
}

function keysWithUnit(name: string, field: QuantityField): readonly (readonly [string, JsonSchema])[] {
  return UNIT_KINDS[field.si].units.map(({ unit, spellings }) => {
    const pattern = writings(unit, spellings).map(escaped).join('|');
    const description = `${field.label} in ${symbolOf(unit)}`;
    return [`^${name}\\s*\\((${pattern})\\)$`, { description, ...rangeIn(unit, field) }];
  });
}

/** The symbol as people write it, and the spellings. */
function writings(unit: Unit, spellings: readonly string[]): readonly string[] {
  return [...new Set([symbolOf(unit), ...spellings])];
}

/** The range in a unit; rounded where the way from SI leaves −49.99999999999997 °C of −50. */
function rangeIn(unit: Unit, { min, max }: QuantityField): JsonSchema {
  const rounded = (value: number): number => Number(inUnit(unit, value).toPrecision(13));
  return { type: 'number', minimum: rounded(min), maximum: rounded(max) };
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
}
