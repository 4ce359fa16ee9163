import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  geometricAltitude,
  geopotentialAltitude,
  standardAtmosphere,
  stationPressure,
} from '../../src/air/index.js';
import {
  celsius,
  feet,
  hectopascals,
  inchesOfMercury,
  metres,
  pascals,
  si,
  type Temperature,
} from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';
import { expectPrinted } from '../printed.js';
import published from '../published/data/standard-atmosphere.json' with { type: 'json' };

describe('standard atmosphere', () => {
  // Source and limits: the about block of the data.
  it('meets the table at eight altitudes to its last digit', () => {
    expect(published.rows).toHaveLength(8);
    const seaLevel = standardAtmosphere(metres(0)).density;
    for (const row of published.rows) {
      const air = standardAtmosphere(metres(row.altitude));
      const where = `${row.altitude} m`;
      expectPrinted(air.temperature, row.temperature, `temperature at ${where}`);
      expectPrinted(air.pressure, row.pressure, `pressure at ${where}`);
      expectPrinted(air.density, row.density, `density at ${where}`);
      expectPrinted(air.viscosity, row.viscosity, `viscosity at ${where}`);
      expectPrinted(air.viscosity / air.density, row.kinematicViscosity, `kinematic viscosity at ${where}`);
      expectPrinted(air.speedOfSound, row.speedOfSound, `speed of sound at ${where}`);
      expectPrinted(air.density / seaLevel, row.densityRatio, `density ratio at ${where}`);
    }
  });
  it('meets the tropopause: 216.65 K, 22,632 Pa at 11 km', () => {
    // U.S. Standard Atmosphere 1976, table I (from memory): 22,632.06 Pa.
    expect(standardAtmosphere(metres(11_000)).temperature).toBeCloseTo(216.65, 9);
    expect(Math.abs(standardAtmosphere(metres(11_000)).pressure - 22_632.06)).toBeLessThan(0.5);
  });
  it('refuses what lies outside the layer', () => {
    expect(caught(() => standardAtmosphere(metres(12_000))).range).toEqual([-2000, 11_000]);
    expect(caught(() => standardAtmosphere(si(Number.NaN))).code).toBe('invalid-input');
  });
});

describe('geopotential and geometric altitude', () => {
  it('meets the standard: 10,000 m geometric is 9,984 m geopotential; 11,000 m geopotential is 11,019 m', () => {
    // U.S. Standard Atmosphere 1976, table I, to the whole metre (from memory).
    expectPrinted(geopotentialAltitude(metres(10_000)), '9984', 'geopotential');
    expectPrinted(geometricAltitude(metres(11_000)), '11019', 'geometric');
  });
  it('are inverse to each other, and alike at sea level', () => {
    expect(geopotentialAltitude(metres(0))).toBe(0);
    fc.assert(
      fc.property(even(-1900, 11_900), (z) => {
        expect(geometricAltitude(geopotentialAltitude(metres(z)))).toBeCloseTo(z, 8);
        expect(geopotentialAltitude(metres(z))).toBeLessThanOrEqual(z + 1e-9);
      }),
    );
  });
  it('refuse what lies outside', () => {
    expect(caught(() => geopotentialAltitude(metres(1e5))).field).toBe('geometric');
    expect(caught(() => geometricAltitude(metres(1e5))).field).toBe('geopotential');
  });
});

describe('station pressure', () => {
  it('of a standard day is the standard atmosphere', () => {
    for (const row of published.rows) {
      const elevation = geometricAltitude(metres(row.altitude));
      const seaLevelPressure = pascals(101_325);
      expectPrinted(stationPressure({ seaLevelPressure, elevation }), row.pressure, `${row.altitude} m`);
    }
  });
  it('agrees with the altimeter-setting equation of the weather services', () => {
    // A = (P^0.190263 + 8.417286e-5 h)^(1/0.190263), hPa and m, with the 0.3 hPa of instrument height left out
    // (Smithsonian Meteorological Tables, 1951; from memory).
    for (const [altimeter, elevation] of [
      [1013.25, 1500],
      [1030, 2200],
      [985, 300],
    ] as const) {
      const expected = (altimeter ** 0.190263 - 8.417286e-5 * elevation) ** (1 / 0.190263);
      const got =
        stationPressure({ seaLevelPressure: hectopascals(altimeter), elevation: metres(elevation) }) / 100;
      // The equation takes the map's height for the geopotential one: 0.06 hPa at 2,200 m.
      expect(Math.abs(got - expected)).toBeLessThan(0.1);
    }
    // 29.92 inHg at 5,280 ft reads about 24.63 inHg (common altimetry tables, from memory).
    const mile = stationPressure({ seaLevelPressure: inchesOfMercury(29.92), elevation: feet(5280) });
    expect(mile / 3386.389).toBeCloseTo(24.63, 1);
  });
  it('by temperature is the hypsometric equation', () => {
    // By hand: H = 999.843 m, Tm = 293.15 + 3.2495 K, p = 1013.25 exp(−9.80665·999.843/(287.0531·296.3995)) = 902.96.
    const pressure = stationPressure({
      seaLevelPressure: hectopascals(1013.25),
      elevation: metres(1000),
      temperature: celsius(20),
    });
    expect(pressure / 100).toBeCloseTo(902.96, 2);
  });
  it('by the temperature of the standard day is the standard day, within 0.1 hPa', () => {
    for (const h of [0, 300, 1000, 2000]) {
      const standard = stationPressure({ seaLevelPressure: hectopascals(1013.25), elevation: metres(h) });
      const temperature = si<Temperature>(288.15 - 0.0065 * h);
      const byTemperature = stationPressure({
        seaLevelPressure: hectopascals(1013.25),
        elevation: metres(h),
        temperature,
      });
      expect(Math.abs(standard - byTemperature)).toBeLessThan(10);
    }
  });
  it('falls with height and less so in warm air', () => {
    const report = { seaLevelPressure: hectopascals(1013.25), elevation: metres(1500) };
    expect(stationPressure(report)).toBeLessThan(101_325 * 0.85);
    expect(stationPressure({ ...report, temperature: celsius(30) })).toBeGreaterThan(
      stationPressure({ ...report, temperature: celsius(0) }),
    );
    expect(stationPressure({ ...report, elevation: metres(0) })).toBeCloseTo(101_325, 6);
  });
  it('refuses what cannot be', () => {
    const report = { seaLevelPressure: hectopascals(1013.25), elevation: metres(100) };
    expect(caught(() => stationPressure({ ...report, seaLevelPressure: pascals(1013) })).hint).toContain(
      'hectopascals',
    );
    expect(caught(() => stationPressure({ ...report, elevation: metres(9000) })).field).toBe(
      'report.elevation',
    );
    expect(caught(() => stationPressure({ ...report, temperature: si(15) })).field).toBe(
      'report.temperature',
    );
    expect(caught(() => stationPressure({ ...report, height: 3 } as never)).field).toBe('report.height');
  });
});
