import { brent, brentMinimum } from '../numerics/index.js';

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

/** Of x, as a share of the interval. */
const TOLERANCE = 1e-6;

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
    const from = value(i - 1) > Number.NEGATIVE_INFINITY ? (nodes[i - 1]?.x ?? node.x) : node.x;
    const to = value(i + 1) > Number.NEGATIVE_INFINITY ? (nodes[i + 1]?.x ?? node.x) : node.x;
    const refined = brentMinimum((x) => -trial(x).value, from, to, { tolerance });
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

/**
 * Walks from `x` both ways in steps until the value falls below `keep` or the constraint breaks, and refines where.
 * @internal
 */
export function reach(
  trial: (x: number) => Trial,
  x: number,
  keep: number,
  lower: number,
  upper: number,
  step: number,
): Reach {
  const low = edgeOf(trial, x, keep, lower, -step);
  const high = edgeOf(trial, x, keep, upper, step);
  return { ...(low && { low }), ...(high && { high }) };
}

function edgeOf(
  trial: (x: number) => Trial,
  x: number,
  keep: number,
  limit: number,
  step: number,
): End | undefined {
  // Both parts in units of what is to be kept, so that the root finder sees one function; finite everywhere.
  const spare = (at: number): number => {
    const { value, margin } = trial(at);
    return value === Number.NEGATIVE_INFINITY ? -1 : Math.min(value / keep - 1, margin);
  };
  const endAt = (at: number): End => {
    const { value, margin } = trial(at);
    return { x: at, byConstraint: margin < value / keep - 1 };
  };
  let from = x;
  if (spare(from) < 0) return endAt(from);
  while (step > 0 ? from < limit : from > limit) {
    const to = step > 0 ? Math.min(limit, from + step) : Math.max(limit, from + step);
    if (spare(to) < 0) return endAt(brent(spare, from, to, { tolerance: Math.abs(step) * 1e-5 }).x);
    from = to;
  }
  return undefined;
}
