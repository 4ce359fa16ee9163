import { frozen } from '../inputs/frozen.js';
import type { ModelWarning, WarningCode } from './warning.js';

/** Codes of the warnings that a row of many shots may raise: the k-th stands for 2ᵏ in a sum of them. */
export const rowWarnings: readonly WarningCode[] = /* @__PURE__ */ frozen(() => [
  'reynolds-outside-data',
  'spin-ratio-outside-data',
  'club-speed-outside-data',
  'spin-loft-outside-data',
  'strike-beyond-face-map',
  'ball-temperature-outside-data',
  'landing-speed-outside-data',
  'descent-outside-data',
]);

/** What a code stands for in a sum; 0 for one that a row's status tells. @internal */
export function bitOf(code: WarningCode): number {
  const place = rowWarnings.indexOf(code);
  return place < 0 ? 0 : 2 ** place;
}

/** Warnings as a sum of their bits. @internal */
export function bitsOf(warnings: readonly ModelWarning[]): number {
  return warnings.reduce((bits, { code }) => bits | bitOf(code), 0);
}

/** How many of a column of such sums hold each code. @internal */
export function countBits(sums: Uint8Array): readonly number[] {
  return rowWarnings.map((_, k) => sums.reduce((rows, bits) => rows + ((bits >> k) & 1), 0));
}
