import type { Quantity } from '../units/quantities.js';
import type { SiUnit, Unit } from '../units/unit.js';

interface Described {
  /** What it is, in the words of the trade, for example `club speed`. */
  readonly label: string;
}

/** A number with a unit. */
export interface QuantityField<Si extends SiUnit = SiUnit> extends Described {
  readonly kind: 'quantity';
  /** SI unit of the numbers below; '' for a ratio. */
  readonly si: Si;
  /** The unit a person is likely to use, for messages, tables and columns. */
  readonly said: Unit;
  /** Smallest value [SI], included. */
  readonly min: number;
  /** Largest value [SI], included. */
  readonly max: number;
  /** An ordinary value [SI]. */
  readonly example: number;
}

/** A whole number. */
export interface CountField extends Described {
  readonly kind: 'count';
  readonly min: number;
  readonly max: number;
  readonly example: number;
}

/** One name of a list. */
export interface ChoiceField extends Described {
  readonly kind: 'choice';
  readonly names: readonly string[];
  readonly example: string;
}

/** Free text. */
export interface TextField extends Described {
  readonly kind: 'text';
  readonly example: string;
}

/** Yes or no. */
export interface FlagField extends Described {
  readonly kind: 'flag';
}

/** A record in a record. */
export interface RecordField extends Described {
  readonly kind: 'record';
  readonly fields: Fields;
  /** Refuses fields that contradict each other. */
  readonly relate?: Relate;
}

/** Refuses a record, already read, whose fields contradict each other. @throws FairflightError */
export type Relate<T = never> = (record: T, path: string) => void;

/** A record whose fields hang on a name in it. */
export interface VariantField extends Described {
  readonly kind: 'variant';
  /** The field that holds the name. */
  readonly by: string;
  /** The other fields, by that name. */
  readonly cases: Readonly<Record<string, Fields>>;
}

/** A list of one kind of thing. */
export interface ListField extends Described {
  readonly kind: 'list';
  readonly of: Field;
  readonly least: number;
  readonly most: number;
}

/** A preset by its name, or a record of one's own; reading gives what stands for the name, or the record. */
export interface NamedField extends Described {
  readonly kind: 'named';
  readonly presets: Readonly<Record<string, unknown>>;
  readonly of: RecordField | VariantField;
  readonly example: string;
}

/** What none of the others describes: reads the value, returns a copy, or throws. */
export interface CustomField extends Described {
  readonly kind: 'custom';
  readonly read: (value: unknown, path: string) => unknown;
}

/** One input: what it may be, and how to speak of it. */
export type Field = (
  | QuantityField
  | CountField
  | ChoiceField
  | TextField
  | FlagField
  | RecordField
  | VariantField
  | ListField
  | NamedField
  | CustomField
) & { readonly optional?: true };

/** The fields of a record, by name. */
export type Fields = Readonly<Record<string, Field>>;

/** The kind of field that suits a type: a quantity of the same unit, a number, text, a list or a record. */
type FieldFor<T> =
  T extends Quantity<infer Si extends SiUnit>
    ? QuantityField<Si>
    : T extends number
      ? QuantityField<''> | CountField | QuantityField
      : Field;

/**
 * The declaration of a record type: every key once, no other, and `optional` just where the type says so. The compiler
 * holds the two together.
 */
export type Declared<T> = {
  readonly [K in keyof T]-?: FieldFor<Exclude<T[K], undefined>> &
    (Record<never, never> extends Pick<T, K> ? { readonly optional: true } : { readonly optional?: never });
};

/** Declares a quantity in the unit people say; range and example in SI. @internal */
export function quantity<Si extends SiUnit>(
  said: Unit<Si>,
  min: number,
  max: number,
  example: number,
  label: string,
): QuantityField<Si> {
  return { kind: 'quantity', si: said.si, said, min, max, example, label };
}

/** Declares a whole number. @internal */
export function count(min: number, max: number, example: number, label: string): CountField {
  return { kind: 'count', min, max, example, label };
}

/** Declares one name of a list. @internal */
export function choice<Name extends string>(names: readonly Name[], label: string): ChoiceField {
  return { kind: 'choice', names, example: names[0] ?? '', label };
}

/** Declares free text. @internal */
export function text(example: string, label: string): TextField {
  return { kind: 'text', example, label };
}

/** Declares a yes or no. @internal */
export function flag(label: string): FlagField {
  return { kind: 'flag', label };
}

/** Declares a record in a record. @internal */
export function record<T extends object>(
  fields: Declared<T>,
  label: string,
  relate?: Relate<T>,
): RecordField {
  return { kind: 'record', fields: fields as Fields, label, ...(relate && { relate: relate as Relate }) };
}

/** Declares a preset by its name, or a record of one's own. @internal */
export function named<T extends object>(
  presets: Readonly<Record<string, T | string>>,
  fields: Declared<T>,
  label: string,
): NamedField {
  return { kind: 'named', presets, of: record(fields, label), example: Object.keys(presets)[0] ?? '', label };
}

/** Declares what none of the others describes, and may be left out. @internal */
export function custom(read: CustomField['read'], label: string): CustomField & { readonly optional: true } {
  return { kind: 'custom', read, label, optional: true };
}

/** A field that may be left out. @internal */
export function optional<F extends Field>(field: F): F & { readonly optional: true } {
  return { ...field, optional: true };
}

/** The same fields, each of which may be left out. @internal */
export function partial<T extends object>(fields: Declared<T>): Declared<Partial<T>> {
  const all = Object.entries(fields as Fields).map(([name, field]) => [name, optional(field)]);
  return Object.fromEntries(all) as Declared<Partial<T>>;
}
