import type { QuantityName } from 'fairflight/session';
import type { Display } from './display.js';
import { fixed, grouped } from './text.js';

/** How a quantity is named and shown. */
export interface Quantity {
  readonly name: QuantityName;
  readonly label: string;
  /** Short name for the columns of the band tables; without one it has no column. */
  readonly short?: string;
  readonly kind: 'speed' | 'distance' | 'height' | 'angle' | 'spin' | 'ratio';
}

const ALL: readonly Quantity[] = [
  { name: 'clubSpeed', label: 'club speed', short: 'club', kind: 'speed' },
  { name: 'attackAngle', label: 'attack angle', short: 'attack', kind: 'angle' },
  { name: 'ballSpeed', label: 'ball speed', short: 'ball', kind: 'speed' },
  { name: 'smashFactor', label: 'smash factor', short: 'smash', kind: 'ratio' },
  { name: 'launchAngle', label: 'launch angle', short: 'launch', kind: 'angle' },
  { name: 'launchDirection', label: 'launch direction', kind: 'angle' },
  { name: 'spinRate', label: 'spin', short: 'spin', kind: 'spin' },
  { name: 'spinAxisTilt', label: 'spin axis tilt', kind: 'angle' },
  { name: 'carry', label: 'carry', short: 'carry', kind: 'distance' },
  { name: 'total', label: 'total', short: 'total', kind: 'distance' },
  { name: 'apex', label: 'apex', short: 'apex', kind: 'height' },
  { name: 'descentAngle', label: 'descent angle', short: 'descent', kind: 'angle' },
  { name: 'side', label: 'side', short: 'side', kind: 'distance' },
];

/** Quantities with a column in the band tables, in the order of the walk of a shot. */
export const COLUMNS: readonly (Quantity & { readonly short: string })[] = ALL.flatMap((each) =>
  each.short === undefined ? [] : [{ ...each, short: each.short }],
);

/** How a quantity of a shot is shown; one without a label here goes by its own name, in SI. */
export function quantityNamed(name: QuantityName): Quantity {
  return ALL.find((each) => each.name === name) ?? { name, label: name, kind: 'ratio' };
}

/** Unit, way from SI and decimals of a quantity. */
export function shownBy(
  { kind }: Quantity,
  display: Display,
): { readonly unit: string; readonly of: (value: number) => number; readonly decimals: number } {
  if (kind === 'ratio') return { unit: '', of: (value) => value, decimals: 2 };
  const { unit, of } = display[kind];
  const whole = kind === 'spin' || (kind === 'height' && unit === 'ft');
  return { unit, of, decimals: whole ? 0 : 1 };
}

/** A value in words: `165.0 yd`, `1 729 rpm`, `1.47`. */
export function inWords(quantity: Quantity, si: number, display: Display): string {
  const { unit, of, decimals } = shownBy(quantity, display);
  const value = decimals === 0 ? grouped(of(si)) : fixed(of(si), decimals);
  return unit === '' || unit === '°' ? `${value}${unit}` : `${value} ${unit}`;
}
