import { csvParseRows } from 'd3-dsv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from '../../src/schema/csv.js';

const rows = (text: string, separator = ','): readonly (readonly string[])[] =>
  readCsv(text, separator).map(({ fields }) => fields.map(({ text }) => text));

describe('splitting CSV after RFC 4180 (2005), section 2', () => {
  it('rule 1 and 2: records on their own lines, with or without a last line end', () => {
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'));
  });
  it('rule 5 to 7: quoted fields, line ends and separators inside, doubled quotes', () => {
    expect(rows('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(rows('"aaa","b""bb","c,cc"')).toEqual([['aaa', 'b"bb', 'c,cc']]);
  });
  it('keeps empty fields, also at the end of a line', () => {
    expect(rows('a,,c,\n,,\n')).toEqual([
      ['a', '', 'c', ''],
      ['', '', ''],
    ]);
  });
  it('counts lines through LF, CRLF, CR, blank lines and quoted line ends', () => {
    const text = 'h1,h2\n\n"two\nlines",x\r\n"a\r\nb","c\rd"\rlast,"y\nz"\n';
    const records = readCsv(text, ',');
    expect(records.map(({ line }) => line)).toEqual([1, 3, 5, 8]);
    expect(records[2]?.fields.map(({ line }) => line)).toEqual([5, 6]);
  });
  it('gives a record with a stray quote its problem and reads on at the next line', () => {
    const open = readCsv('a,b\n1,"2\n3,4\n5,6\n', ',');
    expect(open.map(({ line, problem }) => [line, problem !== undefined])).toEqual([
      [1, false],
      [2, true],
      [3, false],
      [4, false],
    ]);
    expect(
      readCsv('a,b\n"1"x,2\n3,4\n', ',').map(({ line, problem }) => [line, problem === undefined]),
    ).toEqual([
      [1, true],
      [2, false],
      [3, true],
    ]);
  });
  it('agrees with an independent CSV reader on whatever that reader can write', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '1', '"', ',', '\n', '\r', ' ', 'é') });
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }),
        (table) => {
          const text = table
            .map((row) => row.map((value) => `"${value.replaceAll('"', '""')}"`).join(','))
            .join('\n');
          expect(rows(text)).toEqual(csvParseRows(text));
          expect(rows(text)).toEqual(table);
        },
      ),
    );
  });
});
