import { describe, it } from 'vitest';
import { parseLaunch, parseScene, readShots } from '../../src/schema/index.js';
import { expectLinear } from '../linear.js';

const filled = (part: string, length: number): string =>
  part.repeat(Math.ceil(length / part.length)).slice(0, length);
const HEADER = 'ball speed (mph);launch angle (deg);spin (rpm)';

describe('a hostile cell is refused in linear time', () => {
  it.each([
    ['digits, then a letter', (n: number) => `${filled('1', n)}x`],
    ['a number, then a letter', (n: number) => `1.${filled('1', n)}x`],
    ['digits on both sides of the mark', (n: number) => `${filled('1', n / 2)}.${filled('1', n / 2)}x`],
    ['an exponent, then a letter', (n: number) => `1e${filled('1', n)}x`],
    ['thousands, then a letter', (n: number) => `1${filled(',234', n)}x`],
    ['marks only', (n: number) => filled('.,', n)],
    ['digits, blanks, a sign', (n: number) => `${filled('1', n / 2)}${filled(' ', n / 2)}!`],
    ['letters, digits, a sign', (n: number) => `1${filled('a', n / 2)}${filled('1', n / 2)}!`],
    ['digits and letters in turn', (n: number) => filled('1a', n)],
    ['blanks around a sign', (n: number) => `${filled(' ', n / 2)}!${filled(' ', n / 2)}`],
    ['many quotes', (n: number) => `"${filled('""', n & ~1)}"`],
  ])('%s', (_name, cell) => {
    for (const decimalMark of ['.', ',', undefined] as const) {
      expectLinear((length) => {
        const text = `${HEADER}\n${cell(length)};12;2600\n`;
        return () => readShots(text, { ...(decimalMark && { decimalMark }) });
      });
    }
  });
});

describe('a hostile header or file is read in linear time', () => {
  it.each([
    ['a name of blanks', (n: number) => `x${filled(' ', n)}x`],
    ['opening brackets', (n: number) => filled('(', n)],
    ['closing brackets', (n: number) => filled(')', n)],
    ['square brackets', (n: number) => `${filled('[', n)}]`],
    ['brackets in turn', (n: number) => filled('a (b) ', n)],
    ['a unit of blanks', (n: number) => `carry (${filled(' ', n)})`],
    ['a unit of words', (n: number) => `carry (${filled('m ', n)})`],
    ['an unknown unit', (n: number) => `carry (${filled('x', n)})`],
    ['blanks, hyphens and underscores', (n: number) => `carry${filled(' -_', n)}x`],
    ['columns without a name', (n: number) => filled(';', n)],
    ['columns that are not known', (n: number) => filled('a;b;', n)],
    ['the same column again and again', (n: number) => filled('carry (yd);', n)],
    ['a quote that is not closed', (n: number) => `"${filled('a', n)}`],
    ['line ends in quotes', (n: number) => `"${filled('\n', n)}"`],
    ['quoted parts', (n: number) => filled('"a"', n)],
    ['quotes', (n: number) => filled('"', n)],
  ])('header: %s', (_name, header) => {
    expectLinear((length) => {
      const text = `${HEADER};${header(length)}\n142;12;2600;1\n`;
      return () => readShots(text);
    });
  });

  it.each([
    ['lines that open a quote for the next', (n: number) => `${HEADER}\n${'a";"b\n'.repeat(n / 8)}"`],
    ['a quote that is never closed', (n: number) => `${HEADER}\n"${'a";"b\n'.repeat(n / 8)}`],
    ['a comment of separators', (n: number) => `#${filled(';', n)}x\n${HEADER}\n`],
    ['a comment of separators and words', (n: number) => `#${filled(';;;;;;;x', n)}x\n${HEADER}\n`],
    ['short comments', (n: number) => `${filled('#\n', n)}${HEADER}\n`],
    ['blank lines', (n: number) => `${filled('\n', n)}${HEADER}\n`],
    ['a line of blanks', (n: number) => `${filled(' ', n)}x${HEADER}\n`],
    [
      'a wide header over many rows',
      (n: number) => `${HEADER};x${filled(' ', n / 2)}y\n${filled('142;12;2600;1\n', n / 2)}`,
    ],
    [
      'a header repeated under blanks',
      (n: number) => `${filled(' ', n / 2)}${HEADER}\n${filled('ball speed (mph);12;26\n', n / 2)}`,
    ],
  ])('%s', (_name, file) => {
    expectLinear((length) => {
      const text = file(length);
      return () => readShots(text);
    });
  });
});

describe('a long model is read in linear time', () => {
  it.each([
    ['many Reynolds numbers', (n: number) => ({ reynolds: Array.from({ length: n / 8 }, (_, i) => i + 1) })],
    ['an id of blanks', (n: number) => ({ id: filled(' ', n) })],
    ['an unknown name', (n: number) => filled('a', n)],
    ['an unknown kind', (n: number) => ({ kind: filled('a', n) })],
  ])('%s', (_name, model) => {
    expectLinear((length) => {
      const given = model(length);
      const json = { aerodynamics: typeof given === 'string' ? given : { kind: 'table', ...given } };
      return () => parseScene(json);
    });
  });
});

describe('hostile JSON is refused in linear time', () => {
  it.each([
    ['a key of letters', (n: number) => ({ [filled('a', n)]: 1 })],
    ['a key of blanks', (n: number) => ({ [`ballSpeed${filled(' ', n)}x`]: 1 })],
    ['a key that opens a bracket', (n: number) => ({ [`ballSpeed (${filled('x', n)}`]: 1 })],
    ['a unit of blanks', (n: number) => ({ ballSpeed: { value: 1, unit: `m${filled(' ', n)}ph` } })],
    [
      'many keys',
      (n: number) => Object.fromEntries(Array.from({ length: n / 16 }, (_, i) => [`key${i}`, i])),
    ],
    ['a long text', (n: number) => ({ ballSpeed: filled('1', n) })],
  ])('%s', (_name, document) => {
    expectLinear((length) => {
      const json = document(length);
      return () => parseLaunch(json);
    });
  });
});
