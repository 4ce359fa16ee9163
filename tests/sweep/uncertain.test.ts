import { describe, expect, it } from 'vitest';
import { fittedModern, scaledModel } from '../../src/aerodynamics/index.js';
import { loadBatchKernel } from '../../src/batch.js';
import type { Scene } from '../../src/scene/index.js';
import { playShot } from '../../src/shot/index.js';
import { columnOf, type ListRow, rowStatuses, type SweepOptions, sweep } from '../../src/sweep/index.js';
import { degrees, metresPerSecond, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';

const launch = {
  ballSpeed: mph(150),
  launchAngle: degrees(12),
  spinRate: rpm(2700),
  spinAxisTilt: degrees(6),
};
const delivery = { clubSpeed: mph(100), attackAngle: degrees(1), dynamicLoft: degrees(14) };
const kernel = await loadBatchKernel();
/** A wind that only the general engine flies. */
const gradient: Scene = {
  wind: {
    along: metresPerSecond(4),
    across: metresPerSecond(2),
    profile: { kind: 'power', exponent: 0.15 },
  },
};

const flown = (row: ListRow, scene: Scene, options: SweepOptions = {}): readonly (number | undefined)[] => {
  const outputs = ['carry', 'flight.side', 'flight.landing.spinRate'] as const;
  const result = sweep({ kind: 'list', rows: [row] }, scene, { from: launch, ...options, outputs });
  return outputs.map((name) => columnOf(result, name)[0]);
};

describe('the numbers of the coefficient model', () => {
  const model = { ...fittedModern, id: 'decays faster', spinDecay: 8e-5 };
  const scales = { drag: 1.06, lift: 0.91 };
  const row = {
    'aerodynamics.dragScale': scales.drag,
    'aerodynamics.liftScale': scales.lift,
    'aerodynamics.spinDecay': model.spinDecay,
  };

  it.each<[string, Scene, SweepOptions]>([
    ['the JavaScript engine', {}, {}],
    ['the kernel', {}, { kernel }],
    ['the general engine', gradient, {}],
  ])('fly as a scaled model does: %s', (_, scene, options) => {
    const { flight } = playShot(launch, { ...scene, aerodynamics: scaledModel(model, scales) });
    const [carry, side, spin] = flown(row, scene, options);
    expect(carry).toBeCloseTo(flight.carry, 3);
    expect(side).toBeCloseTo(flight.side, 3);
    expect(spin).toBeCloseTo(flight.landing.spinRate, 3);
  });

  it('leave the flight bit for bit as it was where they are those of the model', () => {
    const same = { 'aerodynamics.dragScale': 1, 'aerodynamics.spinDecay': fittedModern.spinDecay };
    expect(flown(same, {})).toEqual(flown({ 'launch.ballSpeed': launch.ballSpeed }, {}));
  });

  it('multiply a model that is scaled already', () => {
    const [twice] = flown(
      { 'aerodynamics.dragScale': 1.1 },
      { aerodynamics: scaledModel(fittedModern, { drag: 1.1 }) },
    );
    const [once] = flown({ 'aerodynamics.dragScale': 1.21 }, {});
    expect(twice).toBeCloseTo(once as number, 3);
  });

  it('may change from row to row beside air and wind', () => {
    const rows = [0.9, 1, 1.1].map((scale) => ({
      'aerodynamics.dragScale': scale,
      'wind.along': metresPerSecond(10 * scale),
    }));
    const result = sweep({ kind: 'list', rows }, {}, { from: launch, kernel });
    rows.forEach((row, i) => {
      const wind = { along: row['wind.along'], across: metresPerSecond(0) };
      const aerodynamics = scaledModel(fittedModern, { drag: row['aerodynamics.dragScale'] });
      expect(columnOf(result, 'carry')[i]).toBeCloseTo(playShot(launch, { wind, aerodynamics }).carry, 3);
    });
  });
});

describe('errors of the readings', () => {
  it('start the shot from the truth: less the error, speeds and spin by its share', () => {
    const row = {
      'readingError.ballSpeed': 0.02,
      'readingError.spinRate': -0.1,
      'readingError.launchAngle': degrees(1),
    };
    const truth = {
      ...launch,
      ballSpeed: metresPerSecond(0.98 * launch.ballSpeed),
      spinRate: rpm(1.1 * 2700),
      launchAngle: degrees(11),
    };
    expect(flown(row, {})[0]).toBeCloseTo(playShot(truth).carry, 3);
  });

  it('reach the strike as well', () => {
    const row = { 'readingError.clubSpeed': 0.03, 'readingError.dynamicLoft': degrees(-2) };
    const truth = {
      ...delivery,
      clubSpeed: metresPerSecond(0.97 * delivery.clubSpeed),
      dynamicLoft: degrees(16),
    };
    expect(flown(row, {}, { from: delivery })[0]).toBeCloseTo(playShot(truth).carry, 3);
  });

  it('need the reading they belong to', () => {
    const fault = caught(() => flown({ 'readingError.ballSpeed': 0.02 }, {}, { from: delivery }));
    expect(fault).toMatchObject({
      code: 'invalid-input',
      field: "design.rows[0]['readingError.ballSpeed']",
    });
    expect(fault.message).toContain('delivery.ballSpeed');
  });

  it('flag a row whose truth lies outside its range', () => {
    const row = { 'delivery.clubSpeed': metresPerSecond(1.2), 'readingError.clubSpeed': 0.4 };
    const { status } = sweep({ kind: 'list', rows: [row] }, {}, { from: delivery });
    expect(rowStatuses[status[0] as number]).toBe('outside-range');
  });
});
