import { frozen } from '../inputs/frozen.js';
import type { Launch } from '../inputs/launch.js';
import { stream } from '../numerics/index.js';
import type { Walk } from '../shot/walk.js';
import { si } from '../units/index.js';

/** A cause of a change of distance. `launch` is angle and direction together; `air` is air and wind together. */
export type ChangeFactor = 'ballSpeed' | 'launch' | 'spinRate' | 'spinAxis' | 'air';

/** Causes in the order of their bits. @internal */
export const FACTORS: readonly ChangeFactor[] = ['ballSpeed', 'launch', 'spinRate', 'spinAxis', 'air'];
/** Bit of `air` in a coalition. @internal */
export const AIR_BIT: number = /* @__PURE__ */ frozen(() => 1 << FACTORS.indexOf('air'));

/** All pairs, or where there are too many a fixed random choice in which every shot of both groups has its turn. @internal */
export function pairsOf(n: number, m: number, most: number, seed: number): [number, number][] {
  if (n * m <= most) return Array.from({ length: n * m }, (_, k) => [Math.floor(k / m), k % m]);
  const random = stream(seed, 0);
  const count = Math.max(most, n, m);
  const decks = [shuffledDeck(n, count, random.integer), shuffledDeck(m, count, random.integer)] as const;
  return Array.from({ length: count }, (_, k) => [decks[0][k] ?? 0, decks[1][k] ?? 0]);
}

function shuffledDeck(size: number, count: number, integer: (n: number) => number): number[] {
  const cards: number[] = [];
  while (cards.length < count) {
    const deck = Array.from({ length: size }, (_, i) => i);
    for (let i = size - 1; i > 0; i--) {
      const j = integer(i + 1);
      [deck[i], deck[j]] = [deck[j] ?? 0, deck[i] ?? 0];
    }
    cards.push(...deck);
  }
  return cards.slice(0, count);
}

/** Distances of the two groups as they are, and of every pair in every mixture, coalition by coalition. @internal */
export interface Mixtures {
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly mixed: readonly Float64Array[];
  readonly sameAir: boolean;
}

/** Launches of one group, and the walk through the scene it was measured in. @internal */
export interface FlownGroup {
  readonly launches: readonly Launch[];
  readonly walk: Walk;
}

/** Flies both groups and every pair in every mixture. @internal */
export function flyMixtures(
  first: FlownGroup,
  second: FlownGroup,
  pairs: readonly (readonly [number, number])[],
  sameAir: boolean,
): { readonly carry: Mixtures; readonly total: Mixtures } {
  const coalitions = 2 ** FACTORS.length;
  const empty = (): Float64Array[] =>
    Array.from({ length: coalitions }, () => new Float64Array(pairs.length));
  const [carry, total] = [empty(), empty()];
  const play = (launch: Launch, walk: Walk): readonly [number, number] => {
    const { carry, total } = walk.play(launch, true);
    return [carry, total];
  };
  const plainBefore = first.launches.map((launch) => play(launch, first.walk));
  const plainAfter = second.launches.map((launch) => play(launch, second.walk));
  for (let c = 1; c < coalitions - 1; c++) {
    // Where both flew in the same air, a coalition with `air` is the one without it.
    if (sameAir && (c & AIR_BIT) !== 0) continue;
    pairs.forEach(([i, j], k) => {
      const a = first.launches[i];
      const b = second.launches[j];
      if (a === undefined || b === undefined) return;
      const [pairCarry, pairTotal] = play(mixture(a, b, c), ((c & AIR_BIT) !== 0 ? second : first).walk);
      setAt(carry, c, k, pairCarry);
      setAt(total, c, k, pairTotal);
    });
  }
  const gather = (mixed: Float64Array[], of: 0 | 1): Mixtures => ({
    before: plainBefore.map((pair) => pair[of]),
    after: plainAfter.map((pair) => pair[of]),
    mixed,
    sameAir,
  });
  return { carry: gather(carry, 0), total: gather(total, 1) };
}

function setAt(table: readonly Float64Array[], row: number, column: number, value: number): void {
  const target = table[row];
  if (target !== undefined) target[column] = value;
}

function mixture(a: Launch, b: Launch, coalition: number): Launch {
  const from = (factor: ChangeFactor): Launch => ((coalition >>> FACTORS.indexOf(factor)) & 1 ? b : a);
  const launch = from('launch');
  return {
    ballSpeed: from('ballSpeed').ballSpeed,
    launchAngle: launch.launchAngle,
    launchDirection: launch.launchDirection ?? si(0),
    spinRate: from('spinRate').spinRate,
    spinAxisTilt: from('spinAxis').spinAxisTilt ?? si(0),
  };
}
