/** Escapes text for HTML and SVG. */
export function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}

/** A number with a fixed count of decimals, a true minus sign and no minus zero; a dash for what is not known. */
export function fixed(value: number | undefined, decimals = 0): string {
  if (value === undefined || !Number.isFinite(value)) return '–';
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

/** A number that always shows its sign. */
export function signed(value: number | undefined, decimals = 0): string {
  const text = fixed(value, decimals);
  return value !== undefined && Number(value.toFixed(decimals)) > 0 ? `+${text}` : text;
}

/** A whole number with a no-break space between thousands. */
export function grouped(value: number | undefined): string {
  return fixed(value).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}

/** A number with at most so many decimals, for JSON, and no minus zero. */
export function near(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** "1 row", "2 rows". */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** With a capital first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** "a, b and c". */
export function listed(items: readonly string[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
}

/** Breaks text into lines of at most `width` characters, hanging two deeper than the first line stands. */
export function wrapped(text: string, width = 116): string {
  const first = /^ */.exec(text)?.[0] ?? '';
  const lines: string[] = [];
  let line = first;
  for (const word of text.trim().split(' ')) {
    const empty = line.trim() === '';
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = `${first}  ${word}`;
    } else line = empty ? `${line}${word}` : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}
