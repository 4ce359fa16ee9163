import {
  axes,
  CHART_WIDTH,
  frame,
  type KeyEntry,
  key,
  line,
  type Mark,
  mark,
  NARROW,
  type Point,
  svg,
  text,
} from '../lib/chart.js';
import type { Display } from '../lib/display.js';
import { BLUE, GREEN, GRID, INK, ORANGE, PURPLE, VERMILION } from '../lib/palette.js';
import { fixed, signed } from '../lib/text.js';
import type { Elsewhere } from './elsewhere.js';
import type { Place } from './scenes.js';
import { headOf } from './words.js';

const LOOKS: Readonly<Record<Exclude<Place['key'], 'across'>, readonly [colour: string, mark: Mark]>> = {
  winter: [BLUE, 'dot'],
  summer: [ORANGE, 'dot'],
  altitude: [PURPLE, 'diamond'],
  into: [VERMILION, 'cross'],
  with: [GREEN, 'ring'],
};
const ROW = 26;

/** Change of carry of every club in every place. */
export function changesChart(
  { clubs, places }: Elsewhere,
  { distance }: Display,
  width: number = CHART_WIDTH,
): string {
  const drawn = places.flatMap((place) => {
    if (place.key === 'across') return [];
    const [colour, look] = LOOKS[place.key];
    return [{ key: place.key, name: headOf(place), colour, look }];
  });
  const changes = clubs.flatMap(({ there }) =>
    drawn.flatMap((place) => {
      const { value, spread } = there[place.key].carryChange;
      return [value, spread?.low ?? value, spread?.high ?? value].map(distance.of);
    }),
  );
  const narrow = width < NARROW;
  const f = frame({
    width,
    height: ROW * clubs.length + 66,
    x: {
      label: `change of carry (${distance.unit})`,
      domain: [Math.floor(Math.min(0, ...changes) - 1.5), Math.ceil(Math.max(0, ...changes) + 1.5)],
      ticks: 10,
      format: (value) => signed(value),
    },
    y: { label: '', domain: [clubs.length - 0.5, -0.5], ticks: 0 },
    margin: { left: narrow ? 96 : 170, right: 18, top: 12, bottom: 46 },
  });
  const [low, high] = f.xAxis.domain;
  const row = (y: number): readonly Point[] => [
    [low, y],
    [high, y],
  ];
  const zero: readonly Point[] = [
    [0, -0.5],
    [0, clubs.length - 0.5],
  ];
  const layers = [
    ...clubs.map((_, i) => line(f, row(i), { colour: GRID, width: 1 })),
    line(f, zero, { colour: INK, width: 1.2 }),
    ...clubs.flatMap(({ club, carry, there }, i) => [
      text(f, [low, i], narrow ? club : `${club}, ${fixed(distance.of(carry.mean))} ${distance.unit}`, {
        anchor: 'end',
        dx: -10,
        dy: 4,
        size: 12.5,
      }),
      ...drawn.flatMap((place) => {
        const { value, spread, known } = there[place.key].carryChange;
        const ends = spread && ([distance.of(spread.low), distance.of(spread.high)] as const);
        const range =
          ends &&
          line(
            f,
            ends.map((end) => [end, i] as const),
            { colour: place.colour, width: 2 },
          );
        const at = distance.of(value);
        return [
          ...(range === undefined ? [] : [range]),
          ...(known === false
            ? []
            : [mark(f, [at, i], place.look, place.colour, 5, `${place.name}: ${signed(at, 1)}`)]),
        ];
      }),
    ]),
  ];
  const entries: KeyEntry[] = drawn.map(({ name, colour, look }) => ({ name, colour, mark: look }));
  return key(entries) + svg(f, 'Change of carry by place', axes(f), ...layers);
}
