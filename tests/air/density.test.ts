import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compressibility, saturationPressure, vapourFraction } from '../../src/air/density.js';
import {
  airAt,
  airAtAltitude,
  airViscosity,
  defaultAir,
  moistAirDensity,
  standardAtmosphere,
} from '../../src/air/index.js';
import { celsius, hectopascals, kelvins, metres, pascals } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';
import { expectPrinted } from '../printed.js';
import published from '../published/data/moist-air.json' with { type: 'json' };

const density = (t: number, p: number, h: number): number =>
  moistAirDensity({ temperature: celsius(t), pressure: pascals(p), relativeHumidity: h });

describe('CIPM-2007', () => {
  // Source and limits: the about block of the data.
  it('meets nine check values and their parts to the printed digits', () => {
    expect(published.rows).toHaveLength(9);
    for (const row of published.rows) {
      const kelvin = row.celsius + 273.15;
      const vapour = vapourFraction(kelvin, row.pressure, row.relativeHumidity);
      const where = `${row.celsius} °C, ${row.pressure} Pa, ${row.relativeHumidity}`;
      expectPrinted(saturationPressure(kelvin), row.saturationPressure, `saturation pressure at ${where}`);
      expectPrinted(vapour, row.vapourFraction, `vapour fraction at ${where}`);
      expectPrinted(compressibility(kelvin, row.pressure, vapour), row.compressibility, `Z at ${where}`);
      expectPrinted(
        density(row.celsius, row.pressure, row.relativeHumidity),
        row.density,
        `density at ${where}`,
      );
    }
  });
  it('agrees with the OIML approximation', () => {
    // OIML R 111-1 (2004), equation E.3-1: rel. uncertainty 2e-4 for 900–1,100 hPa, 10–30 °C, under 80 % (from memory).
    for (const [t, p, h] of [
      [20, 1013.25, 0.5],
      [12, 950, 0.3],
      [28, 1050, 0.7],
    ] as const) {
      const approximation = (0.34848 * p - 0.009 * 100 * h * Math.exp(0.061 * t)) / (273.15 + t);
      expect(density(t, p * 100, h) / approximation).toBeCloseTo(1, 3);
    }
  });
  it('agrees with an ideal mixture of dry air and vapour within 0.05 % over the stated range', () => {
    // Ideal gases, R = 287.05 and 461.5 J/(kg K); size of the difference from an independent comparison.
    fc.assert(
      fc.property(even(15, 27), even(60_000, 110_000), even(0, 1), (t, p, h) => {
        const vapour = h * saturationPressure(t + 273.15);
        const ideal = (p - vapour) / (287.05 * (t + 273.15)) + vapour / (461.5 * (t + 273.15));
        expect(Math.abs(density(t, p, h) / ideal - 1)).toBeLessThan(6e-4);
      }),
    );
  });
  it('makes carbon dioxide heavier: 12.011 g/mol for carbon in place of oxygen', () => {
    const state = { temperature: celsius(20), pressure: pascals(101_325), relativeHumidity: 0 };
    const more = moistAirDensity({ ...state, carbonDioxide: 0.0014 });
    expect(more / moistAirDensity(state) - 1).toBeCloseTo((12.011 * 0.001) / 28.96546, 9);
  });
});

describe('signs and sizes', () => {
  it('humid air is lighter: −0.87 % from dry to saturated at 20 °C', () => {
    expect(density(20, 101_325, 1) / density(20, 101_325, 0) - 1).toBeCloseTo(-0.0087, 4);
  });
  it('warm air is lighter: about −0.34 % a kelvin', () => {
    expect(density(21, 101_325, 0) / density(20, 101_325, 0) - 1).toBeCloseTo(-0.0034, 4);
  });
  it('density falls with temperature and humidity and rises with pressure, over the whole input range', () => {
    fc.assert(
      fc.property(even(-49, 59), even(31_000, 109_000), even(0, 0.98), (t, p, h) => {
        const here = density(t, p, h);
        expect(here).toBeGreaterThan(0.2);
        expect(here).toBeLessThan(1.9);
        expect(density(t + 1, p, h)).toBeLessThan(here);
        expect(density(t, p, h + 0.02)).toBeLessThan(here);
        expect(density(t, p + 1000, h)).toBeGreaterThan(here);
      }),
      { numRuns: 500 },
    );
  });
  it('dry air of 15 °C is 4e-4 denser than the standard atmosphere has it', () => {
    expect(density(15, 101_325, 0) / standardAtmosphere(metres(0)).density - 1).toBeCloseTo(4.3e-4, 4);
  });
});

describe('viscosity', () => {
  it('is 1.7894e-5 Pa s at 15 °C and 1.8134e-5 at 20 °C', () => {
    // U.S. Standard Atmosphere 1976, sea level; Sutherland's law by hand: 1.458e-6 · 293.15^1.5 / 403.55 = 1.81340e-5.
    expectPrinted(airViscosity(kelvins(288.15)), '1.7894e-05', 'viscosity');
    expectPrinted(airViscosity(celsius(20)), '1.8134e-05', 'viscosity');
  });
  it('grows with temperature', () => {
    expect(airViscosity(celsius(40))).toBeGreaterThan(airViscosity(celsius(0)));
  });
});

describe('making air', () => {
  it('defaults to 20 °C, 1013.25 hPa, 50 %: 1.1993 kg/m³', () => {
    expectPrinted(defaultAir.density, '1.199314', 'default density');
    expect(airAt()).toEqual(defaultAir);
    expect(airAt({ temperature: celsius(20) })).toEqual(defaultAir);
    expect(airAt({ temperature: celsius(10) }).viscosity).toBe(airViscosity(celsius(10)));
    expectPrinted(airAt({ temperature: celsius(10) }).density, '1.244380', 'density');
  });
  it('at an altitude takes the pressure of the standard atmosphere and the temperature given', () => {
    // 1,500 m geopotential is 1,500.354 m on the map; row 20 °C, 84,556 Pa, 50 % of the check values.
    const air = airAtAltitude({ altitude: metres(1500.354), temperature: celsius(20) });
    expectPrinted(air.density, '0.999903', 'density');
    expect(air.viscosity).toBe(airViscosity(celsius(20)));
    expect(
      airAtAltitude({ altitude: metres(1500.354), temperature: celsius(20), relativeHumidity: 0 }).density,
    ).toBeGreaterThan(air.density);
  });
  it('at sea level is the default air, and cools by 6.5 K a kilometre', () => {
    expect(airAtAltitude({ altitude: metres(0) })).toEqual(defaultAir);
    const stated = airAtAltitude({ altitude: metres(1000.1573), temperature: celsius(13.5) });
    expect(airAtAltitude({ altitude: metres(1000.1573) }).density).toBeCloseTo(stated.density, 6);
  });
  it('is plain data', () => {
    expect(structuredClone(defaultAir)).toEqual(defaultAir);
  });
});

describe('refusals', () => {
  const good = { temperature: celsius(20), pressure: hectopascals(1013.25), relativeHumidity: 0.5 };
  const bad: readonly [object, string, string, string][] = [
    [{ temperature: 20 }, 'air.temperature', 'outside-range', 'celsius(20)'],
    [{ temperature: Number.NaN }, 'air.temperature', 'invalid-input', 'K'],
    [{ pressure: 1013.25 }, 'air.pressure', 'outside-range', 'hectopascals'],
    [{ relativeHumidity: 50 }, 'air.relativeHumidity', 'outside-range', 'pass 0.5'],
    [{ relativeHumidity: '0.5' }, 'air.relativeHumidity', 'invalid-input', 'between 0 and 1'],
    [{ carbonDioxide: 400 }, 'air.carbonDioxide', 'outside-range', '0.01'],
    [{ humidity: 0.5 }, 'air.humidity', 'invalid-input', 'relativeHumidity'],
  ];
  for (const [change, field, code, words] of bad) {
    it(`${JSON.stringify(change)}`, () => {
      const error = caught(() => airAt({ ...good, ...change } as never));
      expect(error.code).toBe(code);
      expect(error.field).toBe(field);
      expect(error.message).toContain(words);
    });
  }
  it('an altitude, a temperature or a field that cannot be', () => {
    expect(caught(() => airAtAltitude({ altitude: metres(6000) })).range).toEqual([-500, 5000]);
    expect(caught(() => airAtAltitude({ altitude: metres(0), temp: celsius(3) } as never)).field).toBe(
      'place.temp',
    );
    expect(caught(() => airViscosity(kelvins(20))).code).toBe('outside-range');
    expect(caught(() => airAt(null as never)).code).toBe('invalid-input');
  });
});
