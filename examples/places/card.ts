import type { Display } from '../lib/display.js';
import { GRID, INK, MUTED, PANEL } from '../lib/palette.js';
import { escaped, fixed } from '../lib/text.js';
import type { Elsewhere } from './elsewhere.js';
import { CARD_NOTE, thereWords } from './words.js';

/** Styles of the card: 148 mm wide on paper, to be cut out. */
export const CARD_STYLE: string = `
.pocket { width: 148mm; max-width: 100%; border: 1.2px dashed ${MUTED}; padding: 4mm 5mm 3mm; margin: 10px 0; background: #fff; overflow-x: auto; }
.pocket h3 { margin: 0; font-size: 14px; display: flex; justify-content: space-between; }
.pocket h3 span { font-weight: normal; color: ${MUTED}; font-size: 12px; }
.pocket table { margin: 2mm 0 1.5mm; font-size: 13px; }
.pocket th, .pocket td { padding: 1.6px 4px; text-align: center; }
.pocket th:first-child, .pocket td:first-child { text-align: left; white-space: nowrap; }
.pocket th { font-size: 11.5px; line-height: 1.25; }
.pocket th small { display: block; color: ${MUTED}; font-weight: normal; font-size: 10.5px; white-space: nowrap; }
.pocket tbody tr:nth-child(even) td { background: ${PANEL}; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.pocket td { border-bottom: 1px solid ${GRID}; }
.pocket td.now { font-weight: 700; color: ${INK}; }
.pocket p { margin: 0; font-size: 10.5px; color: ${MUTED}; max-width: none; }
@media print { .pocket { break-inside: avoid; } .pocket table { font-size: 9.6pt; } .pocket th { font-size: 8.4pt; }
  .pocket th small, .pocket p { font-size: 7.2pt; } .pocket h3 { font-size: 10.5pt; } .pocket h3 span { font-size: 8.4pt; } }`;

/** The card: carries in whole units, and what a crosswind does sideways. */
export function pocketCard({ clubs, places }: Elsewhere, display: Display): string {
  const { distance } = display;
  const heads = [
    '<th>club</th>',
    '<th>as hit<small>measured</small></th>',
    ...places.map(({ head: [above, below] }) => `<th>${escaped(above)}<small>${escaped(below)}</small></th>`),
  ];
  const rows = clubs.map(({ club, carry, there }) => {
    const cells = places.map(({ key }) =>
      key === 'across'
        ? `<td>↔ ${thereWords(Math.abs(there[key].drift.value), there[key].drift, display)}</td>`
        : `<td>${thereWords(there[key].carry, there[key].carryChange, display)}</td>`,
    );
    return `<tr><td>${escaped(club)}</td><td class="now">${fixed(distance.of(carry.mean))}</td>${cells.join('')}</tr>`;
  });
  return [
    '<div class="pocket">',
    `<h3>Distances elsewhere <span>carry, ${distance.unit}; ↔ sideways, ${distance.unit}</span></h3>`,
    `<table><thead><tr>${heads.join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`,
    `<p>${escaped(CARD_NOTE)}</p></div>`,
  ].join('');
}
