import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';
import type { CoefficientLaw, ModelWords } from './model.js';
import type { TableModel } from './model-data.js';
import { at } from './monotone.js';
import { SPIN_DECAY } from './spin-decay.js';
import { monotoneSurface } from './surface.js';

/** A table already read, when its numbers fit together. @throws FairflightError naming the entry @internal */
export function soundTable(table: TableModel, field: string): TableModel {
  const { reynolds, spinRatio, drag, lift } = table;
  requireIncreasing(`${field}.reynolds`, reynolds);
  requireIncreasing(`${field}.spinRatio`, spinRatio);
  requireShape(`${field}.drag`, drag, reynolds, spinRatio);
  requireShape(`${field}.lift`, lift, reynolds, spinRatio);
  lift.forEach((row, i) => {
    if (at(spinRatio, 0) === 0 && at(row, 0) !== 0) {
      const path = `${field}.lift[${i}][0]`;
      throw refusal(path, `${path} must be 0 at spin ratio 0: without spin lift has no direction`, {
        value: row[0],
      });
    }
  });
  return table;
}

/** The law that a checked table holds. @internal */
export function tableLaw(table: TableModel): CoefficientLaw {
  const { id, reynolds, spinRatio, spinEntering = 'across', spinDecay = SPIN_DECAY } = table;
  const firstS = at(spinRatio, 0);
  const drag = monotoneSurface(reynolds, spinRatio, table.drag);
  const lift = monotoneSurface(reynolds, spinRatio, table.lift);
  return frozen(() => ({
    id,
    validity: {
      reynolds: { min: at(reynolds, 0), max: at(reynolds, reynolds.length - 1) },
      spinRatio: { min: firstS, max: at(spinRatio, spinRatio.length - 1) },
    },
    spinEntering,
    dragCoefficient: drag,
    liftCoefficient: (re, s) => (s < firstS ? (s / firstS) * lift(re, firstS) : lift(re, s)),
    spinDecay,
  }));
}

/** The words on it. @internal */
export function tableWords({ id, label = id, source }: TableModel): ModelWords {
  return {
    label,
    source,
    extrapolation:
      'Outside the grid the values at its edge are held; below its smallest spin ratio lift runs straight to 0 at S 0.',
  };
}

function requireIncreasing(field: string, values: readonly number[]): void {
  values.forEach((value, i) => {
    if (i === 0 || value > at(values, i - 1)) return;
    const path = `${field}[${i}]`;
    throw refusal(path, `${path} must be greater than the one before it, ${values[i - 1]}`, { value });
  });
}

function requireShape(
  field: string,
  rows: readonly (readonly number[])[],
  reynolds: readonly number[],
  spinRatio: readonly number[],
): void {
  if (rows.length !== reynolds.length) {
    throw refusal(field, `${field} must have one row for each of the ${reynolds.length} Reynolds numbers`, {
      value: rows.length,
    });
  }
  rows.forEach(({ length }, i) => {
    if (length === spinRatio.length) return;
    const path = `${field}[${i}]`;
    throw refusal(path, `${path} must have one number for each of the ${spinRatio.length} spin ratios`, {
      value: length,
    });
  });
}
