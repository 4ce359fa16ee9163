import { describe, expect, it } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { clubheads } from '../../src/clubhead/index.js';
import { stream } from '../../src/numerics/index.js';
import {
  type FactorName,
  type ListRow,
  type RowStatus,
  rowStatuses,
  sweep,
  sweepFactors,
} from '../../src/sweep/index.js';

/** Factors that do not speak of the same thing, so that all can vary at once. */
const CLASHING: readonly RegExp[] = [
  /^air\.(density|viscosity|pressure)$/,
  /^wind\.(along|across|profile\.exponent)$/,
  /^clubhead\.tangentialRestitution\.(value|atReference|referenceSpeed|slope|reach)$/,
  /^turf\.bounce\.(tiltScale|tiltCap|restitutionScale)$/,
];
const names = (Object.keys(sweepFactors) as FactorName[]).filter(
  (name) => !CLASHING.some((pattern) => pattern.test(name)),
);
const kernel = await loadBatchKernel();

/** Rows anywhere in the ranges of their factors, ends included. */
function anywhere(factors: readonly FactorName[], rows: number, seed: number): ListRow[] {
  return Array.from({ length: rows }, (_, i) => {
    const { uniform, integer } = stream(seed, i);
    return Object.fromEntries(
      factors.map((name) => {
        const { min, max } = sweepFactors[name];
        const end = integer(20);
        return [name, end === 0 ? min : end === 1 ? max : min + uniform() * (max - min)];
      }),
    ) as ListRow;
  });
}

describe('rows from anywhere in the allowed ranges', () => {
  it.each<[string, RegExp]>([
    [
      'deliveries',
      /^(delivery|clubhead|aerodynamics|ball|air|wind|ground|turf)\.|^readingError\.(club|face|attack|dynamic)/,
    ],
    ['launches', /^(launch|aerodynamics|ball|air|wind|ground|turf)\.|^readingError\.(ball|launch|spin)/],
  ])('%s: every output is a finite number, or the status says why not', (_, group) => {
    const rows = anywhere(
      names.filter((name) => group.test(name)),
      400,
      11,
    );
    const head = group.test('clubhead.mass') ? { clubhead: clubheads.midIron } : {};
    const result = sweep({ kind: 'list', rows }, {}, { ...head, kernel });
    const seen = new Set<RowStatus>();
    for (let i = 0; i < rows.length; i++) {
      const status = rowStatuses[result.status[i] as number] as RowStatus;
      seen.add(status);
      const computed = ['landed', 'time-limit', 'below-ground', 'topped', 'still-rolling'].includes(status);
      result.about.columns.forEach(({ name, role }, j) => {
        const value = result.values[j]?.[i] as number;
        if (role === 'input' || computed)
          expect([i, status, name, Number.isFinite(value)]).toEqual([i, status, name, true]);
        else expect([name, Math.abs(value) !== Number.POSITIVE_INFINITY]).toEqual([name, true]);
        if (!computed && name === 'carry') expect(value).toBeNaN();
      });
    }
    expect(seen).toContain('landed');
  });
});
