import type { Sheet, TableColumn } from '../lib/sheet.js';
import type { Messages } from './catalogue/messages.js';
import { h } from './dom.js';
import type { Answer, ChartPart, Part } from './protocol.js';

/** A table with a caption for those who hear it; columns and first cells are named as headings of their cells. */
export function tableElement(title: string, { columns, rows }: Sheet): HTMLElement {
  const head = columns.map(({ head: name, unit, text }) =>
    h(
      'th',
      { scope: 'col', class: text === true ? 'text' : undefined },
      name,
      ...(unit === undefined || unit === '' ? [] : [h('span', { class: 'unit' }, unit)]),
    ),
  );
  const body = rows.map((row) =>
    h('tr', {}, ...row.map((cell, i) => cellElement(cell, columns[i], i === 0 && columns[0]?.text === true))),
  );
  const table = h(
    'table',
    {},
    h('caption', { class: 'unseen' }, title),
    h('thead', {}, h('tr', {}, ...head)),
    h('tbody', {}, ...body),
  );
  // Wide tables scroll in a place of their own, which the keyboard must reach.
  return h('div', { class: 'scroll', tabindex: '0', role: 'region', 'aria-label': title }, table);
}

function cellElement(
  { value, small = [] }: Sheet['rows'][number][number],
  column: TableColumn | undefined,
  heads: boolean,
): HTMLElement {
  const ranges = small.map((each) => h('span', { class: 'range' }, each));
  const kind = column?.text === true ? 'text' : undefined;
  return heads
    ? h('th', { scope: 'row', class: kind }, value, ...ranges)
    : h('td', { class: kind }, value, ...ranges);
}

/** A chart with its sentence; the figures are folded away below it. */
export function chartElement(part: ChartPart, id: string, words: Messages): HTMLElement {
  const drawing = h('div', { class: 'drawing' });
  // Charts are made of figures and of texts escaped where they are put in; the content policy runs nothing from them.
  drawing.innerHTML = part.markup;
  return h(
    'figure',
    {},
    h('figcaption', {}, h('h4', {}, part.title), h('p', {}, part.says)),
    drawing,
    h('details', { id }, h('summary', {}, words.page.figures), tableElement(part.title, part.figures)),
  );
}

function partElement(part: Part, id: string, words: Messages): HTMLElement {
  switch (part.kind) {
    case 'chart':
      return chartElement(part, id, words);
    case 'table':
      return h('div', {}, h('h4', {}, part.title), tableElement(part.title, part.sheet));
    case 'notes':
      return h(
        'details',
        { id, class: 'notes' },
        h('summary', {}, part.title),
        h('ul', {}, ...part.items.map((item) => h('li', {}, item))),
      );
  }
}

/** The content below the heading of a question: the answer in words, then what shows it. */
export function answerElements({ id, says, parts }: Answer, words: Messages): readonly HTMLElement[] {
  const [first = words.page.noAnswer, ...rest] = says;
  return [
    h('p', { class: 'answer' }, first),
    ...rest.map((each) => h('p', {}, each)),
    ...parts.map((part, i) => partElement(part, `${id}-${i}`, words)),
  ];
}
