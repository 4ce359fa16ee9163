import { describe, expect, it } from 'vitest';
import {
  type AerodynamicModel,
  aerodynamicModels,
  defaultAerodynamics,
  fittedModern,
  resolveModel,
  scaledModel,
  testRangeLine,
} from '../../src/aerodynamics/index.js';
import { resolveLaw } from '../../src/aerodynamics/resolve.js';
import { caught } from '../caught.js';

describe('registry', () => {
  it('files every model under its own id', () => {
    for (const [id, model] of Object.entries(aerodynamicModels)) expect(model.id).toBe(id);
    expect(Object.keys(aerodynamicModels)).toEqual([
      'fitted-modern',
      'lieberman-2001',
      'naruo-2004',
      'smits-smith-1994',
      'bearman-harvey-1976',
      'penner-bearman-harvey',
      'test-range-line',
      'davies-1949',
    ]);
  });
  it('cannot be changed from outside', () => {
    expect(Object.isFrozen(aerodynamicModels)).toBe(true);
    for (const model of Object.values(aerodynamicModels)) {
      const { validity, source } = model;
      for (const record of [model, validity, validity.reynolds, validity.spinRatio, source]) {
        expect(Object.isFrozen(record)).toBe(true);
      }
    }
  });
  it('resolves an id, a model, nothing', () => {
    expect(resolveModel('test-range-line')).toBe(testRangeLine);
    const own: AerodynamicModel = { ...fittedModern, id: 'own' };
    expect(resolveModel(own)).toBe(own);
    expect(resolveModel()).toBe(defaultAerodynamics);
  });

  it('flies by one law, whether a model is given by its id, as itself or as data', () => {
    for (const [id, model] of Object.entries(aerodynamicModels)) {
      expect(resolveLaw(model)).toBe(resolveLaw(id));
      expect(model).toMatchObject(resolveLaw(id));
    }
    const data = scaledModel('naruo-2004', { drag: 0.9 });
    expect(resolveLaw(resolveModel(data))).toBe(resolveLaw(data));
    const own: AerodynamicModel = { ...fittedModern };
    expect(resolveLaw(own)).toBe(own);
  });
  it('lists the ids when it does not know one', () => {
    for (const id of ['smits', '', 'toString', '__proto__']) {
      const error = caught(() => resolveModel(id, 'scene.aerodynamics'));
      expect(error.code).toBe('invalid-input');
      expect(error.field).toBe('scene.aerodynamics');
      expect(error.value).toBe(id);
      for (const known of Object.keys(aerodynamicModels)) expect(error.message).toContain(known);
    }
  });
  it('says what is wrong with a record that is not a model', () => {
    const broken: readonly [unknown, RegExp][] = [
      [null, /got null/],
      [7, /got 7/],
      [{ ...fittedModern, id: '' }, /id/],
      [{ ...fittedModern, dragCoefficient: 0.25 }, /dragCoefficient/],
      [{ ...fittedModern, liftCoefficient: undefined }, /liftCoefficient/],
      [{ ...fittedModern, spinEntering: 'along' }, /spinEntering/],
      [{ ...fittedModern, validity: undefined }, /validity/],
      [{ ...fittedModern, validity: { ...fittedModern.validity, reynolds: { min: 2, max: 1 } } }, /validity/],
      [{ ...fittedModern, spinDecay: Number.NaN }, /spinDecay/],
      [{ ...fittedModern, spinDecay: 0.5 }, /spinDecay/],
    ];
    for (const [record, message] of broken) {
      const error = caught(() => resolveModel(record as AerodynamicModel));
      expect(error.field).toMatch(/^aerodynamics/);
      expect(error.message).toMatch(message);
    }
  });
});
