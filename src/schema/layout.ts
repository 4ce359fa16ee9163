import { text as textOf } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readField } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { readCsv } from './csv.js';
import { SEPARATORS } from './read-shots-options.js';
import { findHeader, knownIn, type NamedColumns } from './shot-header.js';

const textField = /* @__PURE__ */ frozen(() => textOf('club speed (mph)', 'text of the table'));

/** The text of a table without the mark of its encoding and the line that names its separator. @throws FairflightError */
export function checkText(csvText: unknown): string {
  const given = readField(textField, csvText, 'csvText') as string;
  if (given.includes('\0')) {
    throw refusal('csvText', 'the file is not UTF-8 text; save it as CSV in UTF-8');
  }
  const marked = given.startsWith('\uFEFF') ? given.slice(1) : given;
  // Spreadsheets note the separator in a line of its own; it is found without.
  const plain = marked.replace(/^sep=.?(?:\r\n|\n|\r|$)/iu, '');
  if (plain.trim() === '') {
    throw refusal('csvText', 'the file is empty: line 1 should hold the column names');
  }
  return plain;
}

/** Comment lines at the top, and what stands below them. */
export function splitComments(text: string): {
  comments: readonly string[];
  body: string;
  firstLine: number;
} {
  const comments: string[] = [];
  let body = text;
  let firstLine = 1;
  for (;;) {
    const match = /^[^\S\r\n]*"?#([^\r\n]*)(\r\n|\n|\r|$)|^[^\S\r\n]*(?:\r\n|\n|\r)/u.exec(body);
    if (match === null || match[0] === '') return { comments, body, firstLine };
    // A spreadsheet that saves the file again pads comment lines with quotes and separators.
    if (match[1] !== undefined) comments.push(withoutPadding(match[1]));
    body = body.slice(match[0].length);
    firstLine += 1;
  }
}

function withoutPadding(comment: string): string {
  let end = comment.length;
  while (end > 0 && /["\s;,]/u.test(comment.charAt(end - 1))) end -= 1;
  return comment.slice(0, end).trim();
}

/** The separator that makes most known columns of one of the first lines; of those that make none, the commonest. */
export function findSeparator(body: string, named: NamedColumns): (typeof SEPARATORS)[number] {
  const top = firstLines(body);
  const scores = SEPARATORS.map((separator) => {
    const records = readCsv(top, separator);
    const head = records[findHeader(records, named)];
    return { separator, known: knownIn(head, named), width: head?.fields.length ?? 0 };
  });
  return scores.reduce((best, next) =>
    next.known > best.known || (next.known === best.known && next.width > best.width) ? next : best,
  ).separator;
}

/** Lines and characters in which the separator is looked for. */
const TOP_LINES = 40;
const TOP_LENGTH = 20_000;

function firstLines(body: string): string {
  return body
    .slice(0, TOP_LENGTH)
    .split(/\r\n|\n|\r/u, TOP_LINES)
    .join('\n');
}
