import { requireOneOf, requireWithin } from '../errors.js';
import { frozen } from '../inputs/frozen.js';
import { checkName, checkSource, refuse } from './check-data.js';
import type { AerodynamicModel } from './model.js';
import type { TableModel } from './model-data.js';
import { at } from './monotone.js';
import { SPIN_DECAY } from './spin-decay.js';
import { monotoneSurface } from './surface.js';

/** Fields of a table besides its kind. @internal */
export const GRID_FIELDS = [
  'id',
  'label',
  'reynolds',
  'spinRatio',
  'drag',
  'lift',
  'source',
  'spinEntering',
  'spinDecay',
] as const;

/** A checked copy of a table. @throws FairflightError naming the entry @internal */
export function checkTable(given: TableModel, field: string): TableModel {
  const name = checkName(given, field);
  const source = checkSource(given.source, `${field}.source`);
  const reynolds = nodes(`${field}.reynolds`, given.reynolds, 1, 1, 1e7);
  const spinRatio = nodes(`${field}.spinRatio`, given.spinRatio, 2, 0, 10);
  const drag = rows(`${field}.drag`, given.drag, reynolds, spinRatio, 0.01, 10);
  const lift = rows(`${field}.lift`, given.lift, reynolds, spinRatio, -5, 5);
  const { spinEntering, spinDecay } = given;
  lift.forEach((row, i) => {
    if (at(spinRatio, 0) === 0 && at(row, 0) !== 0) {
      refuse(
        `${field}.lift[${i}][0]`,
        row[0],
        'must be 0 at spin ratio 0: without spin lift has no direction',
      );
    }
  });
  return {
    kind: 'table',
    ...name,
    reynolds,
    spinRatio,
    drag,
    lift,
    source,
    ...(spinEntering !== undefined && {
      spinEntering: requireOneOf(`${field}.spinEntering`, spinEntering, ['across', 'total']),
    }),
    ...(spinDecay !== undefined && {
      spinDecay: requireWithin(`${field}.spinDecay`, spinDecay, 0, 1e-3, ''),
    }),
  };
}

/** The model that a checked table holds. @internal */
export function tableFunctions(table: TableModel): AerodynamicModel {
  const {
    id,
    label = id,
    reynolds,
    spinRatio,
    source,
    spinEntering = 'across',
    spinDecay = SPIN_DECAY,
  } = table;
  const firstS = at(spinRatio, 0);
  const drag = monotoneSurface(reynolds, spinRatio, table.drag);
  const lift = monotoneSurface(reynolds, spinRatio, table.lift);
  return frozen(() => ({
    id,
    label,
    source,
    validity: {
      reynolds: { min: at(reynolds, 0), max: at(reynolds, reynolds.length - 1) },
      spinRatio: { min: firstS, max: at(spinRatio, spinRatio.length - 1) },
    },
    extrapolation:
      'Outside the grid the values at its edge are held; below its smallest spin ratio lift runs straight to 0 at S 0.',
    spinEntering,
    dragCoefficient: drag,
    liftCoefficient: (re, s) => (s < firstS ? (s / firstS) * lift(re, firstS) : lift(re, s)),
    spinDecay,
  }));
}

function nodes(
  field: string,
  values: unknown,
  atLeast: number,
  minimum: number,
  maximum: number,
): readonly number[] {
  if (!Array.isArray(values) || values.length < atLeast) {
    refuse(field, values, `must be an array of at least ${atLeast} number${atLeast === 1 ? '' : 's'}`);
  }
  const checked = values.map((value, i) => requireWithin(`${field}[${i}]`, value, minimum, maximum, ''));
  checked.forEach((value, i) => {
    if (i > 0 && value <= at(checked, i - 1)) {
      refuse(`${field}[${i}]`, value, `must be greater than the one before it, ${checked[i - 1]}`);
    }
  });
  return checked;
}

function rows(
  field: string,
  given: unknown,
  reynolds: readonly number[],
  spinRatio: readonly number[],
  minimum: number,
  maximum: number,
): readonly (readonly number[])[] {
  if (!Array.isArray(given) || given.length !== reynolds.length) {
    refuse(field, given, `must have one row for each of the ${reynolds.length} Reynolds numbers`);
  }
  return given.map((row: unknown, i) => {
    if (!Array.isArray(row) || row.length !== spinRatio.length) {
      refuse(`${field}[${i}]`, row, `must have one number for each of the ${spinRatio.length} spin ratios`);
    }
    return row.map((value, j) => requireWithin(`${field}[${i}][${j}]`, value, minimum, maximum, ''));
  });
}
