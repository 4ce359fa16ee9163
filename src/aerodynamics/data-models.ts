import { readRecord } from '../inputs/read.js';
import type {
  CoefficientGrid,
  ModelChoice,
  ReverseMagnusModel,
  ScaledModel,
  TableModel,
} from './model-data.js';
import { gridFields } from './model-fields.js';
import { checkedData } from './resolve.js';
import { type CoefficientScale, scaleFields } from './scaled.js';

/**
 * A model from a user's own wind-tunnel or range grid, Re × S, as plain data.
 *
 * Between the nodes: monotone piecewise cubics (Fritsch and Carlson 1980, Fritsch and Butland 1984) in S along each
 * row, then in Re across the rows, so a value never leaves the span of the four nodes around it. Outside: values at
 * the edge are held, except that below the smallest S lift runs straight to 0 at S 0. Results outside the grid carry a
 * warning.
 * @throws `FairflightError` `invalid-input` for a grid of the wrong shape, `outside-range` for a bad entry
 */
export function tabulatedModel(grid: CoefficientGrid): TableModel {
  return checkedData({ ...readRecord(gridFields, grid, 'grid'), kind: 'table' }, 'grid');
}

/**
 * A model with its drag and lift multiplied by constant factors, as plain data: a ball that flies a little differently.
 * @param of - Id, data or functions; data made of functions of your own cannot leave the process.
 * @param scale - Factors, 0.2 to 5; default 1.
 * @throws `FairflightError` for a factor outside the range, or for what is no model
 * @example scaledModel('fitted-modern', { drag: 0.97 })
 */
export function scaledModel(of: ModelChoice, scale: CoefficientScale): ScaledModel {
  return checkedData(
    { ...readRecord<CoefficientScale>(scaleFields, scale, 'scale'), kind: 'scaled', of },
    'model',
  );
}

/**
 * The same model, as plain data, with its lift taken away in and below the drag crisis at low spin, where balls were measured to lift
 * the wrong way: CL is multiplied by a smooth step that rises from 0 at Re 50,000 to 1 at Re 75,000, for S under 0.20;
 * between S 0.20 and 0.25 the effect fades, above it the model is unchanged.
 *
 * Lyu, Kensrud and Smith (2020), Sports Engineering 23, doi 10.1007/s12283-020-0318-1, found CL down to −0.10 to −0.15
 * between Re 50,000 and 70,000 at 750–2,250 rpm, and positive lift outside. Zero is a cautious middle, not a
 * measurement; the sources also find positive lift below Re 50,000. Off unless you ask for it: full shots stay above. The
 * default has a loss of its own, wider in Re; this one is for models without.
 */
export function withReverseMagnus(of: ModelChoice): ReverseMagnusModel {
  return checkedData({ kind: 'reverse-magnus', of }, 'model');
}
