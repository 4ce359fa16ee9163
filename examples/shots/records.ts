/** One line of text, or the lines that a quoted field holds together, and where it starts, counted from 1. */
export interface TextRecord {
  readonly text: string;
  readonly line: number;
}

/** A quoted field that runs on for longer is a stray quote. */
const MOST_LINES = 20;

/** Lines of a text that comes in pieces; line ends are LF, CRLF or CR. */
export async function* linesOf(pieces: AsyncIterable<string>): AsyncIterable<string> {
  let rest = '';
  for await (const piece of pieces) {
    const text = rest + piece;
    // A CR at the end may be the first half of CRLF.
    const lines = text.split(/\r\n|\n|\r(?!$)/u);
    rest = lines.pop() ?? '';
    yield* lines;
  }
  if (rest !== '') yield rest.replace(/\r$/u, '');
}

/** Records of a CSV text: lines, joined where a quoted field goes over several. Blank lines are left out. */
export async function* recordsOf(lines: AsyncIterable<string>): AsyncIterable<TextRecord> {
  let open: string[] = [];
  let at = 0;
  for await (const line of lines) {
    at += 1;
    open.push(line);
    while (open.length > 0) {
      const whole = open.join('\n');
      const waits = open.length < MOST_LINES && endsInsideQuotes(whole);
      if (waits) break;
      const stray = open.length > 1 && endsInsideQuotes(whole);
      const text = stray ? (open[0] ?? '') : whole;
      if (text.trim() !== '') yield { text, line: at - open.length + 1 };
      open = stray ? open.slice(1) : [];
    }
  }
  for (const [i, text] of open.entries()) {
    if (text.trim() !== '') yield { text, line: at - open.length + 1 + i };
  }
}

/** True when a field that begins with a quote is not closed; a quote inside a field is a sign like any other. */
function endsInsideQuotes(text: string): boolean {
  if (/^\s*"?#/u.test(text)) return false;
  let inside = false;
  for (let i = 0; i < text.length; i++) {
    if (text[i] !== '"') continue;
    if (!inside) inside = i === 0 || /[,;\t\n]/u.test(text[i - 1] ?? '');
    else if (text[i + 1] === '"') i += 1;
    else inside = false;
  }
  return inside;
}
