import { escaped } from '../lib/text.js';
import type { Messages } from './catalogue/messages.js';
import { h } from './dom.js';
import { tableElement } from './parts.js';
import type { SheetModel } from './protocol.js';
import type { Study } from './study.js';

/** The sheet as one element: head, three sentences, two pictures, one table, note, caution. */
export function sheetElement(model: SheetModel, study: Study, days: string, words: Messages): HTMLElement {
  const { sheet } = words;
  const about = [study.date === '' ? days : study.date, study.place].filter((each) => each !== '');
  const heading = study.player === '' ? sheet.title : study.player;
  const sentences = model.sentences.map((sentence, i) =>
    h('div', { class: 'said' }, h('h3', {}, sheet.heads[i as 0 | 1 | 2]), h('p', {}, sentence)),
  );
  const pictures = model.pictures.map(({ title, says, markup }) => {
    const drawing = h('div', { class: 'drawing' });
    // As in every chart of the page, all text in it was escaped where it was put in.
    drawing.innerHTML = markup;
    return h('figure', {}, h('figcaption', {}, h('h3', {}, title), h('p', {}, says)), drawing);
  });
  return h(
    'article',
    { class: 'sheet' },
    h('header', {}, h('h2', {}, heading), h('p', {}, about.join(' · '))),
    h('div', { class: 'three' }, ...sentences),
    ...(study.note === '' ? [] : [h('p', { class: 'remark' }, study.note)]),
    h('div', { class: 'pictures' }, ...pictures),
    tableElement(model.tableTitle, model.table),
    h('p', { class: 'caution' }, model.caution),
    h('p', { class: 'small' }, model.small),
  );
}

/** The sheet as a file of its own, which runs and fetches nothing. */
export function sheetFile(sheet: HTMLElement, style: string, language: string, title: string): string {
  return [
    '<!doctype html>',
    `<html lang="${escaped(language)}"><head><meta charset="utf-8">`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title><style>${style}</style></head>`,
    `<body class="alone"><main>${sheet.outerHTML}</main></body></html>\n`,
  ].join('\n');
}

/** The name of a file of this study: player, date and what it is, in plain letters. */
export function fileNameFor({ player, date }: Study, days: string, what: string): string {
  const parts = [player, date === '' ? (days.split(' ')[0] ?? '') : date, what];
  const plain = parts
    .map((part) =>
      part
        .normalize('NFKD')
        .replace(/[^\p{L}\p{N}]+/gu, '-')
        .replace(/^-|-$/g, '')
        .toLowerCase(),
    )
    .filter((part) => part !== '');
  return plain.join('-');
}
