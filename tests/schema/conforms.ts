import type { JsonSchema } from '../../src/schema/index.js';

type Check = (given: unknown, wanted: never, schema: JsonSchema) => boolean;

const isObject = (given: unknown): given is Record<string, unknown> =>
  typeof given === 'object' && given !== null && !Array.isArray(given);

const matching = (patterns: Readonly<Record<string, JsonSchema>>, key: string): readonly JsonSchema[] =>
  Object.entries(patterns).flatMap(([pattern, schema]) =>
    new RegExp(pattern, 'u').test(key) ? [schema] : [],
  );

const TYPES: Readonly<Record<string, (given: unknown) => boolean>> = {
  object: isObject,
  array: Array.isArray,
  string: (given) => typeof given === 'string',
  number: (given) => typeof given === 'number',
  integer: Number.isInteger,
  boolean: (given) => typeof given === 'boolean',
};

/** The keywords that our schemas use, as JSON Schema Core and Validation, draft 2020-12, define them. */
const CHECKS: Readonly<Record<string, Check>> = {
  type: (given, wanted: string) => TYPES[wanted]?.(given) ?? false,
  enum: (given, wanted: readonly unknown[]) => wanted.includes(given),
  minimum: (given, wanted: number) => typeof given !== 'number' || given >= wanted,
  maximum: (given, wanted: number) => typeof given !== 'number' || given <= wanted,
  minItems: (given, wanted: number) => !Array.isArray(given) || given.length >= wanted,
  maxItems: (given, wanted: number) => !Array.isArray(given) || given.length <= wanted,
  items: (given, wanted: JsonSchema) =>
    !Array.isArray(given) || given.every((item) => conforms(item, wanted)),
  anyOf: (given, wanted: readonly JsonSchema[]) => wanted.some((schema) => conforms(given, schema)),
  allOf: (given, wanted: readonly JsonSchema[]) => wanted.every((schema) => conforms(given, schema)),
  not: (given, wanted: JsonSchema) => !conforms(given, wanted),
  pattern: (given, wanted: string) => typeof given !== 'string' || new RegExp(wanted, 'u').test(given),
  required: (given, wanted: readonly string[]) =>
    !isObject(given) || wanted.every((name) => Object.hasOwn(given, name)),
  propertyNames: (given, wanted: JsonSchema) =>
    !isObject(given) || Object.keys(given).every((key) => conforms(key, wanted)),
  properties: (given, wanted: Readonly<Record<string, JsonSchema>>) =>
    !isObject(given) ||
    Object.entries(wanted).every(
      ([name, schema]) => !Object.hasOwn(given, name) || conforms(given[name], schema),
    ),
  patternProperties: (given, wanted: Readonly<Record<string, JsonSchema>>) =>
    !isObject(given) ||
    Object.keys(given).every((key) => matching(wanted, key).every((schema) => conforms(given[key], schema))),
  additionalProperties: (given, wanted: boolean, { properties = {}, patternProperties = {} }) =>
    wanted ||
    !isObject(given) ||
    Object.keys(given).every(
      (key) =>
        Object.hasOwn(properties as object, key) || matching(patternProperties as never, key).length > 0,
    ),
};

const ANNOTATIONS: readonly string[] = ['$schema', 'title', 'description', 'examples'];

/** Whether a document conforms to a schema. Throws for a keyword it does not know. */
export function conforms(given: unknown, schema: JsonSchema): boolean {
  return Object.entries(schema).every(([keyword, wanted]) => {
    if (ANNOTATIONS.includes(keyword)) return true;
    const check = CHECKS[keyword];
    if (check === undefined) throw new Error(`unknown keyword ${keyword}`);
    return check(given, wanted as never, schema);
  });
}
