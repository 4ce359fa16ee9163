import {
  axes,
  CHART_WIDTH,
  frame,
  heightFor,
  type KeyEntry,
  key,
  line,
  mark,
  type Point,
  svg,
  text,
  whisker,
} from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { INK, VERMILION } from '../lib/palette.js';
import { fixed } from '../lib/text.js';
import type { AttainablePoint } from './ladder.js';
import type { Rung } from './rungs.js';

/** Carry against club speed: every shot, the band means, and what the best loft can give. */
export function carryChart(
  rungs: readonly Rung[],
  attainable: readonly AttainablePoint[],
  colours: readonly string[],
  { speed, distance }: Display,
  width: number = CHART_WIDTH,
): string {
  const shots = rungs.flatMap((rung, i) =>
    rung.shots.flatMap(({ measured, model, outlier }) => {
      if (measured.clubSpeed === undefined) return [];
      const colour = colours[i] ?? INK;
      return [{ band: i, at: point(measured.clubSpeed, measured.carry ?? model.carry), outlier, colour }];
    }),
  );
  if (shots.length === 0) return '<p>Club speed was not measured, so there is nothing to draw.</p>';
  const curve = attainable.map(({ clubSpeed, carry }) => point(clubSpeed, carry));
  const all = [...shots.map(({ at }) => at), ...curve];
  const intervals = rungs.flatMap(({ estimates: { carry } }) =>
    carry?.interval === undefined ? [] : [distance.of(carry.interval.low), distance.of(carry.interval.high)],
  );
  const f = frame({
    width,
    height: heightFor(width, 390),
    x: {
      label: `club speed (${speed.unit})`,
      domain: padded(
        all.map(([x]) => x),
        1,
      ),
      ticks: 9,
    },
    y: {
      label: `carry (${distance.unit})`,
      domain: padded([...all.map(([, y]) => y), ...intervals], 5),
      ticks: 8,
    },
  });
  function point(clubSpeed: number, carry: number): Point {
    return [speed.of(clubSpeed), distance.of(carry)];
  }
  const means = rungs.flatMap(({ clubSpeed, estimates: { carry }, name }, i) => {
    if (clubSpeed === undefined || carry === undefined) return [];
    const at = point(clubSpeed, carry.mean);
    const { low, high } = carry.interval ?? { low: carry.mean, high: carry.mean };
    const widest = Math.max(...shots.filter(({ band }) => band === i).map(({ at: [x] }) => f.x(x)));
    return [
      whisker(f, at[0], distance.of(low), distance.of(high), INK),
      mark(f, at, 'diamond', colours[i] ?? INK, 5.4, name),
      text(f, at, fixed(at[1]), {
        dx: Math.max(14, widest - f.x(at[0]) + 9),
        dy: 4,
        weight: 'bold',
        size: 12.5,
      }),
    ];
  });
  const best = rungs.flatMap(({ clubSpeed, loft }) => {
    if (clubSpeed === undefined || loft === undefined) return [];
    const at = point(clubSpeed, loft.optimum.shot.carry);
    return [text(f, at, fixed(at[1]), { dx: -8, dy: -8, anchor: 'end', colour: VERMILION, size: 12.5 })];
  });
  const layers = [
    line(f, curve, { colour: VERMILION, width: 2.4, smooth: true }),
    ...shots.map(({ at, outlier, colour }) =>
      outlier ? mark(f, at, 'cross', INK, 4.4, 'shot far apart') : mark(f, at, 'dot', colour, 3.6),
    ),
    ...means,
    ...best,
  ];
  const sample = colours[Math.floor(rungs.length / 2)] ?? INK;
  const entries: KeyEntry[] = [
    { name: 'one shot', colour: sample, mark: 'dot' },
    ...(shots.some(({ outlier }) => outlier)
      ? [{ name: 'shot far apart', colour: INK, mark: 'cross' } as const]
      : []),
    { name: 'mean, and its range 19 times in 20', colour: sample, mark: 'diamond' },
    { name: 'best loft, struck in the middle', colour: VERMILION, mark: 'line' },
  ];
  return key(entries) + svg(f, 'Carry against club speed', axes(f), ...layers);
}

function padded(values: readonly number[], by: number): readonly [number, number] {
  return [Math.floor(Math.min(...values) - by), Math.ceil(Math.max(...values) + by)];
}
