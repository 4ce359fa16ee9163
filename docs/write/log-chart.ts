import { scaleLog } from 'd3-scale';
import { line, symbol, symbolsFill } from 'd3-shape';

/** One line of a chart. */
export interface Series {
  readonly name: string;
  /** Heading of the legend under which it stands; the lines of a group share a colour unless it is the only one. */
  readonly group: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** A chart with two logarithmic axes. */
export interface LogChart {
  readonly title: string;
  readonly xLabel: string;
  readonly yLabel: string;
  readonly series: readonly Series[];
  readonly xTick: (value: number) => string;
  readonly yTick: (value: number) => string;
  /** Values of x to mark by an upright line. */
  readonly marks?: readonly number[];
}

const WIDTH = 960;
const HEIGHT = 560;
const PLOT = { left: 74, right: 650, top: 46, bottom: 504 };
/** Colours told apart with any kind of colour vision (Okabe and Ito 2008, from memory), ours first. */
const COLOURS = ['#d55e00', '#0072b2', '#009e73', '#8a6d00'];
const TEXT = 'font-family="system-ui, sans-serif" font-size="12" fill="#222"';

const decades = (values: readonly number[]): [number, number] => [
  10 ** Math.floor(Math.log10(Math.min(...values)) + 1e-9),
  10 ** Math.ceil(Math.log10(Math.max(...values)) - 1e-9),
];
const between = ([low, high]: [number, number]): number[] =>
  Array.from({ length: Math.round(Math.log10(high / low)) + 1 }, (_, i) => low * 10 ** i);
const round = (value: number): string => value.toFixed(1);
const plain = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');

/** Draws a chart as an SVG document. */
export function logChart(chart: LogChart): string {
  const points = chart.series.flatMap((series) => series.points);
  const xDomain = decades(points.map(([x]) => x));
  const yDomain = decades(points.map(([, y]) => y));
  const x = scaleLog(xDomain, [PLOT.left, PLOT.right]);
  const y = scaleLog(yDomain, [PLOT.bottom, PLOT.top]);
  const groups = [...new Set(chart.series.map((series) => series.group))];
  const path = line<readonly [number, number]>(
    ([px]) => x(px),
    ([, py]) => y(py),
  );

  const grid = [
    ...between(xDomain).map(
      (tick) =>
        `<path d="M${round(x(tick))} ${PLOT.top}V${PLOT.bottom}" stroke="#ddd"/><text x="${round(x(tick))}" y="${PLOT.bottom + 18}" text-anchor="middle" ${TEXT}>${plain(chart.xTick(tick))}</text>`,
    ),
    ...between(yDomain).map(
      (tick) =>
        `<path d="M${PLOT.left} ${round(y(tick))}H${PLOT.right}" stroke="#ddd"/><text x="${PLOT.left - 8}" y="${round(y(tick) + 4)}" text-anchor="end" ${TEXT}>${plain(chart.yTick(tick))}</text>`,
    ),
    ...(chart.marks ?? []).map(
      (mark) =>
        `<path d="M${round(x(mark))} ${PLOT.top}V${PLOT.bottom}" stroke="#777" stroke-dasharray="4 4"/>`,
    ),
  ];
  const drawn: string[] = [];
  let row = PLOT.top;
  for (const [g, group] of groups.entries()) {
    const colourOf = (i: number): string => COLOURS[(groups.length > 1 ? g : i) % COLOURS.length] as string;
    drawn.push(`<text x="672" y="${row + 4}" font-weight="bold" ${TEXT}>${plain(group)}</text>`);
    row += 20;
    for (const [i, series] of chart.series.filter((candidate) => candidate.group === group).entries()) {
      const colour = colourOf(i);
      const marker = symbol(symbolsFill[i % symbolsFill.length], 38)() ?? '';
      // The second round of marker shapes is drawn hollow.
      const fill = i < symbolsFill.length ? colour : '#fff';
      const at = (px: number, py: number): string =>
        `<path transform="translate(${round(px)} ${round(py)})" d="${marker}" fill="${fill}" stroke="${colour}"/>`;
      const curve = path([...series.points].sort((a, b) => a[0] - b[0])) ?? '';
      const width = g === 0 ? 2.4 : 1.3;
      drawn.push(
        `<path d="${curve.replace(/\d+\.\d+/g, (n) => round(Number(n)))}" fill="none" stroke="${colour}" stroke-width="${width}"/>`,
        ...series.points.map(([px, py]) => at(x(px), y(py))),
        at(680, row),
        `<text x="694" y="${row + 4}" ${TEXT}>${plain(series.name)}</text>`,
      );
      row += 19;
    }
    row += 8;
  }
  const height = Math.max(HEIGHT, row + 10);
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" role="img">
<title>${plain(chart.title)}</title>
<rect width="${WIDTH}" height="${height}" fill="#fff"/>
<text x="${PLOT.left}" y="26" font-weight="bold" ${TEXT.replace('12', '15')}>${plain(chart.title)}</text>
${grid.join('\n')}
<rect x="${PLOT.left}" y="${PLOT.top}" width="${PLOT.right - PLOT.left}" height="${PLOT.bottom - PLOT.top}" fill="none" stroke="#777"/>
<text x="${(PLOT.left + PLOT.right) / 2}" y="${PLOT.bottom + 42}" text-anchor="middle" ${TEXT}>${plain(chart.xLabel)}</text>
<text transform="translate(20 ${(PLOT.top + PLOT.bottom) / 2}) rotate(-90)" text-anchor="middle" ${TEXT}>${plain(chart.yLabel)}</text>
${drawn.join('\n')}
</svg>
`;
}
