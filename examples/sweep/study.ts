import type { FactorName, IndexDesign, RangeFactor } from 'fairflight/sweep';
import { celsius, degrees, metres, mph, toCelsius, toDegrees, toMetres, toMph } from 'fairflight/units';

/** A factor of the study, as people read it. */
export interface StudyFactor {
  readonly name: FactorName;
  readonly label: string;
  readonly unit: string;
  /** From SI to the unit shown. */
  readonly of: (si: number) => number;
}

const ratio = (value: number): number => 100 * value;

/** What varies, in the order of the design. Humidity, temperature and altitude together are the air. */
export const FACTORS: readonly StudyFactor[] = [
  { name: 'delivery.clubSpeed', label: 'club speed', unit: 'mph', of: (si) => toMph(si as never) },
  { name: 'delivery.attackAngle', label: 'attack angle', unit: '°', of: (si) => toDegrees(si as never) },
  { name: 'delivery.dynamicLoft', label: 'dynamic loft', unit: '°', of: (si) => toDegrees(si as never) },
  { name: 'air.temperature', label: 'air temperature', unit: '°C', of: (si) => toCelsius(si as never) },
  { name: 'air.altitude', label: 'altitude', unit: 'm', of: (si) => toMetres(si as never) },
  { name: 'air.relativeHumidity', label: 'humidity', unit: '%', of: ratio },
];

/** Flights for each base row of the design: A, B, and one a factor. */
export const FLIGHTS_PER_BASE: number = FACTORS.length + 2;

/** A design of ranges alone. */
export type Study = Omit<IndexDesign, 'factors'> & { readonly factors: readonly RangeFactor[] };

/** A driver from a slow to a very fast swing, in the air of most places where golf is played. */
export function study(base: number, seed: number): Study {
  return {
    kind: 'sobol-indices',
    base,
    seed,
    factors: [
      { name: 'delivery.clubSpeed', from: mph(80), to: mph(120) },
      { name: 'delivery.attackAngle', from: degrees(-5), to: degrees(5) },
      { name: 'delivery.dynamicLoft', from: degrees(9), to: degrees(19) },
      { name: 'air.temperature', from: celsius(0), to: celsius(35) },
      { name: 'air.altitude', from: metres(0), to: metres(2000) },
      { name: 'air.relativeHumidity', from: 0, to: 1 },
    ],
  };
}
