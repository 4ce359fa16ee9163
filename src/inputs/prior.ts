import { type Declared, type QuantityField, quantity, type RecordField, record } from './field.js';

/** A normal prior in SI units. */
export interface NormalPrior {
  /** Mean, within the range of the quantity. */
  readonly mean: number;
  /** Standard deviation, above 0. */
  readonly standardDeviation: number;
}

/** Smallest standard deviation of a prior, in the SI unit of its quantity. */
const NARROWEST = 1e-6;

/**
 * Declares a prior of a quantity: its mean lies in the quantity's range.
 * @param widest - largest standard deviation [SI]
 * @internal
 */
export function priorField({ said, min, max, example, label }: QuantityField, widest: number): RecordField {
  const fields: Declared<NormalPrior> = {
    mean: quantity(said, min, max, example, label),
    standardDeviation: quantity(said, NARROWEST, widest, (max - min) / 20, `standard deviation of ${label}`),
  };
  return record(fields, `prior of ${label}`);
}
