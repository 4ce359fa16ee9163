import type { Speed } from '../units/index.js';
import { clearSign, type PairedDifference } from './paired-difference.js';

/** A factor on scatter at which strokes equal today's. */
export interface BreakEvenFactor {
  /** Factor on today's scatter of path, face and strike. */
  readonly value: number;
  /** 95 % interval: the factors at which strokes are not clearly other than today's. */
  readonly interval: { readonly low: number; readonly high: number };
  /**
   * On which side of it the speed pays. `narrower`: with less scatter than that, as a rule. `wider`: with more, where
   * wider shots miss a hazard that lies in the way.
   */
  readonly pays: 'narrower' | 'wider';
}

/** Scatter at which a speed is worth as much as today's. */
export type BreakEven = {
  /** Club speed [m/s]. */
  readonly clubSpeed: Speed;
} & (
  | {
      /** Strokes equal today's within the factors looked at. */
      readonly kind: 'within';
      /** Where: one factor as a rule, several where a hazard makes strokes rise and fall; smallest first. */
      readonly factors: readonly BreakEvenFactor[];
    }
  | {
      /**
       * `under`: strokes are clearly more than today's from this factor up to the widest looked at, and nowhere clearly
       * fewer. `over`: clearly fewer from the narrowest looked at up to this factor, and nowhere clearly more.
       */
      readonly kind: 'under' | 'over';
      /** The narrowest or widest factor at which that is clear. */
      readonly factor: number;
    }
  | {
      /** These shots show neither where strokes equal today's nor on which side they are. */
      readonly kind: 'unclear';
    }
);

interface Point {
  /** Logarithm of the factor. */
  readonly x: number;
  readonly change: PairedDifference;
}

/** What was played at a speed, by rising factor, and a way to play more. */
interface Played {
  readonly points: readonly Point[];
  readonly play: (x: number) => void;
}

/** How often a factor, and an end of its interval, is played before it is read off between two that were. */
const TIMES = { value: 2, end: 1, halved: 3 };

/**
 * Where strokes at a speed equal today's. Strokes are played at the factors given, then where those point to in between:
 * at the factor itself, and at the ends of its interval, which are the factors where the difference starts to be clear.
 * @param changeAt - strokes against today's at a factor on scatter; undefined where shots would be wider than can be played
 * @internal
 */
export function breakEvenAt(
  clubSpeed: Speed,
  changeAt: (factor: number) => PairedDifference | undefined,
  factors: readonly number[],
): BreakEven {
  const points: Point[] = [];
  const play = (x: number): void => {
    const change = changeAt(Math.exp(x));
    if (change === undefined) return;
    const next = points.findIndex((other) => other.x > x);
    points.splice(next < 0 ? points.length : next, 0, { x, change });
  };
  for (const factor of factors) play(Math.log(factor));
  const played = { points, play };
  const clear = points.filter(({ change }) => clearSign(change) !== 0);
  const found = clear.flatMap((to, i) => {
    const from = clear[i - 1];
    return from === undefined || clearSign(from.change) === clearSign(to.change)
      ? []
      : [crossing(played, from, to)];
  });
  if (found.length > 0) return { clubSpeed, kind: 'within', factors: found };
  return { clubSpeed, ...oneSided(played) };
}

/** What can be said where strokes are nowhere clearly fewer, or nowhere clearly more, than today's. */
function oneSided({
  points,
  play,
}: Played): { kind: 'under' | 'over'; factor: number } | { kind: 'unclear' } {
  const [narrowest, widest] = [points[0], points.at(-1)];
  const signAt = (i: number): number => clearSign((points[i] as Point).change);
  if (widest !== undefined && clearSign(widest.change) === 1) {
    const first = (): number => points.map((_, i) => signAt(i)).lastIndexOf(0) + 1;
    halve(play, () => [points[first() - 1], points[first()]]);
    return { kind: 'under', factor: Math.exp((points[first()] ?? widest).x) };
  }
  if (narrowest !== undefined && clearSign(narrowest.change) === -1) {
    const end = (): number => [...points.map((_, i) => signAt(i)), 0].indexOf(0);
    halve(play, () => [points[end() - 1], points[end()]]);
    return { kind: 'over', factor: Math.exp((points[end() - 1] ?? narrowest).x) };
  }
  return { kind: 'unclear' };
}

/** Plays halfway between two points, one clear and one not, so that what is said is said of a factor that was played. */
function halve(play: Played['play'], between: () => readonly [Point | undefined, Point | undefined]): void {
  for (let i = 0; i < TIMES.halved; i++) {
    const [a, b] = between();
    if (a !== undefined && b !== undefined) play((a.x + b.x) / 2);
  }
}

/** The factor between one where strokes are clearly fewer and one where they are clearly more, or the other way round. */
function crossing(played: Played, from: Point, to: Point): BreakEvenFactor {
  const rises = clearSign(to.change) === 1;
  const turned = (of: (point: Point) => number): ((point: Point) => number) =>
    rises ? of : (point) => -of(point);
  return {
    value: factorAt(played, from, to, turned(middle), TIMES.value, 'first'),
    interval: {
      low: factorAt(played, from, to, turned(rises ? most : least), TIMES.end, 'first'),
      high: factorAt(played, from, to, turned(rises ? least : most), TIMES.end, 'last'),
    },
    pays: rises ? 'narrower' : 'wider',
  };
}

const least = ({ change }: Point): number => change.interval.low;
const middle = ({ change }: Point): number => change.value;
const most = ({ change }: Point): number => change.interval.high;

/** Where a figure that is below 0 at one point and above at another crosses 0, played so many times on the way. */
function factorAt(
  { points, play }: Played,
  from: Point,
  to: Point,
  of: (point: Point) => number,
  times: number,
  crossingOf: 'first' | 'last',
): number {
  const crossing = (): number => {
    const inside = points.filter(({ x }) => x >= from.x && x <= to.x);
    const below = inside.map((point) => of(point) < 0);
    const next = crossingOf === 'first' ? below.indexOf(false) : below.lastIndexOf(true) + 1;
    const [a = from, b = to] = [inside[next - 1], inside[next]];
    return a.x - (of(a) * (b.x - a.x)) / (of(b) - of(a));
  };
  for (let i = 0; i < times; i++) play(crossing());
  return Math.exp(crossing());
}
