import { sort } from 'd3-array';
import type { FasterOrStraighter } from 'fairflight/dispersion';
import { type Speed, si, toMph } from 'fairflight/units';
import {
  axes,
  band,
  box,
  type Frame,
  frame,
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
import {
  BLUE,
  FAIRWAY,
  GREEN,
  INK,
  MUTED,
  PALE_BLUE,
  PALE_GREEN,
  PALE_VERMILION,
  TREES,
  textColour,
  VERMILION,
} from '../lib/palette.js';
import { planFrame } from '../lib/plan-frame.js';
import { fixed, signed } from '../lib/text.js';
import { factorsOf } from './player.js';
import type { Cloud, Tradeoff } from './tradeoff.js';

/** Scatter that is drawn, least and most, in units of today's. */
const LEAST = 0.6;
const MOST = 2.2;

/** Scatter that pays at each speed, and the player's own. */
export function tradeoffChart(tradeoff: Tradeoff, { speed }: Display): string {
  const { answer, player } = tradeoff;
  const { now, breakEven, best } = answer;
  const speeds = breakEven.map(({ clubSpeed }) => clubSpeed);
  const edge = [speeds[0] ?? now, speeds[speeds.length - 1] ?? now] as const;
  const even = breakEven.map(({ clubSpeed, factor }): Point => {
    const height = factor === 'under' ? LEAST : factor === 'over' ? MOST : factor;
    return [speed.of(clubSpeed), 100 * height];
  });
  const law = player.law.kind;
  const along = (growth: number): readonly Point[] =>
    speeds.map((each) => [speed.of(each), 100 * (1 + growth) ** toMph(si<Speed>(each - now))]);
  const own = speeds.map(
    (each): Point => [
      speed.of(each),
      100 * factorsOf(player.law.growth, toMph(si<Speed>(each - now))).direction,
    ],
  );
  const interval = law === 'measured' ? player.trend?.interval : undefined;
  const shown = [...even, ...own, ...(interval === undefined ? [] : along(interval.high))].map(([, y]) => y);
  const top = Math.min(100 * MOST, 10 * Math.ceil((Math.max(140, ...shown) + 4) / 10));
  const bottom = Math.max(100 * LEAST, 10 * Math.floor((Math.min(80, ...shown) - 4) / 10));
  const f = frame({
    width: 860,
    height: 400,
    x: {
      label: `club speed (${speed.unit})`,
      domain: [speed.of(edge[0]), speed.of(edge[1])],
      ticks: 9,
    },
    y: {
      label: 'scatter, in % of today’s',
      domain: [bottom, top],
      ticks: 8,
    },
    margin: { right: 24 },
  });
  const cut = (points: readonly Point[]): readonly Point[] =>
    points.map(([x, y]) => [x, Math.min(top, Math.max(bottom, y))]);
  const low = interval === undefined ? [] : along(interval.low);
  const high = interval === undefined ? [] : along(interval.high);
  const middle = even[Math.floor(even.length * 0.72)] ?? [0, 0];
  const layers = [
    band(
      f,
      cut(even).map(([x, y]) => [x, bottom, y] as const),
      PALE_GREEN,
      1,
    ),
    band(
      f,
      cut(even).map(([x, y]) => [x, y, top] as const),
      PALE_VERMILION,
      1,
    ),
    axes(f),
    ...(interval === undefined
      ? []
      : [
          band(
            f,
            cut(low).map(([x, y], i) => [x, y, cut(high)[i]?.[1] ?? y] as const),
            BLUE,
            0.2,
          ),
        ]),
    line(f, along(0), { colour: MUTED, width: 1.8, dash: '6 4' }),
    line(f, cut(even), { colour: INK, width: 3, smooth: true }),
    ...(law === 'constant' ? [] : [line(f, cut(own), { colour: BLUE, width: 2.6, smooth: true })]),
    ...(best.kind === 'within' ? [upright(f, speed.of(best.clubSpeed), bottom, top)] : []),
    text(f, [middle[0], top], 'costs strokes', {
      dy: 22,
      dx: -160,
      anchor: 'middle',
      colour: textColour(VERMILION),
      size: 13.5,
      weight: 'bold',
    }),
    text(f, [middle[0], bottom], 'saves strokes', {
      dy: -16,
      dx: -70,
      anchor: 'middle',
      colour: textColour(GREEN),
      size: 13.5,
      weight: 'bold',
    }),
    ...(best.kind === 'within'
      ? [
          text(f, [speed.of(best.clubSpeed), top], `best ${fixed(speed.of(best.clubSpeed))} ${speed.unit}`, {
            dx: -6,
            dy: 18,
            anchor: 'end',
            weight: 'bold',
            size: 12.5,
          }),
        ]
      : []),
    mark(f, [speed.of(now), 100], 'dot', VERMILION, 6, 'now'),
    text(f, [speed.of(now), 100], `now, ${fixed(speed.of(now))} ${speed.unit}`, {
      dx: -8,
      dy: -12,
      anchor: 'end',
      weight: 'bold',
      size: 12.5,
    }),
  ];
  const entries: KeyEntry[] = [
    { name: 'now', colour: VERMILION, mark: 'dot' },
    { name: 'as many strokes as now', colour: INK, mark: 'line' },
    ...(law === 'constant'
      ? []
      : [
          {
            name: law === 'measured' ? 'this player’s trend' : 'growth asked for',
            colour: BLUE,
            mark: 'line',
          } as const,
        ]),
    ...(interval === undefined
      ? []
      : [{ name: 'its 95 % interval', colour: PALE_BLUE, mark: 'patch' } as const]),
    { name: 'the same scatter as now', colour: MUTED, mark: 'dashes' },
  ];
  return key(entries) + svg(f, 'Scatter that pays at each speed', ...layers);
}

function upright(f: Frame, x: number, bottom: number, top: number): string {
  return line(
    f,
    [
      [x, bottom],
      [x, top],
    ],
    { colour: INK, width: 1.4, dash: '2 4' },
  );
}

/** Strokes against now, by the law and with constant scatter. */
export function strokesChart(tradeoff: Tradeoff, { speed }: Display): string {
  const { answer, constant } = tradeoff;
  const range = ({ steps }: FasterOrStraighter): readonly (readonly [number, number, number])[] =>
    steps.map(({ clubSpeed, change: { value, standardError } }) => [
      speed.of(clubSpeed),
      value - 2 * standardError,
      value + 2 * standardError,
    ]);
  const curve = ({ steps }: FasterOrStraighter): readonly Point[] =>
    steps.map(({ clubSpeed, change }) => [speed.of(clubSpeed), change.value]);
  const drawn = constant === undefined ? [answer] : [answer, constant];
  const values = drawn.flatMap(range).flatMap(([, low, high]) => [low, high]);
  const xs = curve(answer).map(([x]) => x);
  const domain = [Math.min(...xs), Math.max(...xs)] as const;
  const f = frame({
    width: 860,
    height: 330,
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
    { name: '± two standard errors of the simulation', colour: PALE_BLUE, mark: 'patch' },
  ];
  return key(entries) + svg(f, 'Strokes against now', axes(f), ...layers);
}

/** Shots drawn of each cloud. */
const DRAWN = 250;

/** Where tee shots come to rest now and faster, over the fairway. */
export function cloudChart(tradeoff: Tradeoff, { distance, speed }: Display): string {
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
  const f = planFrame((xs[skip] ?? 0) - 6, (xs[xs.length - 1 - skip] ?? 0) + 6, side, distance.unit);
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
