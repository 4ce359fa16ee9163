import type { CustomField, Field, RecordField, Relate } from '../inputs/field.js';

/** A JSON Schema, draft 2020-12, as plain data. */
export interface JsonSchema {
  /** What a keyword says. */
  readonly [keyword: string]: unknown;
}

/** A record that JSON may write in several ways, told apart by the fields that are there. */
export interface WaysField {
  readonly kind: 'ways';
  readonly label: string;
  readonly optional?: true;
  /** The first that fits is taken. */
  readonly ways: readonly TellingWay[];
  /** Taken where none of them fits. */
  readonly otherwise: Way;
}

/** One way to write a record. */
export interface Way {
  readonly record: RecordField;
  /** Makes what the scene holds of what was read. */
  readonly make?: (given: never, path: string) => object;
}

/** A way that is told by any of some fields. */
export interface TellingWay extends Way {
  readonly toldBy: readonly string[];
}

/** A record of which some fields are written in several ways. */
export interface JsonRecordField {
  readonly kind: 'record';
  readonly label: string;
  readonly optional?: true;
  readonly fields: Readonly<Record<string, JsonField>>;
  readonly relate?: Relate;
}

/** A custom field that says what its JSON looks like. */
export type JsonCustomField = CustomField & { readonly optional?: true; readonly json: JsonSchema };

/** One input as JSON: a declared field, or what only JSON knows. */
export type JsonField = Field | WaysField | JsonRecordField | JsonCustomField;

/** The fields of a record as JSON, by name. */
export type JsonFields = Readonly<Record<string, JsonField>>;
