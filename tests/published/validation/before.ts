import figures from '../data/validation-before.json' with { type: 'json' };
import type { ComparedRow, FiguresBefore } from './row.js';

/** Figures computed before the change that the page reports, as `npm run validate -- --before` stored them. */
export const figuresBefore: FiguresBefore = figures;

/** Figures of today to store as those of before, to nine digits. */
export function figuresOf(rows: readonly ComparedRow[]): FiguresBefore {
  const found: Record<string, Record<string, number>> = {};
  for (const { group, id, computed } of rows) {
    found[group] = { ...found[group], [id]: Number(computed.toPrecision(9)) };
  }
  return found;
}
