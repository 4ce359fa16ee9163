/** The text of a file, and notes on how it was read. */
export interface DecodedText {
  readonly text: string;
  readonly notes: readonly string[];
}

/** Reads bytes as UTF-8 or, as spreadsheets write it too, as UTF-16 or Windows-1252. */
export function decodedText(bytes: Uint8Array): DecodedText {
  const encoding = encodingOf(bytes);
  const text = new TextDecoder(encoding).decode(bytes);
  return { text, notes: encoding === 'utf-8' ? [] : [`the file is read as ${encoding}`] };
}

/** The encoding of a text; `more` says that the bytes may end inside a sign. */
export function encodingOf(bytes: Uint8Array, more = false): 'utf-8' | 'utf-16le' | 'windows-1252' {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: more });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}
