import type { Study } from './study.js';

/** What was typed about the place, in the units of the other way of speaking; exact factors, rounded as people say them. */
export function inOtherUnits({
  units,
  altitude,
  temperature,
}: Study): Pick<Study, 'altitude' | 'temperature'> {
  const metric = units === 'metric';
  return {
    altitude: turned(altitude, (value) => (metric ? value / 0.3048 : value * 0.3048)),
    temperature: turned(temperature, (value) => (metric ? (value * 9) / 5 + 32 : ((value - 32) * 5) / 9)),
  };
}

function turned(text: string, turn: (value: number) => number): string {
  const value = Number(text.trim().replace(',', '.').replace('−', '-'));
  return text.trim() === '' || !Number.isFinite(value) ? text : String(Math.round(turn(value)));
}
