import { messages as english, type Messages } from '../../examples/page/catalogue/messages.js';

/** Letters of no language: each Latin letter as one of the Old Italic alphabet, so that none is left by chance. */
function madeUp(text: string): string {
  return text.replace(/[a-z]/giu, (letter) =>
    String.fromCodePoint(0x10300 + (letter.toLowerCase().charCodeAt(0) - 97)),
  );
}

function translated<T>(value: T): T {
  if (typeof value === 'string') return madeUp(value) as T;
  if (typeof value === 'function') {
    return ((...facts: unknown[]) => translated((value as (...given: unknown[]) => unknown)(...facts))) as T;
  }
  if (Array.isArray(value)) return value.map(translated) as T;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, translated(each)])) as T;
}

/** The catalogue in the made-up language. */
export const messages: Messages = { ...translated({ ...english }), language: 'und' };
