/** Small pieces of Markdown for the written pages. */

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replace(/\s+/g, ' ').trim();
}

export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n');
}

/** Formulas, line by line as they are written. */
export function formulas(text: string): string {
  return `\`\`\`text\n${text.replace(/^\n|\n$/g, '')}\n\`\`\``;
}

/** A paragraph, its lines joined and broken anew. */
export function paragraph(text: string): string {
  const lines: string[] = [];
  for (const word of text.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < 119) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.join('\n');
}

/** A constant as it is, without the last digits that a conversion of units leaves. */
export function figure(value: number): string {
  const rounded = Number(value.toPrecision(12));
  return rounded !== 0 && Math.abs(rounded) < 1e-3 ? rounded.toExponential() : String(rounded);
}

export function inDegrees(radians: number): string {
  return figure((radians * 180) / Math.PI);
}
