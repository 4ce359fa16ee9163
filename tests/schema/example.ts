import { type Field, type QuantityField, record } from '../../src/inputs/field.js';
import { sceneFields } from '../../src/scene/scene.js';
import { documents } from '../../src/schema/documents.js';
import type { DocumentName } from '../../src/schema/index.js';
import {
  parseBall,
  parseClubhead,
  parseDelivery,
  parseLaunch,
  parseMeasuredShot,
  parseScene,
  parseTurf,
} from '../../src/schema/index.js';

/** Every parser, and the name under which its errors speak of the document. */
export const parsers: Readonly<Record<DocumentName, { root: string; parse: (json: unknown) => object }>> = {
  delivery: { root: 'delivery', parse: parseDelivery },
  launch: { root: 'launch', parse: parseLaunch },
  scene: { root: 'scene', parse: parseScene },
  clubhead: { root: 'clubhead', parse: parseClubhead },
  ball: { root: 'ball', parse: parseBall },
  turf: { root: 'turf', parse: parseTurf },
  measuredShot: { root: 'shot', parse: parseMeasuredShot },
};

/** What the declarations alone say of a document, as every function of the library reads its arguments. */
export function declaredDocument(name: DocumentName): Field {
  // Only of scenes does JSON know more than the declaration.
  return name === 'scene' ? record(sceneFields, 'scene') : (documents[name] as Field);
}

type Write = (value: number, field: QuantityField) => unknown;

/** The example that a declaration gives, with every optional field; quantities as `write` says. */
export function exampleOf(field: Field, write: Write): unknown {
  switch (field.kind) {
    case 'quantity':
      return write(field.example, field);
    case 'count':
    case 'choice':
    case 'text':
      return field.example;
    case 'flag':
      return true;
    case 'record':
      return examplesOf(field.fields, write);
    case 'list':
      return [exampleOf(field.of, write)];
    case 'variant': {
      const [name, fields] = Object.entries(field.cases).at(-1) ?? ['', {}];
      return { [field.by]: name, ...examplesOf(fields, write) };
    }
    case 'named':
      return exampleOf(field.of, write);
    case 'custom':
      return undefined;
  }
}

function examplesOf(fields: Readonly<Record<string, Field>>, write: Write): Record<string, unknown> {
  const all = Object.entries(fields).map(([name, field]) => [name, exampleOf(field, write)] as const);
  return Object.fromEntries(all.filter(([, value]) => value !== undefined));
}

/** A field of a record, however deep, and the way to it. */
export interface Place {
  readonly path: readonly string[];
  readonly field: Field;
}

/** Every field below one, records included. */
export function placesIn(field: Field, path: readonly string[] = []): readonly Place[] {
  const below = (fields: Readonly<Record<string, Field>>): readonly Place[] =>
    Object.entries(fields).flatMap(([name, part]) => {
      const at = [...path, name];
      return [{ path: at, field: part }, ...placesIn(part, at)];
    });
  switch (field.kind) {
    case 'record':
      return below(field.fields);
    case 'named':
      return placesIn(field.of, path);
    case 'variant':
      return below(Object.values(field.cases).at(-1) ?? {});
    default:
      return [];
  }
}

/** A copy with one value changed, or taken out when it is undefined. */
export function changed(record: unknown, [name, ...rest]: readonly string[], value: unknown): unknown {
  if (name === undefined) return value;
  const { [name]: old, ...others } = record as Record<string, unknown>;
  const next = changed(old, rest, value);
  return next === undefined ? others : Object.fromEntries([...Object.entries(others), [name, next]]);
}
