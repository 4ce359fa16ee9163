import type { CoefficientLaw } from '../aerodynamics/model.js';
import { windRatio } from '../air/wind-ratio.js';
import type { ValidRange } from '../source.js';
import { bitOf } from '../warnings/bits.js';
import { type CarryEffect, type ModelWarning, outsideRange } from '../warnings/warning.js';
import type { FlightProblem } from './problem.js';

/** Reynolds numbers and spin ratios met in a flight. @internal */
export interface SeenRanges {
  readonly reynolds: ValidRange;
  readonly spinRatio: ValidRange;
}

/** Ranges to be widened. @internal */
export interface WritableRanges {
  readonly reynolds: { min: number; max: number };
  readonly spinRatio: { min: number; max: number };
}

/** The ranges of a flight without a node. @internal */
export function seenNothing(): WritableRanges {
  const nothing = (): { min: number; max: number } => ({ min: Number.POSITIVE_INFINITY, max: 0 });
  return { reynolds: nothing(), spinRatio: nothing() };
}

/**
 * Says where what was seen leaves the published range of a coefficient model, and how far the carry may be off for it
 * where that can be told. @internal
 */
export function rangeWarnings(model: CoefficientLaw, seen: SeenRanges, effect?: CarryEffect): ModelWarning[] {
  const warnings: ModelWarning[] = [];
  for (const quantity of QUANTITIES) {
    const worst = furthestOutside(seen[quantity], model.validity[quantity]);
    const warning =
      worst === undefined
        ? undefined
        : outsideRange(CODES[quantity], model.id, quantity, model.validity[quantity], worst, effect);
    if (warning !== undefined) warnings.push(warning);
  }
  return warnings;
}

/** The codes of {@link rangeWarnings} alone, as bits of `rowWarnings`. @internal */
export function rangeBits({ validity }: CoefficientLaw, seen: SeenRanges): number {
  let bits = 0;
  for (const quantity of QUANTITIES) {
    if (furthestOutside(seen[quantity], validity[quantity]) !== undefined) bits |= bitOf(CODES[quantity]);
  }
  return bits;
}

const QUANTITIES = ['reynolds', 'spinRatio'] as const;
const CODES = { reynolds: 'reynolds-outside-data', spinRatio: 'spin-ratio-outside-data' } as const;

/** Watches the Reynolds numbers and spin ratios of one flight. @internal */
export interface RangeWatch {
  readonly note: (state: ArrayLike<number>) => void;
  readonly seen: SeenRanges;
}

/** Makes a watch for one flight. @internal */
export function rangeWatch(problem: FlightProblem): RangeWatch {
  const { model, profile } = problem;
  const seen = seenNothing();
  return {
    seen,
    note: (state) => {
      const [vx, vy, vz] = [state[3] as number, state[4] as number, state[5] as number];
      const ratio = profile === undefined ? 1 : windRatio(profile, heightAbove(problem, state));
      const ux = vx - problem.windAlong * ratio;
      const uz = vz - problem.windAcross * ratio;
      const speed = Math.sqrt(ux * ux + vy * vy + uz * uz);
      if (speed === 0) return;
      const lx = problem.ny * uz - problem.nz * vy;
      const ly = problem.nz * ux - problem.nx * uz;
      const lz = problem.nx * vy - problem.ny * ux;
      const across = Math.sqrt(lx * lx + ly * ly + lz * lz);
      const effective = model.spinEntering === 'across' ? across / speed : 1;
      widen(seen.reynolds, problem.reynoldsPerSpeed * speed);
      widen(seen.spinRatio, (problem.radius * (state[6] as number) * effective) / speed);
    },
  };
}

function heightAbove({ elevation, slopeX, slopeZ }: FlightProblem, state: ArrayLike<number>): number {
  return (state[1] as number) - elevation - slopeX * (state[0] as number) - slopeZ * (state[2] as number);
}

function widen(range: { min: number; max: number }, value: number): void {
  range.min = Math.min(range.min, value);
  range.max = Math.max(range.max, value);
}

/** The end of `seen` that lies further outside `valid`, relative to the end it passed. */
function furthestOutside(seen: ValidRange, valid: ValidRange): number | undefined {
  const below = valid.min > 0 && seen.min < valid.min ? 1 - seen.min / valid.min : 0;
  const over = seen.max > valid.max ? seen.max / valid.max - 1 : 0;
  if (below === 0 && over === 0) return undefined;
  return over >= below ? seen.max : seen.min;
}
