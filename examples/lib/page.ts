import type { ShotTable } from 'fairflight/schema';
import { BLUE, GRID, INK, MUTED, PANEL, PAPER, VERMILION } from './palette.js';
import type { Sheet, TableColumn } from './sheet.js';
import { readingSummary, tableNotes } from './shot-table.js';
import { escaped } from './text.js';

/** A page that needs nothing but itself. */
export interface Page {
  readonly title: string;
  /** One or two sentences under the title: whose shots, where, when. HTML. */
  readonly lead: string;
  /** Body sections. HTML. */
  readonly sections: readonly string[];
  /** Small print of this page, above what stands below every page. */
  readonly foot?: string;
  /** Styles this page needs beside the shared ones. */
  readonly style?: string;
}

const STYLE = `
@page { size: A4 portrait; margin: 14mm 13mm; }
* { box-sizing: border-box; }
html { background: ${PAPER}; }
body { margin: 0 auto; padding: 28px 24px 40px; max-width: 900px; color: ${INK}; background: ${PAPER};
  font: 15px/1.5 system-ui, -apple-system, 'Segoe UI', 'DejaVu Sans', sans-serif; }
h1 { font-size: 27px; line-height: 1.2; margin: 0 0 6px; letter-spacing: -0.01em; }
h2 { font-size: 19px; line-height: 1.25; margin: 34px 0 6px; padding-top: 12px; border-top: 2px solid ${INK}; }
h3 { font-size: 15.5px; margin: 18px 0 4px; }
p { margin: 4px 0 9px; max-width: 76ch; }
ul, ol { margin: 4px 0 10px; padding-left: 22px; max-width: 76ch; }
.lead { color: ${MUTED}; }
.note { color: ${MUTED}; font-size: 13px; }
.banner { background: ${PANEL}; border-left: 4px solid ${VERMILION}; padding: 9px 14px; margin: 12px 0; }
.card { background: ${PANEL}; border-left: 4px solid ${BLUE}; padding: 10px 16px; margin: 14px 0; }
.card > :first-child, .banner > :first-child { margin-top: 0; }
.card p:last-child, .card ul:last-child, .banner p:last-child { margin-bottom: 0; }
figure { margin: 10px 0 6px; }
figure svg { display: block; width: 100%; height: auto; }
.keys { margin: 8px 0 2px; max-width: none; font-size: 12.5px; color: ${INK}; }
.key { display: inline-flex; align-items: center; gap: 5px; margin-right: 16px; white-space: nowrap; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 13px; font-variant-numeric: tabular-nums; margin: 10px 0; }
th { text-align: right; font-weight: 600; border-bottom: 1.5px solid ${INK}; padding: 4px 7px; vertical-align: bottom; }
td { text-align: right; border-bottom: 1px solid ${GRID}; padding: 4px 7px; vertical-align: top; }
th.text, td.text { text-align: left; }
td.text { font-variant-numeric: normal; }
td.text:first-child { white-space: nowrap; }
.unit, .range { display: block; color: ${MUTED}; font-weight: normal; font-size: 11.5px; white-space: nowrap; }
.swatch { display: inline-block; width: 11px; height: 11px; border-radius: 2px; margin-right: 6px; vertical-align: -1px;
  print-color-adjust: exact; -webkit-print-color-adjust: exact; }
footer { margin-top: 30px; padding-top: 10px; border-top: 1px solid ${GRID}; color: ${MUTED}; font-size: 12.5px; }
@media print {
  body { max-width: none; padding: 0; font-size: 9.4pt; line-height: 1.4; }
  h1 { font-size: 18pt; } h2 { font-size: 12.5pt; margin-top: 13pt; padding-top: 6pt; } h3 { font-size: 10.5pt; }
  p, ul, ol { max-width: none; } table { font-size: 8.2pt; } .range, .unit { font-size: 7.2pt; }
  td, th { padding: 2.5pt 4pt; } .note, .keys, footer { font-size: 8pt; }
  h2, h3, .keys { break-after: avoid; }
  figure, tr, .card, .banner, .keep, li { break-inside: avoid; }
  .scroll { overflow: visible; }
  .page { break-before: page; }
  svg, .banner, .card { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}`;

const MADE_WITH =
  'Made with fairflight. Every formula and its source: see the documentation of the library. This page holds all it shows; nothing is fetched.';

/** The whole page as one HTML text: styles inside, charts inline, nothing fetched. */
export function htmlPage(page: Page): string {
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(page.title)}</title><style>${STYLE}${page.style ?? ''}</style></head><body>`,
    `<header><h1>${escaped(page.title)}</h1>${page.lead}</header>`,
    `<main>${page.sections.join('\n')}</main>`,
    `<footer>${paragraphs([page.foot ?? '', MADE_WITH])}</footer></body></html>\n`,
  ].join('\n');
}

/** A table; cells are HTML. */
export function htmlTable(columns: readonly TableColumn[], rows: readonly (readonly string[])[]): string {
  const head = columns.map(({ head, unit, text }) => {
    const small = unit === undefined ? '' : `<span class="unit">${escaped(unit)}</span>`;
    return `<th scope="col"${text === true ? ' class="text"' : ''}>${escaped(head)}${small}</th>`;
  });
  const body = rows.map((row) => {
    const cells = row.map((cell, i) => `<td${columns[i]?.text === true ? ' class="text"' : ''}>${cell}</td>`);
    return `<tr>${cells.join('')}</tr>`;
  });
  return `<div class="scroll"><table><thead><tr>${head.join('')}</tr></thead><tbody>${body.join('')}</tbody></table></div>`;
}

/** A table of plain text; `swatch` colours the row. */
export function htmlSheet({ columns, rows }: Sheet, swatch?: (row: number) => string): string {
  return htmlTable(
    columns,
    rows.map((row, i) =>
      row.map(({ value, small = [] }, j) => {
        const colour =
          j > 0 || swatch === undefined ? '' : `<span class="swatch" style="background:${swatch(i)}"></span>`;
        return `${colour}${escaped(value)}${small.map((each) => `<span class="range">${escaped(each)}</span>`).join('')}`;
      }),
    ),
  );
}

/** A chart with its caption. */
export function figure(chart: string, caption = ''): string {
  return `<figure>${chart}${caption === '' ? '' : `<figcaption class="note">${caption}</figcaption>`}</figure>`;
}

/** A section that stays on one sheet of paper. */
export function kept(title: string, intro: string, body: string): string {
  return section(title, intro, body, ' class="keep"');
}

/** A section under its own heading. */
export function section(title: string, intro: string, body: string, attributes = ''): string {
  const lead = intro === '' ? '' : `<p>${intro}</p>`;
  return `<section${attributes}><h2>${title}</h2>${lead}${body}</section>`;
}

/** Sentences, each a paragraph; empty ones are left out. */
export function paragraphs(texts: readonly string[]): string {
  return texts
    .filter((each) => each !== '')
    .map((each) => `<p>${escaped(each)}</p>`)
    .join('');
}

/** Sentences as a list. */
export function list(items: readonly string[]): string {
  return `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;
}

/** Longer lists may break over two sheets of paper. */
const MOST_KEPT = 20;

/** What was left out or set aside, with every reason; empty when everything was used. */
export function leftOut(table: ShotTable): string {
  const items = tableNotes(table);
  if (items.length === 0) return '';
  const body = `<p>${escaped(readingSummary(table))}.</p>${list(items)}`;
  return (items.length > MOST_KEPT ? section : kept)('Rows and columns left out', '', body);
}

/** The comments of a file, such as that its data are invented, where nobody overlooks them. */
export function comments(table: { readonly comments: readonly string[] }): string {
  return table.comments.length === 0 ? '' : `<div class="banner">${paragraphs(table.comments)}</div>`;
}
