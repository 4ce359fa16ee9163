import { type CompiledLaw, compiledLaw } from '../../aerodynamics/compiled-law.js';
import type { CoefficientLaw } from '../../aerodynamics/model.js';
import { changesWithHeight } from '../../air/wind-ratio.js';
import type { GrowingTrack } from '../../track.js';
import { STATES } from '../equations.js';
import type { FlightProblem } from '../problem.js';
import { type CompiledEnd, compiledEnd, kernelFrame, packKernel, setFrame, toEnd, toWorld } from './frame.js';
import { BATCH_RESULTS, flyKernel, NODE_NUMBERS, PARAMETERS, RESULTS } from './kernel.generated.js';
import { kernelConstants } from './kernel-constants.js';
import { FINEST_BY_TABLE, setWind, windTable } from './shear.js';
import { LANDED, OUTSIDE } from './step-decisions.js';
import { warmUp } from './warm-up.js';

/** Flies problems by the compiled kernel; `undefined` hands a flight to the general engine. @internal */
export interface CompiledEngine {
  readonly fly: (problem: FlightProblem, tolerance: number, timeLimit: number) => CompiledEnd | undefined;
  /** Nodes of the last flight, in the world frame; none when the engine keeps no track. */
  readonly track: () => GrowingTrack;
}

/** Nodes a track has room for; a flight of more goes to the general engine. */
const TRACK_ROOM = 400;

let warm = false;

/** Makes a compiled engine with scratch of its own; `lawOf` finds the law of a model. @internal */
export function createCompiledEngine(
  keepTrack: boolean,
  lawOf: (model: CoefficientLaw) => CompiledLaw | undefined = compiledLaw,
): CompiledEngine {
  if (!warm) warmUp(flyKernel);
  warm = true;
  const p = new Float64Array(PARAMETERS);
  const constants = kernelConstants();
  const out = new Float64Array(RESULTS);
  const nodes = new Float64Array(keepTrack ? TRACK_ROOM * NODE_NUMBERS : 0);
  const world = new Float64Array(STATES);
  const end = compiledEnd();
  const frame = kernelFrame();
  const wind = windTable();
  let model: CoefficientLaw | undefined;
  let law: CompiledLaw | undefined;

  function fly(problem: FlightProblem, tolerance: number, timeLimit: number): CompiledEnd | undefined {
    if (problem.model !== model) {
      model = problem.model;
      law = lawOf(model);
    }
    if (law === undefined) return undefined;
    setFrame(frame, problem, law);
    if (!packKernel(problem, law, frame, tolerance, timeLimit, p)) return undefined;
    const { profile } = problem;
    if (changesWithHeight(profile)) {
      if (tolerance < FINEST_BY_TABLE) return undefined;
      setWind(wind, profile);
    }
    const status = flyKernel(p, constants, law.spinTable, law.reynoldsTable, wind, out, nodes);
    if (status === OUTSIDE || (keepTrack && out[BATCH_RESULTS]! > TRACK_ROOM)) return undefined;
    end.ending = status === LANDED ? 'landed' : 'time-limit';
    toEnd(frame, out, 0, end);
    return end;
  }

  function track(): GrowingTrack {
    const { axis1x, axis1z, axis2x, axis2y, axis2z, axis3x, axis3y, axis3z } = frame;
    const count = keepTrack ? out[BATCH_RESULTS]! : 0;
    const time = new Array<number>(count);
    const state = new Array<number>(STATES * count);
    const acceleration = new Array<number>(3 * count);
    for (let n = 0; n < count; n++) {
      const k = NODE_NUMBERS * n;
      time[n] = nodes[k]!;
      toWorld(frame, nodes, k + 1, nodes[k]!, world);
      for (let i = 0; i < STATES; i++) state[STATES * n + i] = world[i]!;
      const ka = nodes[k + 8]!;
      const kb = nodes[k + 9]!;
      const kc = nodes[k + 10]!;
      acceleration[3 * n] = axis1x * ka + axis2x * kb + axis3x * kc;
      acceleration[3 * n + 1] = axis2y * kb + axis3y * kc;
      acceleration[3 * n + 2] = axis1z * ka + axis2z * kb + axis3z * kc;
    }
    return { time, state, acceleration };
  }

  return { fly, track };
}
