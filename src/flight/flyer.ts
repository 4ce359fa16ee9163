import type { Launch } from '../inputs/launch.js';
import type { ResolvedScene } from '../scene/scene.js';
import { createCompiledEngine } from './engine/compiled.js';
import { createFlightEngine, type FlightEngine } from './engine/general.js';
import type { FlightEnd, FlightSettings } from './fly.js';
import { type FlightProblem, launchInto, sceneProblem } from './problem.js';

/** Flies many launches through one scene as plain numbers, for searches: the flights of `fly` without their records. @internal */
export interface Flyer {
  /** The spin axis of the last flight. */
  readonly axis: Pick<FlightProblem, 'nx' | 'ny' | 'nz'>;
  /** Where and how a launch, already read, ends. Overwritten by the next. */
  readonly fly: (launch: Launch) => FlightEnd;
}

/** Makes a flyer with scratch of its own. @internal */
export function createFlyer(scene: ResolvedScene, { tolerance, timeLimit }: FlightSettings): Flyer {
  const problem = sceneProblem(scene);
  const compiled = createCompiledEngine(false);
  let general: FlightEngine | undefined;
  return {
    axis: problem,
    fly: (launch) => {
      launchInto(problem, launch);
      const end = compiled.fly(problem, tolerance, timeLimit);
      if (end !== undefined) return end;
      general ??= createFlightEngine();
      return general.fly(problem, tolerance, timeLimit);
    },
  };
}
