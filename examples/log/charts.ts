import type { ChangeFactor, QuantityName, ScatterChange } from 'fairflight/session';
import {
  axes,
  box,
  CHART_WIDTH,
  type Frame,
  frame,
  heightFor,
  type KeyEntry,
  key,
  line,
  mark,
  NARROW,
  type Point,
  spread,
  svg,
  text,
} from '../lib/chart.js';
import type { Display, Shown } from '../lib/display.js';
import { type IntervalRow, intervalChart } from '../lib/interval-chart.js';
import {
  BLUE,
  FAINT,
  GREEN,
  INK,
  MUTED,
  ORANGE,
  PALE_ORANGE,
  textColour,
  VERMILION,
} from '../lib/palette.js';
import { fixed, signed } from '../lib/text.js';
import { sessionOf, type TrainingLog } from './log.js';
import { scatterName, scatterShown } from './words.js';

/** Club speed over time: shots, session means, the averages at both ends, what days alone could make, and the target. */
export function speedChart(log: TrainingLog, { speed }: Display, width: number = CHART_WIDTH): string {
  const { report, sifted } = log;
  const times = new Map(report.sessions.map(({ name, time }) => [name, time]));
  const shots = sifted.used.flatMap((shot) => {
    const time = times.get(sessionOf(shot));
    return time === undefined || shot.clubSpeed === undefined ? [] : [[time, shot.clubSpeed] as Point];
  });
  const end = Math.max(...report.sessions.map(({ time }) => time));
  const { next } = report;
  const values = [...shots.map(([, value]) => value), ...(next === undefined ? [] : [next.clubSpeed])];
  const [low, high] = [speed.of(Math.min(...values)), speed.of(Math.max(...values))];
  const f = frame({
    width,
    height: heightFor(width, 400),
    x: {
      label: report.timeUnit === 'weeks' ? 'weeks since the first session' : 'sessions since the first',
      domain: [-0.025 * end, 1.025 * end],
      ticks: 12,
    },
    y: {
      label: `club speed (${speed.unit})`,
      domain: [Math.floor(low - 0.5), Math.ceil(high + 0.5)],
      ticks: 8,
    },
    margin: { right: width < NARROW ? 18 : 138 },
  });
  return (
    key(speedEntries(log)) +
    svg(
      f,
      'Club speed over time',
      axes(f),
      ...speedLayers(log, f, speed, shots),
      ...speedLabels(log, f, speed),
    )
  );
}

function speedLayers(
  { report, first, last, trendAt }: TrainingLog,
  f: Frame,
  speed: Shown,
  shots: readonly Point[],
): readonly string[] {
  const { sessions, block, detectable, next } = report;
  const [start, end] = f.xAxis.domain;
  const lastTime = Math.max(...sessions.map(({ time }) => time));
  const level = (from: number, to: number, value: number): readonly Point[] => [
    [from, speed.of(value)],
    [to, speed.of(value)],
  ];
  const average = (rows: typeof sessions, value: number): string => {
    const [from, to] = [rows[0]?.time ?? 0, rows[rows.length - 1]?.time ?? lastTime];
    return line(f, level(from - 0.012 * lastTime, to + 0.012 * lastTime, value), { colour: INK, width: 3 });
  };
  const days = (sign: number, x: number): Point => [x, speed.of(first + sign * (detectable ?? 0))];
  const trend = (time: number): Point => [time, speed.of(trendAt?.(time) ?? Number.NaN)];
  return [
    ...(detectable === undefined ? [] : [box(f, days(-1, start), days(1, end), ORANGE, 0.2)]),
    ...(trendAt === undefined
      ? []
      : [line(f, [trend(0), trend(lastTime)], { colour: BLUE, width: 1.6, dash: '6 4' })]),
    ...(next === undefined
      ? []
      : [line(f, level(start, end, next.clubSpeed), { colour: GREEN, width: 2, dash: '2 4' })]),
    ...shots.map(([time, value]) => mark(f, [time, speed.of(value)], 'dot', FAINT, 2.8)),
    ...sessions.map(({ time, clubSpeed, name }) =>
      mark(f, [time, speed.of(clubSpeed)], 'diamond', BLUE, 5.2, `${name}: ${fixed(speed.of(clubSpeed), 1)}`),
    ),
    average(sessions.slice(0, block), first),
    average(sessions.slice(-block), last),
  ];
}

/** What stands right of the plot, level with what it names. */
function speedLabels({ report, first, last }: TrainingLog, f: Frame, speed: Shown): readonly string[] {
  const { next, detectable } = report;
  const labels = [
    ...(next === undefined ? [] : [{ at: next.clubSpeed, says: 'next target', colour: GREEN }]),
    { at: last, says: 'average now', colour: INK },
    ...(detectable === undefined
      ? []
      : [{ at: first + detectable, says: 'days alone', colour: textColour(ORANGE) }]),
  ];
  const places = spread(
    labels.map(({ at }) => f.y(speed.of(at))),
    16,
  );
  const [, right] = f.xAxis.domain;
  return labels.map(({ at, says, colour }, i) =>
    text(f, [right, f.y.invert(places[i] ?? 0)], `${says} ${fixed(speed.of(at), 1)}`, {
      ...(f.width < NARROW ? { anchor: 'end', dx: -4, dy: -4 } : { dx: 7, dy: 4 }),
      colour,
      size: 12,
      weight: 'bold',
    }),
  );
}

function speedEntries({ report: { block, detectable, next }, trendAt }: TrainingLog): readonly KeyEntry[] {
  const averages = block === 1 ? 'first and last session' : `average of the first and last ${block} sessions`;
  return [
    { name: 'one shot', colour: FAINT, mark: 'dot' },
    { name: 'session mean', colour: BLUE, mark: 'diamond' },
    { name: averages, colour: INK, mark: 'line' },
    ...(trendAt === undefined ? [] : [{ name: 'trend', colour: BLUE, mark: 'dashes' } as const]),
    ...(detectable === undefined
      ? []
      : [
          {
            name: 'what days alone could make of the first average',
            colour: PALE_ORANGE,
            mark: 'patch',
          } as const,
        ]),
    ...(next === undefined ? [] : [{ name: 'next target', colour: GREEN, mark: 'dots' } as const]),
  ];
}

/** Scatter of the last sessions over that of the first. */
export function scatterChart({ report }: TrainingLog, display: Display, width?: number): string {
  const rows = (Object.entries(report.scatter) as [QuantityName, ScatterChange][]).map(
    ([name, { ratio, interval, verdict, before, after }]): IntervalRow => ({
      name: scatterName(name),
      value: ratio,
      low: interval.low,
      high: interval.high,
      says: `${scatterShown(name, before, display)} → ${scatterShown(name, after, display)}: ${verdict === 'not-shown' ? 'no change shown' : verdict}`,
      colour: verdict === 'grew' ? VERMILION : verdict === 'shrank' ? GREEN : MUTED,
    }),
  );
  if (rows.length === 0) return '';
  return intervalChart({
    title: 'Scatter of the last sessions over that of the first',
    axis: 'scatter now over scatter before (1 is no change)',
    rows,
    nothing: 1,
    room: { left: 150, right: 262 },
    width,
    format: (value) => fixed(value, 1),
  });
}

const CAUSE_WORDS: Readonly<Record<ChangeFactor, string>> = {
  ballSpeed: 'ball speed',
  launch: 'launch angle and direction',
  spinRate: 'spin',
  spinAxis: 'spin axis',
  air: 'air',
};

/** Name of a cause. */
export function causeName(cause: ChangeFactor): string {
  return CAUSE_WORDS[cause];
}

/** The change of carry and its causes. */
export function causesChart({ report }: TrainingLog, { distance }: Display, width?: number): string {
  const split = report.causes?.carry;
  if (split === undefined) return '';
  const row = (
    name: string,
    change: { readonly value: number; readonly low: number; readonly high: number },
    colour: string,
  ): IntervalRow => ({
    name,
    value: distance.of(change.value),
    low: distance.of(change.low),
    high: distance.of(change.high),
    says: `${signed(distance.of(change.value), 1)} ${distance.unit}`,
    colour,
  });
  const causes = (Object.keys(CAUSE_WORDS) as ChangeFactor[]).filter(
    (cause) => split.causes[cause].low !== 0 || split.causes[cause].high !== 0,
  );
  return intervalChart({
    title: 'What changed the carry',
    axis: `change of mean carry (${distance.unit}), 95 % interval`,
    rows: [
      ...causes.map((cause) => row(causeName(cause), split.causes[cause], BLUE)),
      ...(split.unexplained === undefined
        ? []
        : [row('not explained by the model', split.unexplained, MUTED)]),
      ...(split.measured === undefined
        ? [row('together, by the model', split.modelled, INK)]
        : [row('measured', split.measured, INK)]),
    ],
    nothing: 0,
    room: { left: 200, right: 90 },
    width,
    format: (value) => signed(value),
  });
}
