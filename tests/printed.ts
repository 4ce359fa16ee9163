import { expect } from 'vitest';

/** Half a unit of the last digit of a printed number: 5e-5 for "0.1234", 5e-10 for "1.7894e-05". */
export function halfUnit(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** Fails unless `value` rounds to the printed digits. */
export function expectPrinted(value: number, printed: string, what: string): void {
  // A part in 1e9 of slack lets a value that lies on the half go either way.
  const limit = halfUnit(printed) + 1e-9 * Math.abs(value);
  expect(Math.abs(value - Number(printed)), `${what}: ${value} against ${printed}`).toBeLessThanOrEqual(
    limit,
  );
}
