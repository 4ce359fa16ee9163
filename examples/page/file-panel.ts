import type { Messages } from './catalogue/messages.js';
import { headerFor, MEANINGS, meaningOf, meaningSaid, NOT_USED } from './columns.js';
import { button, h, select } from './dom.js';
import { tableElement } from './parts.js';
import type { ReadFile } from './protocol.js';
import type { StudyFile } from './study.js';

/** What the file panel can ask for. */
export interface FileActs {
  readonly remove: (at: number) => void;
  readonly swap: () => void;
  readonly change: (at: number, change: Partial<StudyFile>) => void;
}

/** What was read from each file, and how to correct it. */
export function fileElements(
  files: readonly StudyFile[],
  read: readonly ReadFile[],
  words: Messages,
  acts: FileActs,
): readonly HTMLElement[] {
  const swap = files.length > 1 ? [button(words.page.swap, acts.swap, { id: 'swap', class: 'quiet' })] : [];
  const panels = files.map((file, at) => {
    const view = read[at];
    const when = at === files.length - 1 ? words.page.thisTime : words.page.lastTime;
    return h(
      'article',
      { class: 'file' },
      h('h3', {}, files.length > 1 ? `${when}: ${file.name}` : file.name),
      ...(view === undefined ? [] : readElements(file, view, at, words, acts)),
      button(words.page.remove(file.name), () => acts.remove(at), { id: `remove-${at}`, class: 'quiet' }),
    );
  });
  return [...panels.reverse(), ...swap];
}

function readElements(
  file: StudyFile,
  view: ReadFile,
  at: number,
  words: Messages,
  acts: FileActs,
): readonly HTMLElement[] {
  const { page } = words;
  return [
    ...view.comments.map((comment) => h('p', { class: 'comment' }, comment)),
    ...(view.problem === '' ? [] : [h('p', { class: 'problem', role: 'alert' }, view.problem)]),
    ...(view.says === '' ? [] : [h('p', { class: 'answer' }, view.says)]),
    ...(view.notes.length === 0 ? [] : [h('ul', {}, ...view.notes.map((note) => h('li', {}, note)))]),
    ...(view.columns.length === 0 ? [] : [columnElements(file, view, at, words, acts)]),
    ...(view.preview.rows.length === 0
      ? []
      : [
          h(
            'details',
            { id: `preview-${at}` },
            h('summary', {}, page.previewTitle),
            tableElement(page.previewTitle, view.preview),
          ),
        ]),
    ...(view.leftOut.length === 0
      ? []
      : [
          h(
            'details',
            { id: `left-out-${at}` },
            h('summary', {}, page.leftOutTitle(view.leftOut.length)),
            h('ul', {}, ...view.leftOut.map((line) => h('li', {}, line))),
          ),
        ]),
  ];
}

function columnElements(
  file: StudyFile,
  view: ReadFile,
  at: number,
  words: Messages,
  acts: FileActs,
): HTMLElement {
  const { page } = words;
  const name = (header: string, said: string): void =>
    acts.change(at, { columns: { ...file.columns, [header]: said } });
  const rows = view.columns.map(({ header, field, unit, sample }, i) => {
    const said = meaningSaid(file.columns[header]);
    const meaning = meaningOf(field) ?? said?.meaning;
    const shown = unit ?? said?.unit ?? '';
    const meanings = [
      { value: '', label: page.notUsed },
      ...MEANINGS.map((each) => ({ value: each.field, label: page.quantities[each.field] })),
    ];
    const units = [
      ...(shown === '' ? [{ value: '', label: page.foundUnit }] : []),
      ...(meaning?.units ?? []).map((each) => ({ value: each, label: each })),
    ];
    return h(
      'tr',
      {},
      h('th', { scope: 'row', class: 'text' }, header),
      h('td', { class: 'text' }, sample),
      h(
        'td',
        { class: 'text' },
        select(
          `meaning-${at}-${i}`,
          meanings,
          meaning?.field ?? '',
          (value) => {
            const chosen = MEANINGS.find((each) => each.field === value);
            name(header, chosen === undefined ? NOT_USED : headerFor(chosen, ''));
          },
          { 'aria-label': page.meaningFor(header) },
        ),
      ),
      h(
        'td',
        { class: 'text' },
        ...(meaning === undefined || units.length < 2
          ? []
          : [
              select(`unit-${at}-${i}`, units, shown, (value) => name(header, headerFor(meaning, value)), {
                'aria-label': page.unitFor(header),
              }),
            ]),
      ),
    );
  });
  const { header, sample, meaning, unit } = page.columnHead;
  const head = [header, sample, meaning, unit].map((each) => h('th', { scope: 'col', class: 'text' }, each));
  return h(
    'details',
    { id: `columns-${at}`, open: view.problem !== '' },
    h('summary', {}, page.columnsTitle),
    h('p', {}, page.columnsHelp),
    h(
      'div',
      { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': page.columnsTitle },
      h(
        'table',
        {},
        h('caption', { class: 'unseen' }, page.columnsTitle),
        h('thead', {}, h('tr', {}, ...head)),
        h('tbody', {}, ...rows),
      ),
    ),
    ...(view.columns.some(({ field }) => field === 'date') ? [datesElement(file, at, words, acts)] : []),
  );
}

/** Which comes first in dates that can be read both ways. */
function datesElement(file: StudyFile, at: number, { page }: Messages, acts: FileActs): HTMLElement {
  return h(
    'p',
    { class: 'field' },
    h('label', { for: `dates-${at}` }, page.dates),
    select(
      `dates-${at}`,
      (['', 'day-first', 'month-first'] as const).map((value) => ({
        value,
        label: page.dateOrders[value],
      })),
      file.dates,
      (value) => acts.change(at, { dates: value as StudyFile['dates'] }),
    ),
  );
}
