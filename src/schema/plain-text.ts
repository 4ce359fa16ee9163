/** Longest name, label or comment that is kept; what is longer is no name. */
const LONGEST = 200;

/**
 * A name, a label or a comment of a file as it may be shown: without control characters, which a terminal obeys, and
 * without the invisible marks that turn the direction of writing; cut where it is no longer a name.
 */
export function plainText(text: string): string {
  const start = text.trimStart().slice(0, LONGEST + 1);
  const plain = start
    .replace(/[\p{Cc}\p{Cf}]+/gu, ' ')
    .trim()
    .slice(0, LONGEST);
  return start.length > LONGEST ? `${plain}…` : plain;
}

/** Longer texts are no name of a column or a unit. */
const LONGEST_NAME = 80;

/** What a name comes down to: `Ball_Speed`, `ballSpeed` and `ball speed` are one. Empty for a text too long. */
export function squashed(text: string): string {
  if (text.length > LONGEST_NAME) return '';
  return text.toLowerCase().replace(/[^\p{L}\p{N}%°º]/gu, '');
}
