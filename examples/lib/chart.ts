import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { area as areaShape, curveMonotoneX, line as lineShape } from 'd3-shape';
import { GRID, INK, MUTED, PAPER } from './palette.js';
import { escaped } from './text.js';

/** A point in the units of the axes. */
export type Point = readonly [x: number, y: number];

/** What an axis shows. */
export interface AxisSpec {
  readonly label: string;
  readonly domain: readonly [low: number, high: number];
  /** About how many ticks; default 6. */
  readonly ticks?: number;
  readonly format?: (value: number) => string;
}

/** A plotting area with its two scales. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly inner: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly xAxis: AxisSpec;
  readonly yAxis: AxisSpec;
}

/** Size and axes of a frame. `margin` leaves room for labels beside the plot. */
export interface FrameSpec {
  readonly width: number;
  readonly height: number;
  readonly x: AxisSpec;
  readonly y: AxisSpec;
  readonly margin?: Partial<Record<'left' | 'right' | 'top' | 'bottom', number>>;
}

/** Width of a chart where nothing else is asked for [px]. */
export const CHART_WIDTH = 860;
/** Below this a chart has no room for words beside the plot [px]. */
export const NARROW = 560;
/** Width that the figures of an axis take [px]. */
const TICK_ROOM = 52;

const FONT = "font-family=\"system-ui, -apple-system, 'Segoe UI', 'DejaVu Sans', sans-serif\"";

/** Height of a chart that is `usual` high at the usual width; a narrow one is lower, though not in proportion. */
export function heightFor(width: number, usual: number): number {
  return Math.round(usual * Math.min(1, 0.45 + (0.55 * width) / CHART_WIDTH));
}

/** Lays out a plotting area. */
export function frame(spec: FrameSpec): Frame {
  const margin = { left: 58, right: 18, top: 14, bottom: 46, ...spec.margin };
  const inner = {
    left: margin.left,
    right: spec.width - margin.right,
    top: margin.top,
    bottom: spec.height - margin.bottom,
  };
  return {
    width: spec.width,
    height: spec.height,
    inner,
    x: scaleLinear([...spec.x.domain], [inner.left, inner.right]),
    y: scaleLinear([...spec.y.domain], [inner.bottom, inner.top]),
    xAxis: spec.x,
    yAxis: spec.y,
  };
}

/** Height of a frame whose two axes have the same scale. */
export function heightForEqualScales(spec: Omit<FrameSpec, 'height'>): number {
  const { left = 58, right = 18, top = 14, bottom = 46 } = spec.margin ?? {};
  const perUnit = (spec.width - left - right) / (spec.x.domain[1] - spec.x.domain[0]);
  return Math.round(top + bottom + perUnit * (spec.y.domain[1] - spec.y.domain[0]));
}

/** Grid, ticks and axis names; draw it first. */
export function axes(f: Frame): string {
  const { left, right, top, bottom } = f.inner;
  const most = Math.max(2, Math.floor((right - left) / TICK_ROOM));
  const across = f.x.ticks(Math.min(most, f.xAxis.ticks ?? 6)).map((value) => {
    const at = f.x(value).toFixed(1);
    const text = f.xAxis.format?.(value) ?? String(value);
    return `<path d="M${at},${top}V${bottom}" stroke="${GRID}"/><text x="${at}" y="${bottom + 17}" text-anchor="middle">${escaped(text)}</text>`;
  });
  const up = f.y.ticks(f.yAxis.ticks ?? 6).map((value) => {
    const at = f.y(value);
    const text = f.yAxis.format?.(value) ?? String(value);
    return `<path d="M${left},${at.toFixed(1)}H${right}" stroke="${GRID}"/><text x="${left - 7}" y="${(at + 4).toFixed(1)}" text-anchor="end">${escaped(text)}</text>`;
  });
  const middle = (top + bottom) / 2;
  return [
    `<g fill="${MUTED}" font-size="11.5">`,
    ...across,
    ...up,
    `<text x="${(left + right) / 2}" y="${f.height - 8}" text-anchor="middle" fill="${INK}" font-size="12.5">${escaped(f.xAxis.label)}</text>`,
    `<text transform="translate(15,${middle}) rotate(-90)" text-anchor="middle" fill="${INK}" font-size="12.5">${escaped(f.yAxis.label)}</text>`,
    '</g>',
  ].join('');
}

/** How a line is drawn. */
export interface Stroke {
  readonly colour: string;
  readonly width?: number;
  readonly dash?: string;
  readonly opacity?: number;
  readonly smooth?: boolean;
}

/** A line through points. */
export function line(f: Frame, points: readonly Point[], stroke: Stroke): string {
  const shape = lineShape<Point>()
    .x(([x]) => f.x(x))
    .y(([, y]) => f.y(y))
    .digits(1);
  const d = (stroke.smooth === true ? shape.curve(curveMonotoneX) : shape)([...points]) ?? '';
  const dash = stroke.dash === undefined ? '' : ` stroke-dasharray="${stroke.dash}"`;
  return `<path d="${d}" fill="none" stroke="${stroke.colour}" stroke-width="${stroke.width ?? 2}" stroke-linejoin="round" opacity="${stroke.opacity ?? 1}"${dash}/>`;
}

/** A filled band between two curves over the same x. */
export function band(
  f: Frame,
  points: readonly (readonly [x: number, low: number, high: number])[],
  colour: string,
  opacity = 0.18,
): string {
  const shape = areaShape<readonly [number, number, number]>()
    .x(([x]) => f.x(x))
    .y0(([, low]) => f.y(low))
    .y1(([, , high]) => f.y(high))
    .curve(curveMonotoneX)
    .digits(1);
  return `<path d="${shape([...points]) ?? ''}" fill="${colour}" opacity="${opacity}"/>`;
}

/** Marks told apart by form as well as colour. */
export type Mark = 'dot' | 'ring' | 'cross' | 'diamond';

/** One mark, with a tooltip for the screen. */
export function mark(f: Frame, [x, y]: Point, kind: Mark, colour: string, size = 3.6, title = ''): string {
  const px = f.x(x);
  const py = f.y(y);
  const tip = title === '' ? '' : `<title>${escaped(title)}</title>`;
  const at = (dx: number, dy: number): string =>
    `${(px + dx * size).toFixed(1)},${(py + dy * size).toFixed(1)}`;
  switch (kind) {
    case 'dot':
      return `<circle cx="${px.toFixed(1)}" cy="${py.toFixed(1)}" r="${size}" fill="${colour}" stroke="${PAPER}" stroke-width="0.8">${tip}</circle>`;
    case 'ring':
      return `<circle cx="${px.toFixed(1)}" cy="${py.toFixed(1)}" r="${size}" fill="${PAPER}" fill-opacity="0.6" stroke="${colour}" stroke-width="1.8">${tip}</circle>`;
    case 'cross':
      return `<path d="M${at(-1, -1)}L${at(1, 1)}M${at(-1, 1)}L${at(1, -1)}" stroke="${colour}" stroke-width="1.9">${tip}</path>`;
    case 'diamond':
      return `<path d="M${at(0, -1.35)}L${at(1.35, 0)}L${at(0, 1.35)}L${at(-1.35, 0)}Z" fill="${colour}" stroke="${PAPER}" stroke-width="0.8">${tip}</path>`;
  }
}

/** An upright whisker, for an interval. */
export function whisker(f: Frame, x: number, low: number, high: number, colour: string): string {
  const px = f.x(x);
  const [a, b] = [f.y(low).toFixed(1), f.y(high).toFixed(1)];
  return `<path d="M${px.toFixed(1)},${a}V${b}M${(px - 4).toFixed(1)},${a}h8M${(px - 4).toFixed(1)},${b}h8" stroke="${colour}" stroke-width="1.5" fill="none"/>`;
}

/** How a text sits at its point. */
export interface TextStyle {
  readonly colour?: string;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly size?: number;
  readonly weight?: 'normal' | 'bold';
  readonly dx?: number;
  readonly dy?: number;
}

/** Text at a point of the plot, with a pale edge so that it stays legible over lines. */
export function text(f: Frame, [x, y]: Point, content: string, style: TextStyle = {}): string {
  const { colour = INK, anchor = 'start', size = 11.5, weight = 'normal', dx = 0, dy = 0 } = style;
  return `<text x="${(f.x(x) + dx).toFixed(1)}" y="${(f.y(y) + dy).toFixed(1)}" text-anchor="${anchor}" font-size="${size}" font-weight="${weight}" fill="${colour}" stroke="${PAPER}" stroke-width="3" stroke-linejoin="round" paint-order="stroke">${escaped(content)}</text>`;
}

/** An axis-aligned box in the units of the axes, cut at the edge of the plot. */
export function box(f: Frame, from: Point, to: Point, fill: string, opacity = 1): string {
  const cut = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
  const { left, right, top, bottom } = f.inner;
  const [x0, x1] = [f.x(from[0]), f.x(to[0])].map((v) => cut(v, left, right)).sort((a, b) => a - b) as [
    number,
    number,
  ];
  const [y0, y1] = [f.y(from[1]), f.y(to[1])].map((v) => cut(v, top, bottom)).sort((a, b) => a - b) as [
    number,
    number,
  ];
  return `<rect x="${x0.toFixed(1)}" y="${y0.toFixed(1)}" width="${(x1 - x0).toFixed(1)}" height="${(y1 - y0).toFixed(1)}" fill="${fill}" opacity="${opacity}"/>`;
}

/** One entry of a key. */
export interface KeyEntry {
  readonly name: string;
  readonly colour: string;
  readonly mark: Mark | 'line' | 'dashes' | 'dots' | 'patch';
}

/** A key as HTML, to stand above a chart. */
export function key(entries: readonly KeyEntry[]): string {
  const items = entries.map((entry) => {
    const f = frame({
      width: 26,
      height: 14,
      x: { label: '', domain: [0, 26] },
      y: { label: '', domain: [0, 14] },
      margin: { left: 0, right: 0, top: 0, bottom: 0 },
    });
    const sample = sampleOf(f, entry);
    return `<span class="key"><svg width="26" height="14" viewBox="0 0 26 14" aria-hidden="true">${sample}</svg>${escaped(entry.name)}</span>`;
  });
  return `<p class="keys">${items.join('')}</p>`;
}

function sampleOf(f: Frame, { mark: kind, colour }: KeyEntry): string {
  if (kind === 'patch') return `<rect x="3" y="2" width="20" height="10" fill="${colour}"/>`;
  if (kind === 'line' || kind === 'dashes' || kind === 'dots') {
    const points: readonly Point[] = [
      [1, 7],
      [25, 7],
    ];
    const dash = { line: '', dashes: '5 4', dots: '1.5 4' }[kind];
    return line(f, points, { colour, width: 2.4, ...(dash && { dash }) });
  }
  return mark(f, [13, 7], kind, colour, 4.2);
}

/** Wraps layers into one SVG element that scales with its column. */
export function svg(f: Frame, title: string, ...layers: readonly string[]): string {
  return `<svg viewBox="0 0 ${f.width} ${f.height}" width="${f.width}" height="${f.height}" role="img" aria-label="${escaped(title)}" ${FONT}><title>${escaped(title)}</title>${layers.join('')}</svg>`;
}

/** Moves numbers apart until neighbours keep a least gap, close to where they were; keeps their order. */
export function spread(places: readonly number[], gap: number): readonly number[] {
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place);
  for (let round = 0; round < 60; round++) {
    let moved = false;
    for (let i = 1; i < order.length; i++) {
      const [low, high] = [order[i - 1], order[i]];
      if (low === undefined || high === undefined) continue;
      const missing = gap - (high.place - low.place);
      if (missing <= 1e-6) continue;
      low.place -= missing / 2;
      high.place += missing / 2;
      moved = true;
    }
    if (!moved) break;
  }
  const out = [...places];
  for (const { place, index } of order) out[index] = place;
  return out;
}
