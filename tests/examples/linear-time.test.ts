import { describe, it } from 'vitest';
import { readStrikes } from '../../examples/face/strikes.js';
import { typed, typedLengths, unitAtEnd } from '../../examples/lib/quantities.js';
import { expectLinear } from '../linear.js';

const filled = (part: string, length: number): string =>
  part.repeat(Math.ceil(length / part.length)).slice(0, length);

describe('what is typed is refused in linear time', () => {
  it.each([
    ['digits', (n: number) => filled('1', n)],
    ['digits, then blanks, then a sign', (n: number) => `${filled('1', n / 2)}${filled(' ', n / 2)}!`],
    ['blanks', (n: number) => `${filled(' ', n)}!`],
    ['a unit of blanks', (n: number) => `1a${filled(' ', n)}b${filled(' ', n / 2)}!`],
    ['blanks between', (n: number) => `${filled('1 ', n)}!`],
    ['letters', (n: number) => `1${filled('a', n)}!`],
    ['marks', (n: number) => filled('.,', n)],
  ])('%s', (_, text) => {
    expectLinear((length) => {
      const given = text(length);
      return () => [typed, typedLengths].map((read) => refused(() => read('speed', given, '1m')));
    });
    expectLinear((length) => {
      const given = text(length);
      return () => unitAtEnd(given);
    });
  });

  it.each([
    ['opening brackets', (n: number) => filled('(', n)],
    ['closing brackets', (n: number) => filled(')', n)],
    ['blanks in brackets', (n: number) => `(${filled(' ', n)}`],
  ])('a header of strikes: %s', (_, header) => {
    expectLinear((length) => {
      const text = `toe ${header(length)},high (mm)\n1,2\n`;
      return () => readStrikes('strikes.csv', text);
    });
  });
});

function refused(run: () => unknown): unknown {
  try {
    return run();
  } catch (error) {
    return error;
  }
}
