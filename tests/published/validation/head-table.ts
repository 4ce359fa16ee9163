import { grouped } from './grouped.js';
import { fixed, show, table } from './markdown.js';
import type { ComparedRow } from './row.js';
import { counted, type Score, scoreOf, subjectOf, subjects } from './score.js';

/** Decimals of a mean error, by unit. */
const DIGITS: Readonly<Record<string, number>> = { rpm: 0, 'rpm/s': 0, '': 3, s: 2 };
/** A subject with more units than this has no mean that says anything. */
const MOST_UNITS = 3;

function meansOf({ means }: Score): string {
  if (means.size === 0 || means.size > MOST_UNITS) return '—';
  return [...means].map(([unit, mean]) => `${fixed(mean, DIGITS[unit] ?? 1)} ${unit}`.trim()).join('; ');
}

function rmsOf({ rows, rms }: Score): string {
  return rows === 0 ? '—' : fixed(rms, 2);
}

function shareOf({ rows, within }: Score): string {
  return rows === 0 ? '—' : `${within} of ${rows}, ${fixed((100 * within) / rows, 0)} %`;
}

function line(name: string, rows: readonly ComparedRow[]): string[] {
  const [before, now] = [scoreOf(rows, 'before'), scoreOf(rows, 'now')];
  const figures = [meansOf, rmsOf, shareOf].flatMap((of) => [of(before), of(now)]);
  return [name, String(rows.length), ...figures];
}

/** The lines of the head table: subjects, then what they add up to, then what is counted apart. */
export function headLines(all: readonly ComparedRow[]): string[][] {
  const rows = counted(all);
  const graded = rows.filter(({ grade }) => grade === 'A' || grade === 'B');
  const apart = {
    'Doubtful: contradicted by a graded source': all.filter(({ doubtful }) => doubtful !== undefined),
    'Set aside: about something the model does not claim': all.filter(
      ({ setAside }) => setAside !== undefined,
    ),
  };
  return [
    ...subjects
      .map((subject) => [subject, rows.filter((row) => subjectOf(row) === subject)] as const)
      .filter(([, members]) => members.length > 0)
      .map(([subject, members]) => line(subject, members)),
    line('**All of these**', rows),
    line('**Of these, grade A and B**', graded),
    line(
      'Grade A and B, and not used in a fit',
      graded.filter(({ usedInFit }) => !usedInFit),
    ),
    ...Object.entries(apart).map(([name, members]) => line(name, members)),
  ];
}

/** The columns of {@link headLines}. */
export const headColumns: readonly string[] = [
  'subject',
  'rows',
  'mean error before',
  'now',
  'rms of error over tolerance before',
  'now',
  'within tolerance before',
  'now',
];

export function headTable(all: readonly ComparedRow[]): string {
  return table(headColumns, 'lrrrrrrr', headLines(all));
}

/** Mean and worst error of every quantity, in its unit. */
export function quantityTable(all: readonly ComparedRow[]): string {
  const byQuantity = grouped(all, ({ group, quantity, unit }) => `${group}\n${quantity}\n${unit}`);
  const rows = [...byQuantity.entries()].map(([key, members]) => {
    const [group = '', quantity = '', unit = ''] = key.split('\n');
    const mean = members.reduce((sum, { error }) => sum + error, 0) / members.length;
    const worst = members.reduce((a, b) => (Math.abs(b.error) > Math.abs(a.error) ? b : a));
    const tolerance = Math.max(...members.map((row) => row.tolerance));
    return [
      group,
      quantity,
      unit,
      String(members.length),
      show(mean, tolerance),
      show(worst.error, tolerance),
      String(members.filter(({ within }) => !within).length),
    ];
  });
  return table(
    ['table', 'quantity', 'unit', 'rows', 'mean error', 'worst error', 'outside tolerance'],
    'lllrrrr',
    rows,
  );
}
