/** Which comes first where a date is written in figures only. */
export type DateOrder = 'day-first' | 'month-first';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
/** Two figures of a year from here up mean the last century; common practice, no source. */
const CENTURY = 70;
/** A date, with the time of day behind it, has fewer characters. */
const LONGEST = 40;

type Parts =
  | { readonly kind: 'known'; readonly day: string }
  | { readonly kind: 'open'; readonly a: number; readonly b: number; readonly year: number };

/** Dates of a file in one way of writing, and what a reader should know of it. */
export interface DatesRead {
  /** By the text of the file: YYYY-MM-DD. A text that is no date known here is left out. */
  readonly days: ReadonlyMap<string, string>;
  readonly notes: readonly string[];
}

/**
 * Reads the dates of a column as YYYY-MM-DD. Of `3/5/2026` the order is what other dates of the column show; where
 * none shows it, the day comes first, which is said.
 */
export function readDates(texts: Iterable<string>, asked: DateOrder | undefined): DatesRead {
  const parts = new Map<string, Parts>();
  for (const text of texts) {
    const read = partsOf(text);
    if (read !== undefined) parts.set(text, read);
  }
  const open = [...parts.values()].flatMap((each) => (each.kind === 'open' ? [each] : []));
  const dayFirst = open.filter(({ a }) => a > 12).length;
  const monthFirst = open.filter(({ b }) => b > 12).length;
  const order = asked ?? (monthFirst > dayFirst ? 'month-first' : 'day-first');
  const days = new Map<string, string>();
  for (const [text, read] of parts) {
    const day =
      read.kind === 'known'
        ? read.day
        : order === 'day-first'
          ? dayText(read.year, read.b, read.a)
          : dayText(read.year, read.a, read.b);
    if (day !== undefined) days.set(text, day);
  }
  const notes: string[] = [];
  const example = [...parts].find(([, read]) => read.kind === 'open' && read.a !== read.b)?.[0];
  if (asked === undefined && example !== undefined && dayFirst === 0 && monthFirst === 0) {
    notes.push(
      `the date "${example}" is read as ${days.get(example)}, day first; it could be month first: dates like 2026-05-31 leave no doubt`,
    );
  }
  return { days, notes };
}

function partsOf(text: string): Parts | undefined {
  if (text.length > LONGEST) return undefined;
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?!\d)/u.exec(text);
  if (iso !== null) return known(dayText(Number(iso[1]), Number(iso[2]), Number(iso[3])));
  const figures = /^(\d{1,2})[-/. ]{1,2}(\d{1,2})[-/. ]{1,2}(\d{4}|\d{2})(?!\d)/u.exec(text);
  if (figures !== null) {
    return { kind: 'open', a: Number(figures[1]), b: Number(figures[2]), year: yearOf(figures[3]) };
  }
  const dayName = /^(\d{1,2})[-. ]{0,2}([a-z]{3})[a-z]*[-.,\s]{0,3}(\d{4}|\d{2})(?!\d)/iu.exec(text);
  if (dayName !== null) return known(dayText(yearOf(dayName[3]), monthOf(dayName[2]), Number(dayName[1])));
  const monthName = /^([a-z]{3})[a-z]*[-. ]{0,2}(\d{1,2})[-.,\s]{1,3}(\d{4}|\d{2})(?!\d)/iu.exec(text);
  if (monthName === null) return undefined;
  return known(dayText(yearOf(monthName[3]), monthOf(monthName[1]), Number(monthName[2])));
}

function known(day: string | undefined): Parts | undefined {
  return day === undefined ? undefined : { kind: 'known', day };
}

function monthOf(name = ''): number {
  return MONTHS.indexOf(name.toLowerCase()) + 1;
}

function yearOf(figures = ''): number {
  const year = Number(figures);
  if (figures.length > 2) return year;
  return year < CENTURY ? 2000 + year : 1900 + year;
}

/** YYYY-MM-DD of a day there is; undefined for 31 February. */
function dayText(year: number, month: number, day: number): string | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  const isThere =
    date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return isThere ? date.toISOString().slice(0, 10) : undefined;
}
