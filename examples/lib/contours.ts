import { contours } from 'd3-contour';
import { type Frame, type Point, text } from './chart.js';
import { INK } from './palette.js';

/** Values on a regular grid that spans the frame, row by row from the bottom. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly values: readonly number[];
}

/** Filled contours with labelled lines. */
export function filledContours(
  f: Frame,
  grid: Grid,
  levels: readonly number[],
  colour: (level: number) => string,
  label: (level: number) => string,
): string {
  const [x0, x1] = f.x.domain() as [number, number];
  const [y0, y1] = f.y.domain() as [number, number];
  // d3-contour puts a grid value at the middle of its cell.
  const place = ([gx, gy]: Point): Point => [
    x0 + ((gx - 0.5) / (grid.columns - 1)) * (x1 - x0),
    y0 + ((gy - 0.5) / (grid.rows - 1)) * (y1 - y0),
  ];
  const shapes = contours()
    .size([grid.columns, grid.rows])
    .thresholds([...levels])([...grid.values]);
  const fills: string[] = [];
  const labels: string[] = [];
  const taken: Point[] = [];
  for (const { value, coordinates } of shapes) {
    const rings = coordinates
      .flat()
      .map((ring) => ring.map((point) => pixels(f, place(point as unknown as Point))));
    const d = rings.map((ring) => `M${ring.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}Z`);
    fills.push(
      `<path d="${d.join('')}" fill="${colour(value)}" stroke="${INK}" stroke-opacity="0.35" stroke-width="0.7"/>`,
    );
    const at = labelPlace(f, rings, taken);
    if (at === undefined) continue;
    taken.push(at);
    const [x, y] = [f.x.invert(at[0]), f.y.invert(at[1])];
    labels.push(text(f, [x, y], label(value), { anchor: 'middle', dy: 4, size: 11 }));
  }
  const { left, right, top, bottom } = f.inner;
  const clip = `cut-${f.width}-${f.height}`;
  return `<clipPath id="${clip}"><rect x="${left}" y="${top}" width="${right - left}" height="${bottom - top}"/></clipPath><g clip-path="url(#${clip})">${fills.join('')}</g>${labels.join('')}`;
}

function pixels(f: Frame, [x, y]: Point): Point {
  return [f.x(x), f.y(y)];
}

/** Where a contour comes nearest to a line right of the diagonal, clear of the edges and of other labels. */
function labelPlace(
  f: Frame,
  rings: readonly (readonly Point[])[],
  taken: readonly Point[],
): Point | undefined {
  const { left, right, top, bottom } = f.inner;
  const offLine = ([x, y]: Point): number =>
    Math.abs((x - left) / (right - left) - (bottom - y) / (bottom - top) - 0.3);
  const free = (point: Point): boolean =>
    point[0] > left + 16 &&
    point[0] < right - 16 &&
    point[1] > top + 12 &&
    point[1] < bottom - 12 &&
    taken.every((other) => Math.hypot(other[0] - point[0], other[1] - point[1]) > 30);
  const candidates = rings.flat().filter(free);
  return candidates.reduce<Point | undefined>(
    (kept, point) => (kept === undefined || offLine(point) < offLine(kept) ? point : kept),
    undefined,
  );
}
