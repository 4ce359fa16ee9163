import {
  axes,
  box,
  CHART_WIDTH,
  frame,
  heightFor,
  type KeyEntry,
  key,
  line,
  mark,
  type Point,
  svg,
} from '../lib/chart.js';
import { filledContours } from '../lib/contours.js';
import type { Display } from '../lib/display.js';
import { filledColour, INK, PAPER, VERMILION } from '../lib/palette.js';
import { counted, fixed } from '../lib/text.js';
import type { Ladder } from './ladder.js';

const MOST_LEVELS = 14;

/** Carry over launch and spin at one band's ball speed, with the shots of the band on it. */
export function launchSpinMap(
  { map: { rung, carry: map }, deliverable }: Ladder,
  display: Display,
  width: number = CHART_WIDTH,
): string {
  const { distance, angle, spin } = display;
  const values = Array.from(map.carry, distance.of);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const step = [2, 5, 10, 20].find((each) => (high - low) / each <= MOST_LEVELS) ?? 50;
  const first = Math.ceil(low / step) * step;
  const levels = Array.from({ length: Math.ceil((high - first) / step) }, (_, i) => first + i * step);
  const ends = (of: Float64Array, shown: (si: number) => number): readonly [number, number] => [
    shown(of[0] ?? 0),
    shown(of[of.length - 1] ?? 1),
  ];
  const [left, right] = ends(map.launchAngle, angle.of);
  const [bottom, top] = ends(map.spinRate, spin.of);
  const f = frame({
    width,
    height: heightFor(width, 430),
    x: { label: 'launch angle (°)', domain: [left, right], ticks: 10 },
    y: { label: 'spin (rpm)', domain: [bottom, top], ticks: 8 },
  });
  const inside = ([x, y]: Point): boolean => x >= left && x <= right && y >= bottom && y <= top;
  const place = (launch: { launchAngle: number; spinRate: number }): Point => [
    angle.of(launch.launchAngle),
    spin.of(launch.spinRate),
  ];
  const shots = rung.shots.map(({ launch, outlier }) => ({ at: place(launch), outlier }));
  const head = deliverable.map(place).filter(inside);
  const best = rung.loft?.optimum.shot.launch;
  const share = (level: number): number => (level - first) / Math.max(1e-9, high - first);
  const layers = [
    box(f, [left, bottom], [right, top], filledColour(0)),
    filledContours(
      f,
      { columns: map.columns, rows: map.rows, values },
      levels,
      (level) => filledColour(share(level)),
      (level) => fixed(level),
    ),
    line(f, head, { colour: PAPER, width: 5, opacity: 0.8 }),
    line(f, head, { colour: VERMILION, width: 2.4 }),
    ...shots
      .filter(({ at }) => inside(at))
      .map(({ at, outlier }) => mark(f, at, outlier ? 'cross' : 'dot', INK, outlier ? 5 : 4.2)),
    ...(best === undefined ? [] : [mark(f, place(best), 'diamond', VERMILION, 7)]),
  ];
  const entries: KeyEntry[] = [
    { name: 'one shot', colour: INK, mark: 'dot' },
    ...(shots.some(({ outlier }) => outlier)
      ? [{ name: 'shot far apart', colour: INK, mark: 'cross' } as const]
      : []),
    { name: 'what this head gives as its loft changes', colour: VERMILION, mark: 'line' },
    { name: 'best loft', colour: VERMILION, mark: 'diamond' },
  ];
  const outside = shots.filter(({ at }) => !inside(at)).length;
  const note = outside === 0 ? '' : `<p class="note">Outside the map: ${counted(outside, 'shot')}.</p>`;
  return key(entries) + svg(f, `Carry over launch and spin, ${rung.name}`, axes(f), ...layers) + note;
}
