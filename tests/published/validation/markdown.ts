/** Enough digits to see the tolerance, and few enough that another machine's last bit does not show. */
export function show(value: number, tolerance: number): string {
  return fixed(value, tolerance >= 20 ? 0 : tolerance >= 0.5 ? 1 : 3);
}

/** A number with a fixed count of decimals, no "−0.0", and a real minus sign. */
export function fixed(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return (Number(text) === 0 ? text.replace('-', '') : text).replace('-', '−');
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

/** A Markdown table; `align` has one letter a column, `l` or `r`. */
export function table(head: readonly string[], align: string, rows: readonly (readonly string[])[]): string {
  const rule = [...align].map((side) => (side === 'r' ? '---:' : '---'));
  return [head, rule, ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');
}
