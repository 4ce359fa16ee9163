import type { BreakEven } from 'fairflight/dispersion';
import { type Speed, si, toMph } from 'fairflight/units';
import {
  axes,
  band,
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
import type { Display, Shown } from '../lib/display.js';
import {
  BLUE,
  GREEN,
  INK,
  MUTED,
  PALE_BLUE,
  PALE_GREEN,
  PALE_VERMILION,
  textColour,
  VERMILION,
} from '../lib/palette.js';
import { fixed } from '../lib/text.js';
import { factorsOf } from './player.js';
import type { Tradeoff } from './tradeoff.js';

/** Scatter that is drawn, least and most, in % of today's. */
const LEAST = 60;
const MOST = 220;

type Range = readonly [x: number, low: number, high: number];

/** The curves of the chart: club speed in the unit shown, scatter in % of today's, cut at the edges of the plot. */
interface Curves {
  readonly f: Frame;
  /** As many strokes as now. */
  readonly even: readonly Point[];
  /** Its 95 % interval. */
  readonly doubt: readonly Range[];
  /** The law; absent where scatter stays as it is. */
  readonly own: readonly Point[] | undefined;
  /** Ends of the interval of a measured law. */
  readonly interval: { readonly low: readonly Point[]; readonly high: readonly Point[] } | undefined;
  /** The same scatter as now. */
  readonly same: readonly Point[];
}

/** Scatter that pays at each speed, and the player's own. */
export function tradeoffChart(tradeoff: Tradeoff, { speed }: Display, width: number = CHART_WIDTH): string {
  const curves = curvesOf(tradeoff, speed, width);
  const { f, even, doubt, own, interval, same } = curves;
  const [bottom, top] = f.yAxis.domain;
  const layers = [
    band(f, between(edgeOf(even, bottom), even), PALE_GREEN, 1),
    band(f, between(even, edgeOf(even, top)), PALE_VERMILION, 1),
    band(f, doubt, INK, 0.18),
    axes(f),
    ...(interval === undefined ? [] : [band(f, between(interval.low, interval.high), BLUE, 0.2)]),
    line(f, same, { colour: MUTED, width: 1.8, dash: '6 4' }),
    line(f, even, { colour: INK, width: 3, smooth: true }),
    ...(own === undefined ? [] : [line(f, own, { colour: BLUE, width: 2.6, smooth: true })]),
    ...marked(tradeoff, f, speed),
    ...areaNames(curves),
  ];
  return key(entriesOf(tradeoff, curves)) + svg(f, 'Scatter that pays at each speed', ...layers);
}

function curvesOf({ answer, player }: Tradeoff, speed: Shown, width: number): Curves {
  const { now, breakEven } = answer;
  const speeds = breakEven.map(({ clubSpeed }) => clubSpeed);
  const along = (percent: (faster: number) => number): readonly Point[] =>
    speeds.map((each) => [speed.of(each), percent(toMph(si<Speed>(each - now)))]);
  const growing = (growth: number): readonly Point[] => along((faster) => 100 * (1 + growth) ** faster);
  const evens = breakEven.flatMap((point) => evenAt(point, speed.of(point.clubSpeed)));
  const even = evens.map(([x, , percent]): Point => [x, percent]);
  const { law } = player;
  const own = along((faster) => 100 * factorsOf(law.growth, faster).direction);
  const interval =
    law.kind === 'measured'
      ? { low: growing(law.trend.interval.low), high: growing(law.trend.interval.high) }
      : undefined;
  const doubt = evens.map(([x, low, , high]) => [x, low, high] as const);
  const shown = [...even, ...own, ...(interval?.high ?? [])].map(([, y]) => y);
  const top = Math.min(MOST, 10 * Math.ceil((Math.max(140, ...shown) + 4) / 10));
  const bottom = Math.max(LEAST, 10 * Math.floor((Math.min(80, ...shown) - 4) / 10));
  const cut = (points: readonly Point[]): readonly Point[] =>
    points.map(([x, y]) => [x, Math.min(top, Math.max(bottom, y))]);
  const f = frame({
    width,
    height: heightFor(width, 400),
    x: {
      label: `club speed (${speed.unit})`,
      domain: [speed.of(speeds[0] ?? now), speed.of(speeds[speeds.length - 1] ?? now)],
      ticks: 9,
    },
    y: { label: 'scatter, in % of today’s', domain: [bottom, top], ticks: 8 },
    margin: { right: 24 },
  });
  return {
    f,
    even: cut(even),
    doubt: between(cut(doubt.map(([x, low]) => [x, low])), cut(doubt.map(([x, , high]) => [x, high]))),
    own: law.kind === 'constant' ? undefined : cut(own),
    interval: interval && { low: cut(interval.low), high: cut(interval.high) },
    same: along(() => 100),
  };
}

/** Scatter that breaks even at a speed, between the ends of its interval; none where these shots do not show it. */
function evenAt(point: BreakEven, x: number): readonly (readonly [number, number, number, number])[] {
  if (point.kind === 'unclear') return [];
  if (point.kind !== 'within') {
    const edge = point.kind === 'under' ? LEAST : MOST;
    return [[x, edge, edge, edge]];
  }
  const only = point.factors[0];
  if (only === undefined || point.factors.length > 1 || only.pays === 'wider') return [];
  return [[x, 100 * only.interval.low, 100 * only.value, 100 * only.interval.high]];
}

function edgeOf(points: readonly Point[], y: number): readonly Point[] {
  return points.map(([x]) => [x, y]);
}

function between(low: readonly Point[], high: readonly Point[]): readonly Range[] {
  return low.map(([x, y], i) => [x, y, high[i]?.[1] ?? y]);
}

/** What the two sides of the black curve mean. */
function areaNames({ f, even }: Curves): readonly string[] {
  const [bottom, top] = f.yAxis.domain;
  const [x] = even[Math.floor(even.length * 0.72)] ?? [0];
  const share = f.width / CHART_WIDTH;
  const style = { anchor: 'middle', size: 13.5, weight: 'bold' } as const;
  return [
    text(f, [x, top], 'costs strokes', { ...style, dy: 42, dx: -160 * share, colour: textColour(VERMILION) }),
    text(f, [x, bottom], 'saves strokes', { ...style, dy: -16, dx: -70 * share, colour: textColour(GREEN) }),
  ];
}

/** The speed now, and the best one where it lies within the plot. */
function marked({ answer: { now, best } }: Tradeoff, f: Frame, speed: Shown): readonly string[] {
  const [bottom, top] = f.yAxis.domain;
  const style = { anchor: 'end', weight: 'bold', size: 12.5 } as const;
  const shown = (value: Speed): string => `${fixed(speed.of(value))} ${speed.unit}`;
  const x = speed.of(best.clubSpeed);
  const upright: readonly Point[] = [
    [x, bottom],
    [x, top],
  ];
  return [
    ...(best.kind === 'within'
      ? [
          line(f, upright, { colour: INK, width: 1.4, dash: '2 4' }),
          text(f, [x, top], `best ${shown(best.clubSpeed)}`, { ...style, dx: -6, dy: 18 }),
        ]
      : []),
    mark(f, [speed.of(now), 100], 'dot', VERMILION, 6, 'now'),
    text(f, [speed.of(now), 100], `now, ${shown(now)}`, { ...style, dx: -8, dy: -12 }),
  ];
}

function entriesOf({ player: { law } }: Tradeoff, { own, interval }: Curves): readonly KeyEntry[] {
  const ownName = law.kind === 'measured' ? 'this player’s trend' : 'growth asked for';
  return [
    { name: 'now', colour: VERMILION, mark: 'dot' },
    { name: 'as many strokes as now, and its 95 % interval', colour: INK, mark: 'line' },
    ...(own === undefined ? [] : [{ name: ownName, colour: BLUE, mark: 'line' } as const]),
    ...(interval === undefined
      ? []
      : [{ name: 'its 95 % interval', colour: PALE_BLUE, mark: 'patch' } as const]),
    { name: 'the same scatter as now', colour: MUTED, mark: 'dashes' },
  ];
}
