import { brent, brentMinimum, type Known } from '../numerics/index.js';

/** A point a search asks for: what is maximised, and how far a constraint is met (negative: broken). @internal */
export interface Trial {
  /** What is maximised; −Infinity where nothing can be computed. */
  readonly value: number;
  /** Margin to the constraint; Infinity where there is none. */
  readonly margin: number;
}

/** What {@link maximise} found. @internal */
export interface Maximum {
  /** Where. */
  readonly x: number;
  /** Value there; −Infinity when no point of the interval could be computed. */
  readonly value: number;
  /** What holds it: an end of the interval, the constraint, or nothing. */
  readonly heldBy: 'nothing' | 'range' | 'constraint';
  /** False when the constraint is broken everywhere; then `x` breaks it least. */
  readonly met: boolean;
  /** Margin to the constraint there; Infinity where there is none. */
  readonly margin: number;
}

/** Of x, as a share of the interval: flat as a maximum is, the error of a flight moves it by more. */
const TOLERANCE = 2e-5;

/**
 * The greatest value on an interval under one constraint. A grid finds the humps and where the constraint changes, so
 * that a second hump is not missed; Brent's methods refine both.
 * @param cells - of the grid; features narrower than one can be missed
 * @internal
 */
export function maximise(trial: (x: number) => Trial, lower: number, upper: number, cells: number): Maximum {
  const tolerance = TOLERANCE * (upper - lower);
  const nodes: { readonly x: number; readonly value: number; readonly margin: number }[] = [];
  for (let i = 0; i <= cells; i++) {
    const x = lower + ((upper - lower) * i) / cells;
    const here = trial(x);
    const last = nodes.at(-1);
    if (
      last &&
      Number.isFinite(last.margin) &&
      Number.isFinite(here.margin) &&
      last.margin < 0 !== here.margin < 0
    ) {
      const edge = brent((at) => trial(at).margin, last.x, x, { tolerance }).x;
      // Just inside, so that the edge counts as met.
      const inside = here.margin >= 0 ? Math.min(x, edge + tolerance) : Math.max(last.x, edge - tolerance);
      const there = trial(inside);
      if (there.margin >= 0) nodes.push({ x: inside, ...there });
    }
    nodes.push({ x, ...here });
  }

  let best = -1;
  const value = (i: number): number => {
    const node = nodes[i];
    return node && node.margin >= 0 ? node.value : Number.NEGATIVE_INFINITY;
  };
  let found: { x: number; value: number } | undefined;
  for (let i = 0; i < nodes.length; i++) {
    if (value(i) === Number.NEGATIVE_INFINITY || value(i - 1) > value(i) || value(i + 1) > value(i)) continue;
    const node = nodes[i] as (typeof nodes)[number];
    if (!found || node.value > found.value) {
      found = { x: node.x, value: node.value };
      best = i;
    }
    const computed = (k: number): number => (value(k) > Number.NEGATIVE_INFINITY ? k : i);
    const [from, to] = [nodes[computed(i - 1)] ?? node, nodes[computed(i + 1)] ?? node];
    const least = ({ x, value }: Known): Known => ({ x, value: -value });
    const refined = brentMinimum((x) => -trial(x).value, from.x, to.x, {
      tolerance,
      ...(from !== node && to !== node && { known: [least(node), least(from), least(to)] }),
    });
    if (-refined.value > found.value) {
      found = { x: refined.x, value: -refined.value };
      best = -1;
    }
  }
  if (found) {
    const heldBy =
      best === 0 || best === nodes.length - 1
        ? 'range'
        : best > 0 && atEdge(nodes, best)
          ? 'constraint'
          : 'nothing';
    return { ...found, heldBy, met: true, margin: trial(found.x).margin };
  }
  const computed = nodes.filter((node) => node.value > Number.NEGATIVE_INFINITY);
  const least = computed.reduce<(typeof nodes)[number] | undefined>(
    (a, b) => (a && a.margin >= b.margin ? a : b),
    undefined,
  );
  return {
    x: least?.x ?? lower,
    value: least?.value ?? Number.NEGATIVE_INFINITY,
    heldBy: 'constraint',
    met: false,
    margin: least?.margin ?? Number.NEGATIVE_INFINITY,
  };
}

function atEdge(nodes: readonly { readonly margin: number }[], i: number): boolean {
  return (nodes[i - 1]?.margin ?? 0) < 0 || (nodes[i + 1]?.margin ?? 0) < 0;
}

/** One end of what {@link reach} finds. @internal */
export interface End {
  readonly x: number;
  /** True when the constraint ends it, not the loss of value. */
  readonly byConstraint: boolean;
}

/** How far an input may move either way; an end is left out where nothing stops it within the interval. @internal */
export interface Reach {
  readonly low?: End;
  readonly high?: End;
}

/** What {@link reach} walks away from, and how far. @internal */
export interface Walkway {
  /** Where the walk starts. */
  readonly x: number;
  /** What is found there: the loss is a share of its value. */
  readonly best: Trial;
  /** Share of it that may be lost. */
  readonly loss: number;
  readonly lower: number;
  readonly upper: number;
  /** Step of the walk. */
  readonly step: number;
  /** Whether the loss has no humps: the first step then tells where the end must be, and the walk leaps there. */
  readonly smooth: boolean;
  /** Power of the distance with which the loss grows near the start: 2 about a maximum, 1 on a slope. */
  readonly power: 1 | 2;
}

/** Of an end, in steps of the walk. */
const END_TOLERANCE = 1e-3;
/** How far a leap goes, as a share of the way to where the end must be: a little beyond, so that the end lies between. */
const LEAP = 1.1;
/** Longest leap, in steps of the walk. */
const LONGEST_LEAP = 8;

/**
 * Walks from `x` both ways in steps until too much of the value is lost or the constraint breaks, and refines where.
 * @internal
 */
export function reach(trial: (x: number) => Trial, way: Walkway): Reach {
  const low = edgeOf(trial, way, -1);
  const high = edgeOf(trial, way, 1);
  return { ...(low && { low }), ...(high && { high }) };
}

function edgeOf(
  trial: (x: number) => Trial,
  { x, best, loss, lower, upper, step, smooth, power }: Walkway,
  side: -1 | 1,
): End | undefined {
  const known = new Map<number, { readonly spare: number; readonly byConstraint: boolean }>();
  const at = (place: number): { readonly spare: number; readonly byConstraint: boolean } => {
    const before = known.get(place);
    if (before !== undefined) return before;
    const { value, margin } = place === x ? best : trial(place);
    // Nearly straight, so that the root finder needs few steps; finite everywhere.
    const lost = value === Number.NEGATIVE_INFINITY ? 1 : Math.max(0, 1 - value / best.value);
    const left = loss ** (1 / power) - lost ** (1 / power);
    const here = { spare: Math.min(left, margin), byConstraint: margin < left };
    known.set(place, here);
    return here;
  };
  const end = side > 0 ? upper : lower;
  let from = x;
  if (at(from).spare < 0) return { x: from, byConstraint: at(from).byConstraint };
  while (side * (end - from) > 0) {
    const walked = Math.abs(from - x);
    const spent = 1 - at(from).spare / loss ** (1 / power);
    // Where nothing is lost yet, twice as far.
    const leap = !smooth ? 0 : spent > 0 ? (LEAP * walked) / spent - walked : walked + step;
    const stride = Math.min(Math.max(step, leap), LONGEST_LEAP * step);
    const to = from + side * Math.min(stride, side * (end - from));
    if (at(to).spare < 0) {
      const tolerance = step * END_TOLERANCE;
      const edge = brent((place) => at(place).spare, from, to, { tolerance }).x;
      return { x: edge, byConstraint: at(edge).byConstraint };
    }
    from = to;
  }
  return undefined;
}
