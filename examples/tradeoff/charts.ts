import { sort } from 'd3-array';
import type { FasterOrStraighter } from 'fairflight/dispersion';
import {
  axes,
  band,
  box,
  CHART_WIDTH,
  type Frame,
  frame,
  heightFor,
  type KeyEntry,
  key,
  line,
  mark,
  type Point,
  svg,
  text,
} from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { figure } from '../lib/page.js';
import { BLUE, FAIRWAY, INK, MUTED, PALE_BLUE, TREES, VERMILION } from '../lib/palette.js';
import { planFrame } from '../lib/plan-frame.js';
import { fixed, signed } from '../lib/text.js';
import type { Cloud, Tradeoff } from './tradeoff.js';

/** Strokes against now, by the law and with constant scatter. */
export function strokesChart(tradeoff: Tradeoff, { speed }: Display, width: number = CHART_WIDTH): string {
  const { answer, constant } = tradeoff;
  const range = ({ steps }: FasterOrStraighter): readonly (readonly [number, number, number])[] =>
    steps.map(({ clubSpeed, change: { interval } }) => [speed.of(clubSpeed), interval.low, interval.high]);
  const curve = ({ steps }: FasterOrStraighter): readonly Point[] =>
    steps.map(({ clubSpeed, change }) => [speed.of(clubSpeed), change.value]);
  const drawn = constant === undefined ? [answer] : [answer, constant];
  const values = drawn.flatMap(range).flatMap(([, low, high]) => [low, high]);
  const xs = curve(answer).map(([x]) => x);
  const domain = [Math.min(...xs), Math.max(...xs)] as const;
  const f = frame({
    width,
    height: heightFor(width, 330),
    x: { label: `club speed (${speed.unit})`, domain, ticks: 9 },
    y: {
      label: 'strokes against now',
      domain: [Math.min(0, ...values) - 0.05, Math.max(0, ...values) + 0.05],
      ticks: 7,
      format: (value) => signed(value, 1),
    },
    margin: { right: 24 },
  });
  const zero: readonly Point[] = [
    [domain[0], 0],
    [domain[1], 0],
  ];
  const layers = [
    ...(constant === undefined ? [] : [band(f, range(constant), MUTED, 0.15)]),
    band(f, range(answer), BLUE, 0.2),
    line(f, zero, { colour: INK, width: 1.2 }),
    ...(constant === undefined ? [] : [line(f, curve(constant), { colour: MUTED, width: 2, dash: '6 4' })]),
    line(f, curve(answer), { colour: BLUE, width: 2.6 }),
    ...curve(answer).map((point) => mark(f, point, 'dot', BLUE, 4)),
    mark(f, [speed.of(answer.now), 0], 'dot', VERMILION, 6, 'now'),
  ];
  const entries: KeyEntry[] = [
    { name: 'now', colour: VERMILION, mark: 'dot' },
    {
      name: constant === undefined ? 'scatter stays the same' : 'scatter grows as said',
      colour: BLUE,
      mark: 'line',
    },
    ...(constant === undefined
      ? []
      : [{ name: 'scatter stays the same', colour: MUTED, mark: 'dashes' } as const]),
    { name: '95 % interval of the simulation', colour: PALE_BLUE, mark: 'patch' },
  ];
  return key(entries) + svg(f, 'Strokes against now', axes(f), ...layers);
}

/** Shots drawn of each cloud. */
const DRAWN = 250;

/** Where tee shots come to rest now and faster, over the fairway. */
export function cloudChart(tradeoff: Tradeoff, { distance, speed }: Display, width?: number): string {
  const { now, faster, course } = tradeoff;
  const clouds: readonly (readonly [Cloud, string])[] = [
    [now, BLUE],
    [faster, VERMILION],
  ];
  const points = ({ dispersion: { columns } }: Cloud): readonly Point[] =>
    columns.restX.slice(0, DRAWN).map((x, i) => [distance.of(x), distance.of(columns.restZ[i] ?? 0)]);
  const all = clouds.flatMap(([cloud]) => points(cloud));
  const xs = sort(all.map(([x]) => x));
  // One shot in two hundred at each end may lie outside: the wildest would shrink all the others.
  const skip = Math.floor(xs.length / 200);
  const trees = course.trees === undefined ? 0 : distance.of(course.trees);
  const sides = sort(all.map(([, z]) => Math.abs(z)));
  const bounds = course.bounds === undefined ? 0 : distance.of(course.bounds);
  const side =
    Math.max(distance.of(course.fairway), trees + 8, bounds + 4, sides[sides.length - 1 - 2 * skip] ?? 0) + 2;
  const f = planFrame((xs[skip] ?? 0) - 6, (xs[xs.length - 1 - skip] ?? 0) + 6, side, distance.unit, width);
  const x = f.xAxis.domain;
  const half = distance.of(course.fairway) / 2;
  const inside = ([px, pz]: Point): boolean => px > x[0] && px < x[1] && Math.abs(pz) < side;
  const strip = (from: number, to: number, colour: string): string =>
    box(f, [x[0], from], [x[1], to], colour);
  const layers = [
    strip(-half, half, FAIRWAY),
    ...(course.trees === undefined ? [] : [strip(trees, side, TREES), strip(-side, -trees, TREES)]),
    axes(f),
    ...clouds.flatMap(([cloud, colour]) =>
      points(cloud)
        .filter(inside)
        .map((point) => mark(f, point, colour === BLUE ? 'dot' : 'ring', colour, 2.4)),
    ),
    ...clouds.flatMap(([{ dispersion }, colour]) =>
      dispersion.restEllipses
        .filter(({ level }) => level < 0.95)
        .map((ellipse) =>
          line(f, ring(ellipse, distance.of), { colour, width: 2.2, dash: ellipse.level > 0.6 ? '6 4' : '' }),
        ),
    ),
    text(f, [x[0], 0], 'fairway', { dx: 8, dy: 4, colour: MUTED, size: 12.5 }),
    ...(course.trees === undefined
      ? []
      : [text(f, [x[0], -trees], 'trees', { dx: 8, dy: -6, colour: MUTED, size: 12.5 })]),
    ...(course.bounds === undefined ? [] : boundary(f, x, distance.of(course.bounds))),
    text(f, [x[1], side], 'right', { anchor: 'end', dx: -6, dy: -8, colour: MUTED }),
    text(f, [x[1], -side], 'left', { anchor: 'end', dx: -6, dy: 16, colour: MUTED }),
  ];
  const entries: KeyEntry[] = [
    { name: `${fixed(speed.of(now.clubSpeed))} ${speed.unit}`, colour: BLUE, mark: 'dot' },
    { name: `${fixed(speed.of(faster.clubSpeed))} ${speed.unit}`, colour: VERMILION, mark: 'ring' },
    { name: 'would hold half of normal shots', colour: INK, mark: 'line' },
    { name: 'nine in ten', colour: INK, mark: 'dashes' },
  ];
  const outside = all.filter((point) => !inside(point)).length;
  const note =
    outside === 0
      ? ''
      : `The wildest ${outside} of the ${all.length} shots drawn come to rest outside the picture.`;
  return figure(key(entries) + svg(f, 'Where tee shots come to rest', ...layers), note);
}

/** Out of bounds on both sides. */
function boundary(f: Frame, [from, to]: readonly [number, number], at: number): readonly string[] {
  const edge = (z: number): readonly Point[] => [
    [from, z],
    [to, z],
  ];
  return [
    line(f, edge(at), { colour: INK, width: 1.6, dash: '8 3 2 3' }),
    line(f, edge(-at), { colour: INK, width: 1.6, dash: '8 3 2 3' }),
    text(f, [from, -at], 'out of bounds', { dx: 8, dy: -6, colour: MUTED, size: 12.5 }),
  ];
}

type Ellipse = Cloud['dispersion']['restEllipses'][number];

function ring(ellipse: Ellipse, of: (si: number) => number): readonly Point[] {
  const { centre, semiMajor, semiMinor, direction } = ellipse;
  const [c, s] = [Math.cos(direction), Math.sin(direction)];
  return Array.from({ length: 73 }, (_, i) => {
    const turn = (i / 72) * 2 * Math.PI;
    const [u, v] = [semiMajor * Math.cos(turn), semiMinor * Math.sin(turn)];
    return [of(centre.x + u * c - v * s), of(centre.z + u * s + v * c)];
  });
}
