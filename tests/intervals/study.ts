import { type Stream, stream } from '../../src/numerics/index.js';

/** What one simulated answer says about one figure. */
export interface Outcome {
  /** Whether the interval holds the truth; for a power, whether the difference was found. */
  readonly covered: boolean;
  /** Width of the interval. */
  readonly width?: number;
  /** Width of the interval of someone who knows the scatter. */
  readonly oracle?: number;
  /** Whether the answer says that an assumption does not hold. */
  readonly said?: boolean;
}

/** One call under one set of conditions. */
export interface Study {
  /** The call whose intervals are studied. */
  readonly call: string;
  /** How the readings were made. */
  readonly conditions: string;
  /** Whether the call states that it holds under these conditions. */
  readonly stated: boolean;
  /** Times it is simulated. */
  readonly draws: number;
  /** What a figure aims at, where that is not 95 %. */
  readonly aims?: Readonly<Record<string, number>>;
  /** Simulates one answer: outcomes by figure. */
  readonly draw: (random: Stream) => Readonly<Record<string, readonly Outcome[]>>;
}

/** Outcomes of one figure, added up. */
export interface Tally {
  readonly count: number;
  readonly covered: number;
  readonly width: number;
  readonly oracle: number;
  readonly said: number;
  /** Answers that say whether an assumption holds. */
  readonly judged: number;
  /** Neither covered nor said. */
  readonly silent: number;
}

const NONE: Tally = { count: 0, covered: 0, width: 0, oracle: 0, said: 0, judged: 0, silent: 0 };

/** A seed from the words of a study, so that each keeps its draws whatever is studied beside it: FNV-1a, 32 bits. */
function seedOf({ call, conditions }: Study): number {
  return [...`${call}, ${conditions}`].reduce(
    (hash, letter) => Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0,
    0x811c9dc5,
  );
}

/** Adds up draws `from` to `to` of a study, by figure. */
export function tally(study: Study, from = 0, to: number = study.draws): Record<string, Tally> {
  const totals: Record<string, Tally> = {};
  const seed = seedOf(study);
  for (let i = from; i < to; i++) {
    const found = study.draw(stream(seed, i));
    for (const [figure, outcomes] of Object.entries(found)) {
      totals[figure] = outcomes.reduce(plus, totals[figure] ?? NONE);
    }
  }
  return totals;
}

function plus(sum: Tally, { covered, width = 0, oracle = 0, said }: Outcome): Tally {
  return {
    count: sum.count + 1,
    covered: sum.covered + Number(covered),
    width: sum.width + width,
    oracle: sum.oracle + oracle,
    said: sum.said + Number(said ?? false),
    judged: sum.judged + Number(said !== undefined),
    silent: sum.silent + Number(!covered && !said),
  };
}

/** Two tallies of the same figure as one. */
export function joined(a: Tally | undefined, b: Tally): Tally {
  if (a === undefined) return b;
  const sum = (of: keyof Tally): number => a[of] + b[of];
  return {
    count: sum('count'),
    covered: sum('covered'),
    width: sum('width'),
    oracle: sum('oracle'),
    said: sum('said'),
    judged: sum('judged'),
    silent: sum('silent'),
  };
}

/** Outcome of an interval for a known truth. */
export function holds(
  interval: { readonly low: number; readonly high: number },
  truth: number,
  more: Omit<Outcome, 'covered' | 'width'> = {},
): Outcome {
  const { low, high } = interval;
  return { covered: low <= truth && truth <= high, width: high - low, ...more };
}
