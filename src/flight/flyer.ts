import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';
import type { ModelWarning } from '../warnings/warning.js';
import { createCompiledEngine } from './engine/compiled.js';
import { createFlightEngine, type FlightEngine } from './engine/general.js';
import { type FlightEnd, type FlightSettings, flightWarnings } from './fly.js';
import { type FlightProblem, launchInto, sceneProblem } from './problem.js';
import { type RangeWatch, rangeWatch, type SeenRanges } from './range-watch.js';

/** Flies many launches through one scene as plain numbers, for searches: the flights of `fly` without their records. @internal */
export interface Flyer {
  /** The spin axis of the last flight. */
  readonly axis: Pick<FlightProblem, 'nx' | 'ny' | 'nz'>;
  /** Where and how a launch, already read, ends. Overwritten by the next. */
  readonly fly: (launch: Launch) => FlightEnd;
  /** Warnings of the last flight. */
  readonly warnings: () => ModelWarning[];
}

/** Makes a flyer with scratch of its own. @internal */
export function createFlyer(scene: ResolvedScene, { tolerance, timeLimit }: FlightSettings): Flyer {
  const problem = sceneProblem(scene);
  const compiled = createCompiledEngine(false);
  let general: FlightEngine | undefined;
  let last: { readonly end: FlightEnd; readonly seen: SeenRanges; readonly ballSpeed: number } | undefined;
  const generally = (): { end: FlightEnd; seen: SeenRanges } => {
    const watch: RangeWatch = rangeWatch(problem);
    general ??= createFlightEngine();
    const end = general.fly(problem, tolerance, timeLimit, (_, state) => watch.note(state));
    return { end, seen: watch.seen };
  };
  return {
    axis: problem,
    fly: (launch) => {
      launchInto(problem, launch);
      const end = compiled.fly(problem, tolerance, timeLimit);
      const flown = end === undefined ? generally() : { end, seen: end.seen };
      last = { ...flown, ballSpeed: launch.ballSpeed };
      return flown.end;
    },
    warnings: () => (last === undefined ? [] : flightWarnings(problem, last.ballSpeed, last.end, last.seen)),
  };
}
