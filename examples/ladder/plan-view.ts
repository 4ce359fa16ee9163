import { extent, mean, sum } from 'd3-array';
import { axes, type KeyEntry, key, line, mark, NARROW, type Point, spread, svg, text } from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { INK, MUTED, textColour } from '../lib/palette.js';
import { planFrame } from '../lib/plan-frame.js';
import type { Rung } from './rungs.js';

const FEWEST_FOR_ELLIPSE = 5;
/** Width that the name of a band takes; on a narrow chart it stands without its unit [px]. */
const NAME = 70;
const NARROW_NAME = 34;

/** Where the balls came down, seen from above, the target to the right and the right-hand side below. */
export function planView(
  rungs: readonly Rung[],
  colours: readonly string[],
  { distance }: Display,
  width?: number,
): string {
  const landings = rungs.flatMap((rung, i) =>
    rung.shots.map(({ measured, model, outlier }) => {
      const carry = measured.carry ?? model.carry;
      const side = measured.side ?? model.flight.side;
      const along = Math.sqrt(Math.max(0, carry * carry - side * side));
      return { rung: i, at: [distance.of(along), distance.of(side)] as Point, outlier };
    }),
  );
  const xs = landings.map(({ at: [x] }) => x);
  const widest = Math.ceil(Math.max(15, ...landings.map(({ at: [, y] }) => Math.abs(y))) + 8);
  const [from = 0, to = 0] = extent(xs);
  const f = planFrame(from - 8, to + 8, widest, distance.unit, width);
  const x = f.xAxis.domain;
  const own = (rung: number): readonly Point[] =>
    landings.filter((each) => each.rung === rung && !each.outlier).map(({ at }) => at);
  const narrow = f.width < NARROW;
  const room = narrow ? NARROW_NAME : NAME;
  const places = spread(
    rungs.map((_, i) => f.x(mean(own(i), ([along]) => along) ?? 0)),
    room,
  ).map((at) => Math.min(f.inner.right - room / 2, Math.max(f.inner.left + room / 2, at)));
  const layers = [
    line(
      f,
      [
        [x[0], 0],
        [x[1], 0],
      ],
      { colour: INK, width: 1.2 },
    ),
    ...rungs.map((_, i) =>
      own(i).length < FEWEST_FOR_ELLIPSE
        ? ''
        : line(f, halfEllipse(own(i)), { colour: colours[i] ?? INK, width: 1.6 }),
    ),
    ...landings.map(({ at, rung, outlier }) =>
      outlier
        ? mark(f, at, 'cross', INK, 4.4, 'shot far apart')
        : mark(f, at, 'dot', colours[rung] ?? INK, 3.8),
    ),
    ...rungs.map(({ name }, i) =>
      text(f, [f.x.invert(places[i] ?? 0), -widest], narrow ? name.replace(/^([\d.]+) \S+$/, '$1') : name, {
        anchor: 'middle',
        dy: 16,
        weight: 'bold',
        colour: textColour(colours[i] ?? INK),
      }),
    ),
    text(f, [x[narrow ? 0 : 1], -widest], 'left', {
      ...(narrow ? { dx: 6, dy: 32 } : { anchor: 'end', dx: -6, dy: 16 }),
      colour: MUTED,
    }),
    text(f, [x[narrow ? 0 : 1], widest], 'right', {
      ...(narrow ? { dx: 6 } : { anchor: 'end', dx: -6 }),
      dy: -8,
      colour: MUTED,
    }),
    text(f, [x[0], 0], 'target line', { dx: 6, dy: -5, colour: MUTED }),
  ];
  const sample = colours[Math.floor(rungs.length / 2)] ?? INK;
  const entries: KeyEntry[] = [
    { name: 'where a ball landed', colour: sample, mark: 'dot' },
    ...(landings.some(({ outlier }) => outlier)
      ? [{ name: 'shot far apart', colour: INK, mark: 'cross' } as const]
      : []),
    { name: 'holds about half the shots', colour: sample, mark: 'line' },
  ];
  return key(entries) + svg(f, 'Landing points seen from above', axes(f), ...layers);
}

/** The ellipse that holds half of a two-dimensional normal cloud: radius √(2 ln 2) in units of its spread. */
function halfEllipse(points: readonly Point[]): readonly Point[] {
  const mx = mean(points, ([x]) => x) ?? 0;
  const my = mean(points, ([, y]) => y) ?? 0;
  const product = (of: (x: number, y: number) => number): number =>
    sum(points, ([x, y]) => of(x - mx, y - my)) / (points.length - 1);
  // The Cholesky factor of the covariance turns a circle into the ellipse.
  const a = Math.sqrt(product((x) => x * x));
  const b = a > 0 ? product((x, y) => x * y) / a : 0;
  const c = Math.sqrt(Math.max(0, product((_, y) => y * y) - b * b));
  const radius = Math.sqrt(2 * Math.LN2);
  return Array.from({ length: 73 }, (_, i) => {
    const turn = (i / 72) * 2 * Math.PI;
    const [u, v] = [radius * Math.cos(turn), radius * Math.sin(turn)];
    return [mx + a * u, my + b * u + c * v];
  });
}
