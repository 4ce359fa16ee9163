import rows from '../../../tests/published/data/outside-spin.json' with { type: 'json' };
import { createFlightEngine } from '../../flight/engine/general.js';
import { flightProblem } from '../../flight/problem.js';
import { resolveScene } from '../../scene/scene.js';
import { degrees, metresPerSecond, mph, rpm } from '../../units/index.js';
import { fittedModern } from '../fitted-modern.js';

/** Share of the spin lost some time after a launch. */
export interface SpinRow {
  readonly id: string;
  readonly what: string;
  /** [%] */
  readonly expected: number;
  /** What a miss is divided by [%]. */
  readonly spread: number;
  /** Share lost by a decay constant [%]. */
  readonly lost: (decay: number) => number;
}

const PATENT = 'us8016695-';

function speedOf(text: string): ReturnType<typeof mph> {
  const value = Number.parseFloat(text);
  return text.endsWith('mph') ? mph(value) : metresPerSecond(value);
}

/** The outside rows of spin lost: those of US patent 8,016,695 first. */
export const spinRows: readonly SpinRow[] = rows.rows.flatMap((row): SpinRow[] => {
  const { id, what, expected, tolerance } = row;
  if (row.measure !== 'spin lost' || expected === undefined || tolerance === undefined) return [];
  const { ballSpeed, launchAngle, spin } = row.assumed as Readonly<
    Record<'ballSpeed' | 'launchAngle' | 'spin', string>
  >;
  const launch = {
    ballSpeed: speedOf(ballSpeed),
    launchAngle: degrees(Number.parseFloat(launchAngle)),
    spinRate: rpm(Number.parseFloat(spin)),
  };
  const time = Number.parseFloat((row.given as { readonly time: string }).time);
  const lost = (spinDecay: number): number => {
    const aerodynamics = { ...fittedModern, id: 'decay', spinDecay };
    const problem = flightProblem(launch, resolveScene({ aerodynamics }));
    const { state } = createFlightEngine().fly(problem, 1e-6, time);
    return 100 * (1 - (state[6] ?? Number.NaN) / launch.spinRate);
  };
  return [{ id, what, expected, spread: tolerance, lost }];
});

/** True for a row of the patent. */
export function isPatent({ id }: SpinRow): boolean {
  return id.startsWith(PATENT);
}

/** Mean of the squared misses over their spreads. */
export function decayChiSquare(decay: number, of: readonly SpinRow[]): number {
  return of.reduce((sum, row) => sum + ((row.lost(decay) - row.expected) / row.spread) ** 2, 0) / of.length;
}

/** The decay constant that suits the patent best, to two figures. */
export function bestDecay(): number {
  const patent = spinRows.filter(isPatent);
  const candidates = Array.from({ length: 31 }, (_, i) => (10 + 0.5 * i) * 1e-6);
  return candidates.reduce((best, decay) =>
    decayChiSquare(decay, patent) < decayChiSquare(best, patent) ? decay : best,
  );
}
