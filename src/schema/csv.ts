/** One field of a CSV record. */
export interface CsvField {
  readonly text: string;
  /** Line the field starts on, counted from 1. */
  readonly line: number;
}

/** One record: its fields, or what is wrong with it. */
export interface CsvRecord {
  readonly line: number;
  readonly fields: readonly CsvField[];
  readonly problem?: string;
}

/**
 * Splits CSV text after RFC 4180 (2005): quoted fields may hold the separator, line ends and doubled quotes; lines
 * end in CRLF, LF or CR. Blank lines are skipped. A record that breaks the rules is returned with its problem and
 * reading goes on at the next line, so that one stray quote does not take the rest of the file with it.
 */
export function readCsv(text: string, separator: string, firstLine = 1): readonly CsvRecord[] {
  const records: CsvRecord[] = [];
  const doomed: Doomed = new Map();
  let at = 0;
  let line = firstLine;
  while (at < text.length) {
    const record = readRecord(text, at, line, separator, doomed);
    const blank = record.fields.length === 1 && record.fields[0]?.text === '' && record.problem === undefined;
    if (!blank) records.push({ line, fields: record.fields, ...problemOf(record.problem) });
    at = record.next;
    line = record.nextLine;
  }
  return records;
}

interface RawRecord {
  readonly fields: readonly CsvField[];
  readonly next: number;
  readonly nextLine: number;
  readonly problem?: string;
}

/**
 * Starts of fields from which reading on ends in a problem. After a stray quote the next line is tried afresh; without
 * this a file of such lines would be read to its end again from each.
 */
type Doomed = Map<number, string>;

function readRecord(
  text: string,
  start: number,
  startLine: number,
  separator: string,
  doomed: Doomed,
): RawRecord {
  const fields: CsvField[] = [];
  const starts: number[] = [];
  let at = start;
  let line = startLine;
  const giveUp = (problem: string): RawRecord => {
    for (const field of starts) doomed.set(field, problem);
    const next = afterLineEnd(text, lineEndFrom(text, start));
    return { fields: [], next, nextLine: startLine + 1, problem };
  };
  for (;;) {
    const fieldLine = line;
    const known = doomed.get(at);
    if (known !== undefined) return giveUp(known);
    starts.push(at);
    let value = '';
    if (text[at] === '"') {
      const opened = at + 1;
      let close = text.indexOf('"', opened);
      while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
      if (close < 0) return giveUp('a quote (") is opened and never closed');
      // `replaceAll` takes six times as long for twice the length from a million quotes on.
      value = text.slice(opened, close).split('""').join('"');
      at = close + 1;
      line += lineEndsIn(value);
      if (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') {
        return giveUp('text follows a closing quote ("); a quote inside quotes is written twice ("")');
      }
    } else {
      const end = fieldEndFrom(text, at, separator);
      value = text.slice(at, end);
      at = end;
    }
    fields.push({ text: value, line: fieldLine });
    if (text[at] !== separator) {
      return { fields, next: afterLineEnd(text, at), nextLine: line + 1 };
    }
    at += 1;
  }
}

function fieldEndFrom(text: string, from: number, separator: string): number {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') at += 1;
  return at;
}

function lineEndFrom(text: string, from: number): number {
  return fieldEndFrom(text, from, '\n');
}

function afterLineEnd(text: string, at: number): number {
  if (text[at] === '\r' && text[at + 1] === '\n') return at + 2;
  return at + 1;
}

function lineEndsIn(text: string): number {
  let ends = 0;
  for (let at = 0; at < text.length; at++) {
    if (text[at] === '\n' || (text[at] === '\r' && text[at + 1] !== '\n')) ends += 1;
  }
  return ends;
}

function problemOf(problem: string | undefined): { readonly problem?: string } {
  return problem === undefined ? {} : { problem };
}
