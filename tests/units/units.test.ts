import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as units from '../../src/units/index.js';
import { even } from '../even.js';

/**
 * One row a unit: a value, what it is in SI, and the exact definition that says so. Every maker and every reader is
 * checked against the SI number itself, never one against the other.
 */
type Row = readonly [make: string, read: string, value: number, si: number, source: string];

const POUND = 0.45359237;
const YARD = 0.9144;
const rows: readonly Row[] = [
  // International yard and pound agreement, 1959: yard 0.9144 m, pound 0.45359237 kg, exact (NIST SP 811, 2008, B.8).
  ['yards', 'toYards', 250, 228.6, '1959 agreement'],
  ['feet', 'toFeet', 3, YARD, 'a third of a yard'],
  ['inches', 'toInches', 36, YARD, 'a 36th of a yard'],
  ['ounces', 'toOunces', 16, POUND, 'a 16th of a pound'],
  ['metres', 'toMetres', 12.5, 12.5, 'SI'],
  ['millimetres', 'toMillimetres', 42.67, 0.04267, 'SI prefix'],
  ['kilograms', 'toKilograms', 0.2, 0.2, 'SI'],
  ['grams', 'toGrams', 45.93, 0.04593, 'SI prefix'],
  ['metresPerSecond', 'toMetresPerSecond', 70, 70, 'SI'],
  ['mph', 'toMph', 100, (100 * 1760 * YARD) / 3600, 'mile of 1,760 yards; 44.704 m/s'],
  ['mph', 'toMph', 113, 50.51552, 'same, written out'],
  ['kph', 'toKph', 36, 10, 'kilometre over hour'],
  ['feetPerSecond', 'toFeetPerSecond', 105, 32.004, 'foot'],
  // First International Extraordinary Hydrographic Conference, Monaco, 1929: nautical mile 1,852 m.
  ['knots', 'toKnots', 3600, 1852, 'nautical mile'],
  ['radians', 'toRadians', 1.25, 1.25, 'SI'],
  ['degrees', 'toDegrees', 360, 6.283185307179586, 'SI Brochure 2019, table 8'],
  ['degrees', 'toDegrees', 10.9, 0.19024088846738194, 'same, from an arbitrary-precision calculator'],
  ['radiansPerSecond', 'toRadiansPerSecond', 280, 280, 'SI'],
  ['rpm', 'toRpm', 60, 6.283185307179586, 'one turn a second'],
  ['rpm', 'toRpm', 2700, 282.7433388230814, '90 π'],
  ['degreesPerSecond', 'toDegreesPerSecond', 360, 6.283185307179586, 'one turn a second'],
  ['kilogramSquareMetres', 'toKilogramSquareMetres', 0.0005, 0.0005, 'SI'],
  ['gramSquareCentimetres', 'toGramSquareCentimetres', 5000, 0.0005, '1e-3 kg × 1e-4 m²'],
  ['pascals', 'toPascals', 101_325, 101_325, 'SI'],
  ['hectopascals', 'toHectopascals', 1013.25, 101_325, 'SI prefix'],
  ['inchesOfMercury', 'toInchesOfMercury', 1, 3386.389, 'conventional, NIST SP 811, 2008, B.8'],
  ['kilogramsPerCubicMetre', 'toKilogramsPerCubicMetre', 1.2, 1.2, 'SI'],
  ['pascalSeconds', 'toPascalSeconds', 1.8e-5, 1.8e-5, 'SI'],
  ['seconds', 'toSeconds', 6.5, 6.5, 'SI'],
  ['milliseconds', 'toMilliseconds', 0.5, 0.0005, 'SI prefix'],
  ['kelvins', 'toKelvins', 288.15, 288.15, 'SI'],
  // SI Brochure 2019, 2.3.1: t/°C = T/K − 273.15. NIST SP 811, B.8: T/K = (t/°F + 459.67)/1.8.
  ['celsius', 'toCelsius', 15, 288.15, 'ice point 273.15 K'],
  ['celsius', 'toCelsius', -273.15, 0, 'absolute zero'],
  ['fahrenheit', 'toFahrenheit', 32, 273.15, 'ice point'],
  ['fahrenheit', 'toFahrenheit', 212, 373.15, 'steam point'],
  ['fahrenheit', 'toFahrenheit', 59, 288.15, '(59 + 459.67)/1.8'],
  ['fahrenheit', 'toFahrenheit', -459.67, 0, 'absolute zero'],
];

const functions = units as unknown as Readonly<Record<string, (value: number) => number>>;

function call(name: string, value: number): number {
  const f = functions[name];
  if (typeof f !== 'function') throw new Error(`no unit function ${name}`);
  return f(value);
}

describe('every unit against its definition', () => {
  for (const [make, read, value, si, source] of rows) {
    it(`${make}(${value}) is ${si} in SI: ${source}`, () => {
      expect(Math.abs(call(make, value) - si)).toBeLessThanOrEqual(1e-13 * Math.max(1, Math.abs(si)));
      expect(Math.abs(call(read, si) - value)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
    });
  }
  it('leaves no maker and no reader out', () => {
    const named = Object.entries(units).filter(([, what]) => typeof what === 'function');
    const tested = new Set<string>();
    for (const [make, read] of rows) tested.add(make).add(read);
    expect(named.map(([name]) => name).filter((name) => name !== 'si' && !tested.has(name))).toEqual([]);
    expect(tested.size).toBe(named.length - 1);
  });
  it('puts the brand on a kernel result without touching it', () => {
    expect(units.si<units.Speed>(12.3)).toBe(12.3);
  });
});

describe('what is no number', () => {
  it.each([undefined, null, '12', {}, [5], true, 10n, Symbol('x'), () => 1])('gives NaN: %s', (value) => {
    for (const unit of Object.values(units)) {
      if (typeof unit !== 'function' || unit === units.si) continue;
      expect((unit as (given: unknown) => number)(value), unit.name).toBeNaN();
    }
  });
});

describe('the factors themselves', () => {
  it('are the exact definitions', () => {
    expect(units.METRES_PER_YARD).toBe(0.9144);
    expect(units.METRES_PER_FOOT).toBe(0.3048);
    expect(units.METRES_PER_INCH).toBe(0.0254);
    expect(units.METRES_PER_SECOND_PER_MPH).toBe(0.44704);
    expect(units.METRES_PER_SECOND_PER_FPS).toBe(0.3048);
    expect(units.METRES_PER_SECOND_PER_KNOT * 3600).toBeCloseTo(1852, 9);
    expect(units.RADIANS_PER_DEGREE * 360).toBeCloseTo(6.283185307179586, 15);
    expect(units.RADIANS_PER_SECOND_PER_RPM * 60).toBeCloseTo(6.283185307179586, 15);
    expect(units.KILOGRAMS_PER_OUNCE * 16).toBe(POUND);
    expect(units.KG_M2_PER_G_CM2).toBe(1e-7);
    expect(units.KELVIN_AT_ZERO_CELSIUS).toBe(273.15);
    expect(units.KELVIN_PER_FAHRENHEIT * 9).toBeCloseTo(5, 15);
    expect(units.PASCALS_PER_HECTOPASCAL).toBe(100);
    // The density of mercury 13,595.1 kg/m³ and standard gravity: 25.4 mm of it weigh 3,386.389 Pa.
    expect(Math.abs(units.PASCALS_PER_INCH_OF_MERCURY - 13_595.1 * 9.80665 * 0.0254)).toBeLessThan(5e-4);
  });
});

describe('makers and readers together', () => {
  it('are inverse to each other over the sizes golf has', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...rows.map(([make, read]) => [make, read] as const)),
        even(-1e6, 1e6),
        ([make, read], value) => {
          expect(Math.abs(call(read, call(make, value)) - value)).toBeLessThanOrEqual(
            1e-9 + 1e-12 * Math.abs(value),
          );
        },
      ),
    );
  });
});
