import { type QuantityField, type RecordField, record } from './field.js';
import { refusal } from './refuse.js';

/** A range of a quantity, both ends included. */
export interface Between<Q extends number> {
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
