import { type CustomField, type QuantityField, type RecordField, record } from './field.js';
import { readField } from './read.js';
import { refusal } from './refuse.js';

/** A range of a quantity, both ends included. */
export interface QuantityRange<Q extends number> {
  /** Lower end. */
  readonly min: Q;
  /** Upper end. */
  readonly max: Q;
}

/** Declares a range of a quantity. @internal */
export function between(field: QuantityField, label: string): RecordField {
  return record<{ readonly min: number; readonly max: number }>(
    { min: { ...field, label: `lowest ${label}` }, max: { ...field, label: `highest ${label}` } },
    label,
    ({ min, max }, path) => {
      if (min > max) {
        throw refusal(`${path}.min`, `${path}.min must not exceed ${path}.max, got ${min} and ${max}`, {
          value: min,
        });
      }
    },
  );
}

/** Declares a quantity, or a range of it to choose from. @internal */
export function orBetween(field: QuantityField, label: string): CustomField {
  const range = between(field, label);
  return {
    kind: 'custom',
    read: (value, path) => readField(typeof value === 'object' ? range : field, value, path),
    label,
  };
}
