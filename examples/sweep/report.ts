import { sum } from 'd3-array';
import type { OutputIndices, SweepAbout } from 'fairflight/sweep';
import { axes, box, type Frame, frame, key, line, svg, text, whisker } from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { figure, htmlPage, htmlTable, kept } from '../lib/page.js';
import { BLUE, GREEN, INK, ORANGE, PURPLE, VERMILION } from '../lib/palette.js';
import { terminalTable } from '../lib/table.js';
import { escaped, fixed, grouped, wrapped } from '../lib/text.js';
import type { MainEffect } from './effects.js';
import { FACTORS, type StudyFactor } from './study.js';

/** What the study found. */
export interface Findings {
  readonly about: SweepAbout;
  readonly seed: number;
  readonly indices: OutputIndices;
  /** How the mean carry moves with each factor, in the order of the factors. */
  readonly effects: readonly MainEffect[];
  /** Rows without a carry. */
  readonly without: number;
}

type Interval = { readonly low: number; readonly high: number };

const MEANING =
  'First order: the share of the variance of carry that would go if this factor alone were known. Total: the share that would stay if all but this factor were known. The difference is what it does together with other factors.';
const LIMITS =
  'The shares belong to these ranges, each factor drawn evenly over its own and independently of the others: widen a range and its share grows. They describe the models, not a player; spin from a driver’s delivery is known to about ±13 %.';

function range(findings: Findings, { of, unit }: StudyFactor, j: number): string {
  const { factors } = findings.about.design as { readonly factors: readonly { from: number; to: number }[] };
  const factor = factors[j];
  return `${fixed(of(factor?.from ?? Number.NaN))} to ${fixed(of(factor?.to ?? Number.NaN))} ${unit}`;
}

function interval({ low, high }: Interval): string {
  return `${fixed(low, 3)} to ${fixed(high, 3)}`;
}

function sentences({ indices, about, without }: Findings, { distance }: Display): readonly string[] {
  const alone = sum(indices.factors, ({ firstOrder }) => firstOrder);
  const [most] = [...indices.factors.keys()].sort(
    (a, b) => (indices.factors[b]?.total ?? 0) - (indices.factors[a]?.total ?? 0),
  );
  const first = FACTORS[most ?? 0]?.label ?? '';
  return [
    `Carry has mean ${fixed(distance.of(indices.mean), 1)} ${distance.unit} and standard deviation ${fixed(distance.of(Math.sqrt(indices.variance)), 1)} ${distance.unit} over ${grouped(about.rows)} flights.`,
    `Most of the variance comes from ${first}. One at a time the factors account for ${fixed(100 * alone, 1)} % of it; acting together they account for the rest.`,
    ...(without === 0 ? [] : [`${grouped(without)} rows could not be computed; the status column says why.`]),
    ...(indices.excluded === 0
      ? []
      : [`${grouped(indices.excluded)} groups of rows with such a row are left out of the indices.`]),
  ];
}

/** The findings as text for the terminal. */
export function terminalReport(findings: Findings, display: Display): string {
  const rows = findings.indices.factors.map((each, j) => {
    const factor = FACTORS[j] as StudyFactor;
    return [
      factor.label,
      range(findings, factor, j),
      fixed(each.firstOrder, 3),
      interval(each.firstOrderInterval),
      fixed(each.total, 3),
      interval(each.totalInterval),
    ];
  });
  return [
    'WHAT CARRY DEPENDS ON: Sobol indices, with 95 % intervals',
    terminalTable(['factor', 'range', 'first order', '95 %', 'total', '95 %'], rows, 2),
    '',
    ...[...sentences(findings, display), MEANING, LIMITS].map((each) => wrapped(each)),
    '',
  ].join('\n');
}

/** The findings as one self-contained page. */
export function studyPage(findings: Findings, file: string, display: Display): string {
  const { about, indices } = findings;
  const rows = indices.factors.map((each, j) => {
    const factor = FACTORS[j] as StudyFactor;
    return [
      escaped(factor.label),
      escaped(range(findings, factor, j)),
      `${fixed(each.firstOrder, 3)}<span class="range">${interval(each.firstOrderInterval)}</span>`,
      `${fixed(each.total, 3)}<span class="range">${interval(each.totalInterval)}</span>`,
    ];
  });
  const columns = [
    { head: 'factor', text: true },
    { head: 'range', text: true },
    { head: 'first order', unit: '95 % interval' },
    { head: 'total', unit: '95 % interval' },
  ];
  return htmlPage({
    title: 'What the carry of a drive depends on',
    lead: `<p class="lead">${sentences(findings, display).map(escaped).join(' ')}</p>`,
    sections: [
      kept(
        'Sobol indices of carry',
        escaped(MEANING),
        key([
          { name: 'first order', colour: BLUE, mark: 'patch' },
          { name: 'total', colour: ORANGE, mark: 'patch' },
        ]) +
          figure(indexChart(indices), 'Whiskers: 95 % intervals.') +
          htmlTable(columns, rows),
      ),
      kept(
        'Mean carry along each factor',
        'Carry averaged over everything else, from the low to the high end of each factor’s range.',
        figure(effectChart(findings, display), escaped(LIMITS)),
      ),
    ],
    foot: `${file}: ${about.library} ${about.version}, ${about.models.aerodynamics}, ${about.models.strike ?? ''}; Sobol sequence, scrambled with seed ${findings.seed}; estimators of Saltelli et al. 2010 and Jansen 1999.`,
  });
}

const MARGIN = { left: 116, right: 24 };

function indexChart(indices: OutputIndices): string {
  const count = FACTORS.length;
  const top = Math.max(0.1, ...indices.factors.map(({ totalInterval }) => totalInterval.high));
  const f = frame({
    width: 760,
    height: 50 * count + 60,
    x: { label: 'share of the variance of carry', domain: [0, top * 1.05], format: (v) => fixed(v, 2) },
    y: { label: '', domain: [count, 0], ticks: 0 },
    margin: MARGIN,
  });
  const bars = indices.factors.flatMap((each, j) => [
    box(f, [0, j + 0.16], [Math.max(0, each.firstOrder), j + 0.46], BLUE),
    box(f, [0, j + 0.54], [Math.max(0, each.total), j + 0.84], ORANGE),
    level(f, j + 0.31, each.firstOrderInterval),
    level(f, j + 0.69, each.totalInterval),
    text(f, [0, j + 0.5], FACTORS[j]?.label ?? '', { anchor: 'end', dx: -10, dy: 4 }),
  ]);
  return svg(f, 'Sobol indices of carry', axes(f), ...bars);
}

/** A whisker that lies on its side. */
function level(f: Frame, y: number, { low, high }: Interval): string {
  const turned = { ...f, x: f.y, y: f.x } as Frame;
  return `<g transform="matrix(0 1 1 0 0 0)">${whisker(turned, y, Math.max(0, low), Math.max(0, high), INK)}</g>`;
}

const LINES = [VERMILION, BLUE, GREEN, ORANGE, PURPLE, INK];
const DASHES = [undefined, undefined, undefined, '7 4', '2 4', '9 3 2 3'];

function effectChart({ effects }: Findings, { distance }: Display): string {
  const curves = effects.map(({ mean }) =>
    mean.map((value, k) => [(k + 0.5) / mean.length, distance.of(value)] as const),
  );
  const all = curves.flat().map(([, y]) => y);
  const f = frame({
    width: 760,
    height: 380,
    x: {
      label: 'place in the range of the factor',
      domain: [0, 1],
      ticks: 2,
      format: (v) => (v === 0 ? 'low end' : v === 1 ? 'high end' : 'middle'),
    },
    y: { label: `mean carry (${distance.unit})`, domain: [Math.min(...all) - 5, Math.max(...all) + 5] },
    margin: { right: 40 },
  });
  const drawn = curves.map((curve, j) => {
    const dash = DASHES[j];
    return line(f, curve, { colour: LINES[j] ?? INK, width: 2.4, smooth: true, ...(dash && { dash }) });
  });
  const entries = FACTORS.map(({ label }, j) => ({
    name: label,
    colour: LINES[j] ?? INK,
    mark: (['line', 'line', 'line', 'dashes', 'dots', 'dashes'] as const)[j] ?? ('line' as const),
  }));
  return `${key(entries)}${svg(f, 'Mean carry along each factor', axes(f), ...drawn)}`;
}
