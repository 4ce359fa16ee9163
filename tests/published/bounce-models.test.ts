import { expect, test } from 'vitest';
import { turfs } from '../../src/index.js';
import { biberLaw } from '../../src/turf/biber-2023.js';
import type { BiberBounce, PennerBounce } from '../../src/turf/index.js';
import { pennerLaw } from '../../src/turf/penner-2002.js';
import { byBounceModel, groups, leftOver } from './validation/index.js';

const all = byBounceModel(groups);
const [biber, penner] = [leftOver(all, 'biber-2023'), leftOver(all, 'penner-2002')];

test('every row is judged by both models', () => {
  const ids = (model: string) =>
    all.filter((row) => row.model === model).map(({ group, id }) => `${group} ${id}`);
  expect(ids('biber-2023')).toEqual(ids('penner-2002'));
  expect(biber.all.rows).toBeGreaterThanOrEqual(38);
  expect(biber.runs).toBeGreaterThanOrEqual(12);
});

test('the default is the model that leaves less over, above all of totals and runs', () => {
  expect(turfs.normal.bounce.model).toBe('biber-2023');
  expect(biber.all.rms).toBeLessThan(penner.all.rms);
  expect(biber.rmsOfRun).toBeLessThan(penner.rmsOfRun);
});

test('the band of a run is twice the rms of error over run that its model leaves', () => {
  // To the next 10 %: a dozen rows know it no better.
  const bands = [
    [biberLaw(turfs.normal.bounce as BiberBounce), biber],
    [pennerLaw(turfs.pennerNormal.bounce as PennerBounce), penner],
  ] as const;
  for (const [{ band, id }, { rmsOfRun }] of bands) {
    expect(Math.abs(2 * rmsOfRun - band), id).toBeLessThan(0.05);
  }
});
