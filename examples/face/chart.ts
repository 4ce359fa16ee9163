import type { StrikeOffset } from 'fairflight';
import type { FaceMap, StrikePattern } from 'fairflight/session';
import {
  axes,
  CHART_WIDTH,
  type Frame,
  frame,
  heightForEqualScales,
  type KeyEntry,
  key,
  line,
  mark,
  NARROW,
  type Point,
  svg,
  text,
} from '../lib/chart.js';
import { filledContours } from '../lib/contours.js';
import type { Display } from '../lib/display.js';
import { filledColour, INK, MUTED, PAPER, VERMILION } from '../lib/palette.js';
import { fixed } from '../lib/text.js';
import type { FaceStudy } from './study.js';
import { sideWords } from './words.js';

/** Length of a small flight on the page [px]. */
const FLIGHT = 40;
/** Widest sideways reach of a small flight [px]. */
const SIDEWAYS = 17;
const COLUMNS = [-24, -12, 0, 12, 24];
const FEW_COLUMNS = [-24, 0, 24];
const ROWS = [-12, 0, 12];

/** The face seen from behind the club, looking at the target: carry lost, small flights, and the strikes. */
export function faceChart(study: FaceStudy, display: Display, width: number = CHART_WIDTH): string {
  const { map, hand, strikes, report } = study;
  const unit = display.distance.unit;
  // Seen from behind, the toe of a right-handed club is on the right.
  const mirror = hand === 'left' ? -1 : 1;
  const reach = { toe: 1000 * (map.toe.at(-1) ?? 0), high: 1000 * (map.high.at(-1) ?? 0) };
  const [left, right] = hand === 'left' ? ['toe', 'heel'] : ['heel', 'toe'];
  const spec = {
    width,
    x: {
      label:
        width < NARROW
          ? `${left}   ←   mm from the centre   →   ${right}`
          : `${left} side   ←   millimetres from the face centre   →   ${right} side`,
      domain: [-reach.toe, reach.toe] as const,
      ticks: 13,
      format: (value: number) => fixed(Math.abs(value)),
    },
    y: { label: 'height on the face (mm)', domain: [-reach.high, reach.high] as const, ticks: 7 },
  };
  const f = frame({ ...spec, height: heightForEqualScales(spec) });
  const lost = map.carry.map((carry) => display.distance.of(map.longest.carry - carry));
  const columns = map.toe.length;
  const values =
    mirror > 0 ? lost : lost.map((_, i) => lost[i - (i % columns) + (columns - 1 - (i % columns))] ?? 0);
  const levels = levelsFor(Math.max(...lost));
  const top = levels.at(-1) ?? 1;
  const layers = [
    filledContours(
      f,
      { columns, rows: map.high.length, values },
      levels,
      (level) => filledColour(0.78 * (level / top)),
      () => '',
    ),
    ...levelLabels(f, { columns, values, high: map.high }, levels, report?.pattern.centre, mirror),
    ...smallFlights(f, map, mirror, display),
    ...(report === undefined ? [] : [patternEllipse(f, report.pattern, mirror)]),
    ...strikes.map(({ offset, shot }) =>
      mark(f, [mirror * 1000 * offset.toe, 1000 * offset.high], 'dot', VERMILION, 4.2, `shot ${shot}`),
    ),
    ...(report === undefined
      ? []
      : [
          mark(
            f,
            [mirror * 1000 * report.pattern.centre.toe, 1000 * report.pattern.centre.high],
            'diamond',
            INK,
            5.6,
            'centre of the pattern',
          ),
        ]),
    mark(f, [0, 0], 'cross', INK, 5, 'face centre'),
  ];
  const entries: KeyEntry[] = [
    { name: `carry lost against the best place (${unit})`, colour: filledColour(0.5), mark: 'patch' },
    { name: 'flight seen from above, target up', colour: INK, mark: 'line' },
    { name: 'face centre', colour: INK, mark: 'cross' },
    ...(strikes.length === 0
      ? []
      : ([
          { name: 'strike', colour: VERMILION, mark: 'dot' },
          { name: 'centre of the strikes', colour: INK, mark: 'diamond' },
          { name: 'holds about half of such strikes', colour: VERMILION, mark: 'dashes' },
        ] as const)),
  ];
  return key(entries) + svg(f, 'Carry lost over the face, and where the ball goes', axes(f), ...layers);
}

/** Round steps, at most about ten of them. */
function levelsFor(most: number): readonly number[] {
  const step = [1, 2, 5, 10, 20, 50].find((each) => most / each <= 10) ?? 100;
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
}

/** Names the contours along a line between the small flights, on the side of the face with fewer strikes. */
function levelLabels(
  f: Frame,
  grid: { readonly columns: number; readonly values: readonly number[]; readonly high: readonly number[] },
  levels: readonly number[],
  centre: StrikeOffset | undefined,
  mirror: number,
): readonly string[] {
  const { columns, values, high } = grid;
  const height = (centre?.high ?? -1) > 0 ? -0.006 : 0.006;
  const row = high.findIndex((each) => Math.abs(each - height) < 0.0011);
  const outward = mirror * (centre?.toe ?? 1) > 0 ? -1 : 1;
  const middle = (columns - 1) / 2;
  const [low, top] = f.x.domain() as [number, number];
  const at = (step: number): number => values[row * columns + middle + outward * step] ?? Number.NaN;
  return levels.slice(1).flatMap((level) => {
    for (let step = 0; step < middle; step++) {
      const [from, to] = [at(step), at(step + 1)];
      if (!(from < level && to >= level)) continue;
      const column = middle + outward * (step + (level - from) / (to - from));
      const x = low + (column / (columns - 1)) * (top - low);
      return [
        text(f, [x, 1000 * (high[row] ?? 0)], `−${fixed(level)}`, { anchor: 'middle', dy: 4, size: 11 }),
      ];
    }
    return [];
  });
}

/** Flights in miniature: start direction and finish to one scale, sideways stretched. */
function smallFlights(f: Frame, map: FaceMap, mirror: number, display: Display): readonly string[] {
  const columns = f.width < NARROW ? FEW_COLUMNS : COLUMNS;
  const flights = ROWS.flatMap((high) => columns.map((toe) => flightAt(map, toe / 1000, high / 1000)));
  const widest = Math.max(...flights.flatMap(({ side, middle }) => [Math.abs(side), Math.abs(middle)]), 1);
  return flights.map(({ toe, high, side, middle }) => {
    const x = f.x(mirror * 1000 * toe);
    const y = f.y(1000 * high) + FLIGHT / 2;
    const at = (sideways: number, share: number): string =>
      `${(x + (SIDEWAYS * sideways) / widest).toFixed(1)},${(y - FLIGHT * share).toFixed(1)}`;
    // A quadratic curve leaves toward its control point: the start direction, reached half way.
    const d = `M${at(0, 0)}Q${at(middle, 0.5)} ${at(side, 1)}`;
    const end = x + (SIDEWAYS * side) / widest;
    const label = sideWords(side, display);
    const under = text(f, [f.x.invert(end), f.y.invert(y - FLIGHT)], label, {
      anchor: 'middle',
      dy: -6,
      size: 11,
    });
    return `<path d="M${at(0, 0)}L${at(0, 1)}" stroke="${MUTED}" stroke-width="0.8" stroke-dasharray="2 3"/><path d="${d}" fill="none" stroke="${PAPER}" stroke-width="4.4" stroke-linecap="round"/><path d="${d}" fill="none" stroke="${INK}" stroke-width="1.9" stroke-linecap="round"/><circle cx="${end.toFixed(1)}" cy="${(y - FLIGHT).toFixed(1)}" r="2.7" fill="${INK}"/>${under}`;
  });
}

interface SmallFlight {
  readonly toe: number;
  readonly high: number;
  readonly side: number;
  /** Sideways distance half way if the ball kept its start direction. */
  readonly middle: number;
}

function flightAt(map: FaceMap, toe: number, high: number): SmallFlight {
  const nearest = (list: readonly number[], value: number): number =>
    list.reduce(
      (best, each, i) => (Math.abs(each - value) < Math.abs((list[best] ?? 0) - value) ? i : best),
      0,
    );
  const column = nearest(map.toe, toe);
  const row = nearest(map.high, high);
  const index = row * map.toe.length + column;
  return {
    toe: map.toe[column] ?? 0,
    high: map.high[row] ?? 0,
    side: map.side[index] ?? 0,
    middle: 0.5 * (map.carry[index] ?? 0) * Math.tan(map.launchDirection[index] ?? 0),
  };
}

/** The ellipse that holds half of a two-dimensional normal cloud: radius √(2 ln 2) in units of its spread. */
function patternEllipse(f: Frame, { centre, covariance, count }: StrikePattern, mirror: number): string {
  if (count < 5) return '';
  const [[a, b], [, d]] = covariance;
  const along = Math.sqrt(a);
  const cross = along > 0 ? b / along : 0;
  const rest = Math.sqrt(Math.max(0, d - cross * cross));
  const radius = 1000 * Math.sqrt(2 * Math.LN2);
  const points = Array.from({ length: 73 }, (_, i): Point => {
    const turn = (i / 72) * 2 * Math.PI;
    const [u, v] = [radius * Math.cos(turn), radius * Math.sin(turn)];
    return [mirror * (1000 * centre.toe + along * u), 1000 * centre.high + cross * u + rest * v];
  });
  return line(f, points, { colour: VERMILION, width: 2, dash: '6 4' });
}
