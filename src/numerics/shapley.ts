import { requireWithin } from './require.js';

/**
 * Shapley values: each player's share of value(all) − value(none). It is what the player adds on joining, averaged over
 * all orders in which the players can join. The shares add up exactly.
 *
 * Source: Shapley L S (1953) A value for n-person games, in Contributions to the Theory of Games II, 307–317; for
 * splitting a change into causes Shorrocks A F (2013) J. Econ. Inequal. 11, 99–126.
 * @param players - 1 to 16
 * @param value - value of a coalition, its members the bits of the number given
 */
export function shapley(players: number, value: (coalition: number) => number): number[] {
  requireWithin('players', players, 1, 16, '');
  const values = Array.from({ length: 2 ** players }, (_, coalition) => value(coalition));
  // Weight of a coalition of size s that the player joins: s! (n − s − 1)! / n!.
  const weights = [1 / players];
  for (let s = 1; s < players; s++) weights.push((weights[s - 1]! * s) / (players - s));
  return Array.from({ length: players }, (_, player) => {
    let share = 0;
    for (let coalition = 0; coalition < values.length; coalition++) {
      if ((coalition >>> player) & 1) continue;
      share += weights[bitCount(coalition)]! * (values[coalition | (1 << player)]! - values[coalition]!);
    }
    return share;
  });
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}
