import { expect, it } from 'vitest';
import { modelNumbers } from '../../src/aerodynamics/probe.js';
import { aerodynamicModels, fittedModern } from '../../src/models.js';

it('no two built-in models have the same checksum, and none changes from call to call', () => {
  const models = Object.values(aerodynamicModels);
  const checksums = models.map((model) => modelNumbers(model).checksum);
  expect(new Set(checksums).size).toBe(models.length);
  expect(models.map((model) => modelNumbers(model).checksum)).toEqual(checksums);
});

it('the checksum tells any change that covers a five-hundredth of the range, of drag, lift, decay or kind of spin', () => {
  const { checksum } = modelNumbers(fittedModern);
  const changed = [
    { ...fittedModern, spinDecay: fittedModern.spinDecay * 1.000001 },
    { ...fittedModern, spinEntering: 'total' as const },
    // A band of Re by a factor 1.1 and S by 0.25: 1.5 % by 12.5 % of the range.
    ...(['dragCoefficient', 'liftCoefficient'] as const).map((law) => ({
      ...fittedModern,
      [law]: (re: number, s: number) =>
        fittedModern[law](re, s) + (re > 9e4 && re < 1e5 && s > 0.1 && s < 0.35 ? 1e-12 : 0),
    })),
  ];
  for (const model of changed) expect(modelNumbers(model).checksum).not.toBe(checksum);
});

it('a model that throws or gives no number is told, too', () => {
  const odd = {
    ...fittedModern,
    dragCoefficient: () => {
      throw new Error('odd');
    },
    liftCoefficient: () => 'x' as never,
  };
  const { drag, lift, checksum } = modelNumbers(odd);
  expect([drag[0]?.[0], lift[3]?.[3]]).toEqual([null, null]);
  expect(checksum).not.toBe(modelNumbers(fittedModern).checksum);
});
