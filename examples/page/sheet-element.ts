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
  const copy = document.implementation.createHTMLDocument(title);
  const policy = copy.createElement('meta');
  policy.httpEquiv = 'Content-Security-Policy';
  policy.content = "default-src 'none'; style-src 'unsafe-inline'";
  const charset = copy.createElement('meta');
  charset.setAttribute('charset', 'utf-8');
  const view = copy.createElement('meta');
  view.name = 'viewport';
  view.content = 'width=device-width, initial-scale=1';
  const styles = copy.createElement('style');
  styles.textContent = style;
  copy.head.prepend(charset, policy, view);
  copy.head.append(styles);
  copy.documentElement.lang = language;
  copy.body.className = 'alone';
  const main = copy.createElement('main');
  main.append(copy.importNode(sheet, true));
  copy.body.append(main);
  return `<!doctype html>\n${copy.documentElement.outerHTML}\n`;
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
