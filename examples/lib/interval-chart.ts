import { type AxisSpec, CHART_WIDTH, frame, line, mark, NARROW, type Point, svg, text } from './chart.js';
import { GRID, INK, MUTED } from './palette.js';

/** One row: an estimate with its interval. */
export interface IntervalRow {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What stands at the right of the row. */
  readonly says: string;
  readonly colour: string;
}

/** What is drawn. */
export interface IntervalChart {
  readonly title: string;
  readonly axis: string;
  readonly rows: readonly IntervalRow[];
  /** Value that means "nothing", drawn as a line. */
  readonly nothing: number;
  /** Width kept for the names and for what the rows say; on a narrow chart both stand above their row. */
  readonly room: { readonly left: number; readonly right: number };
  readonly width?: number | undefined;
  readonly format?: AxisSpec['format'];
}

const ROW = 30;
const NARROW_ROW = 50;

/** Estimates below each other, each with its interval, against the value that means "nothing". */
export function intervalChart({
  title,
  axis,
  rows,
  nothing,
  room,
  format,
  width = CHART_WIDTH,
}: IntervalChart): string {
  const narrow = width < NARROW;
  const values = rows.flatMap(({ low, high }) => [low, high]);
  const [low, high] = [Math.min(nothing, ...values), Math.max(nothing, ...values)];
  const edge = 0.06 * Math.max(high - low, 1e-9);
  const f = frame({
    width,
    height: (narrow ? NARROW_ROW : ROW) * rows.length + 62,
    x: { label: axis, domain: [low - edge, high + edge], ticks: 7, ...(format && { format }) },
    y: { label: '', domain: [rows.length - 0.5, -0.5] },
    margin: { ...(narrow ? { left: 14, right: 14 } : room), top: narrow ? 18 : 10, bottom: 46 },
  });
  const { left, right, top, bottom } = f.inner;
  const ticks = f.x.ticks(narrow ? 5 : 7).map((value) => {
    const at = f.x(value).toFixed(1);
    return `<path d="M${at},${top}V${bottom}" stroke="${GRID}"/><text x="${at}" y="${bottom + 17}" text-anchor="middle">${format?.(value) ?? String(value)}</text>`;
  });
  const upright = (x: number): readonly Point[] => [
    [x, -0.5],
    [x, rows.length - 0.5],
  ];
  const drawn = rows.map((row, i) => {
    const ends: readonly Point[] = [
      [row.low, i],
      [row.high, i],
    ];
    const at = (x: number): string => `M${f.x(x).toFixed(1)},${(f.y(i) - 5).toFixed(1)}v10`;
    return [
      line(f, ends, { colour: row.colour, width: 3 }),
      `<path d="${at(row.low)}${at(row.high)}" stroke="${row.colour}" stroke-width="2"/>`,
      mark(f, [row.value, i], 'diamond', row.colour, 5),
      ...(narrow
        ? [text(f, [f.x.invert(left), i], `${row.name}: ${row.says}`, { dy: -12, size: 12 })]
        : [
            text(f, [f.x.invert(left), i], row.name, { anchor: 'end', dx: -10, dy: 4, size: 12.5 }),
            text(f, [f.x.invert(right), i], row.says, { dx: 10, dy: 4, size: 12.5, colour: INK }),
          ]),
    ].join('');
  });
  return svg(
    f,
    title,
    `<g fill="${MUTED}" font-size="11.5">${ticks.join('')}<text x="${(left + right) / 2}" y="${f.height - 8}" text-anchor="middle" fill="${INK}" font-size="12.5">${axis}</text></g>`,
    line(f, upright(nothing), { colour: INK, width: 1.2, dash: '4 3' }),
    ...drawn,
  );
}
