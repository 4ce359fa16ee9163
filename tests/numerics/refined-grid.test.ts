import { describe, expect, it } from 'vitest';
import { refinedGrid } from '../../src/numerics/refined-grid.js';

describe('refinedGrid', () => {
  const count = 7;
  const grid = (value: (x: number, y: number) => number, halvings: number): Float64Array => {
    const nodes = (count - 1) * 2 ** halvings + 1;
    return Float64Array.from({ length: nodes * nodes }, (_, k) =>
      value((k % nodes) / 2 ** halvings, Math.floor(k / nodes) / 2 ** halvings),
    );
  };

  it('keeps its nodes, rows and columns', () => {
    const value = (x: number, y: number) => Math.sin(3 * x + y * y);
    const refined = refinedGrid(grid(value, 0), count, 2);
    expect(refined).toHaveLength(25 ** 2);
    for (let k = 0; k < count * count; k++) {
      const [row, column] = [Math.floor(k / count), k % count];
      expect(refined[4 * row * 25 + 4 * column]).toBe(value(column, row));
    }
  });

  it('is exact for cubics away from the edge', () => {
    const cubic = (x: number, y: number) => (x ** 3 - 4 * x * x + x) * (2 * y ** 3 - y + 5);
    const [refined, exact] = [refinedGrid(grid(cubic, 0), count, 1), grid(cubic, 1)];
    const inside = [...exact]
      .map((_, k) => k)
      .filter((k) => [k % 13, Math.floor(k / 13)].every((i) => i > 1 && i < 11));
    for (const k of inside) expect(Math.abs((refined[k] ?? 0) - (exact[k] ?? 0))).toBeLessThan(1e-9);
  });
});
