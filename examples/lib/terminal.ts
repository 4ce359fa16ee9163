/** What a terminal obeys, and the invisible marks that turn the direction of writing; not the line break. */
const OBEYED = /[^\P{Cc}\n]|\p{Cf}/gu;

/** Text as a terminal may show it, whatever a file, its name or an option held. */
export function shown(text: string): string {
  return text.replace(OBEYED, ' ');
}

/** A cell of a file that is passed on: line breaks stay in their quotes, as do tabs. */
export function shownCell(text: string): string {
  return text.replace(OBEYED, (found) => (found === '\t' || found === '\r' ? found : ' '));
}

/** JSON that a terminal may show: the same values, with such characters escaped. */
export function shownJson(value: unknown, indent = 2): string {
  const plain = JSON.stringify(value, null, indent).replace(OBEYED, (found) =>
    Array.from({ length: found.length }, (_, i) => hex(found.charCodeAt(i))).join(''),
  );
  return `${plain}\n`;
}

function hex(unit: number): string {
  return `\\u${unit.toString(16).padStart(4, '0')}`;
}

/** Prints the answer. */
export function say(text: string): void {
  process.stdout.write(shown(text));
}

/** Says on the error stream what is not the answer. */
export function remark(text: string): void {
  process.stderr.write(shown(text));
}
