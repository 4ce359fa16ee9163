import { describe, expect, it } from 'vitest';
import { type BallLie, expectedStrokes } from '../../src/dispersion/index.js';
import { feet, yards } from '../../src/index.js';
import table from './data/strokes-baseline.json' with { type: 'json' };

/** Source and confidence: the about block of the data. */
describe('strokes to hole out, cell for cell', () => {
  it.each(Object.entries(table.rows))('%s', (lie, cells) => {
    expect(cells.length).toBeGreaterThan(15);
    for (const [distance = Number.NaN, strokes = Number.NaN] of cells) {
      const at = lie === 'green' ? feet(distance) : yards(distance);
      const found = expectedStrokes(lie as BallLie, at, { table: 'raw' }).strokes;
      expect(found, `${distance}`).toBeCloseTo(strokes, 9);
    }
  });
});
