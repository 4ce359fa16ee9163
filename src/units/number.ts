/**
 * The number, or NaN for what is none: text is not taken for the number it spells, and a BigInt does not throw. Whatever
 * takes a quantity refuses NaN by name.
 * @internal
 */
export function number(value: unknown): number {
  return typeof value === 'number' ? value : Number.NaN;
}
