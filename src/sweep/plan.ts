import { fittedLaw } from '../aerodynamics/fitted-modern.js';
import { resolveLaw } from '../aerodynamics/resolve.js';
import type { BatchKernel } from '../flight/engine/batch.js';
import type { ReadScene } from '../scene/scene.js';
import { turfOf } from '../turf/presets.js';
import { countBits } from '../warnings/bits.js';
import { type SweepAbout, sweepAbout } from './about.js';
import { type FactorName, isWithin } from './factors.js';
import { gatherInputs } from './inputs.js';
import { OUTPUTS, resolveOutputs } from './outputs.js';
import { designPoints } from './points.js';
import type { SweepRequest } from './request.js';
import { requireRows } from './row-range.js';
import { flightStage, launchStage } from './stages/flight-stage.js';
import { runStage } from './stages/run-stage.js';
import { sceneRows } from './stages/scene-rows.js';
import { strikeStage } from './stages/strike-stage.js';
import { createWork, type Work } from './stages/work.js';
import { STATUS_CODE } from './status.js';

/** Computed rows, one array a column. @internal */
export interface PlanRows {
  readonly values: readonly Float64Array[];
  readonly status: Uint8Array;
  /** Rows that raise each of {@link rowWarnings}. */
  readonly warningCounts: readonly number[];
}

/** A sweep, checked and ready to be computed in any pieces. @internal */
export interface SweepPlan {
  readonly about: SweepAbout;
  /** Row of the design that the sweep begins with. */
  readonly first: number;
  /** Rows from `start` on, counted from the first. */
  readonly evaluate: (start: number, count: number) => PlanRows;
}

/**
 * Checks that what was read goes together, and lays out the stages of the walk. Every row is computed from its index alone, so that pieces of
 * any size, in any order and on any thread give the same bits.
 * @throws `FairflightError`
 * @internal
 */
export function sweepPlan({ design, scene: asked, setup }: SweepRequest, kernel?: BatchKernel): SweepPlan {
  const points = designPoints(design);
  const scene: ReadScene = { ...asked, aerodynamics: resolveLaw(asked.aerodynamics ?? fittedLaw.id) };
  const inputs = gatherInputs(points.names, design.kind, setup);
  const outputs = resolveOutputs(setup.outputs, inputs.struck);
  const scenes = sceneRows(inputs, scene);
  const needs = (stage: string): boolean => outputs.some((name) => OUTPUTS[name].stage === stage);
  const strikes = inputs.struck ? strikeStage(inputs, setup.settings.clubhead, scenes) : launchStage(inputs);
  const flies = flightStage(inputs, scenes, setup.settings, kernel);
  const runs = runStage(inputs, scenes, turfOf(scene.turf));
  const stages = [
    strikes,
    ...(needs('flight') || needs('run') ? [flies] : []),
    ...(needs('run') ? [runs] : []),
  ];
  const { from: first, to } = requireRows(setup.rows, points.rows);

  const engine = kernel?.name ?? 'JavaScript';
  let work: Work | undefined;
  return {
    about: sweepAbout(
      { points, rows: to - first, outputs, setup, scene, struck: inputs.struck, engine },
      asked.aerodynamics,
    ),
    first,
    evaluate: (start, count) => {
      if (work === undefined || work.status.length < count) work = createWork(count);
      work.clear(first + start);
      const { status, warnings, column } = work;
      const columns = points.names.map(() => new Float64Array(count));
      points.fill(first + start, count, columns);
      // The ends of a range are checked at the door; a list, or a normal distribution, may hold anything.
      for (const j of points.open) {
        const name = points.names[j] as FactorName;
        const values = columns[j] as Float64Array;
        for (let i = 0; i < count; i++) {
          if (!isWithin(name, values[i] as number)) status[i] = STATUS_CODE.outsideRange;
        }
      }
      for (const stage of stages) stage(columns, work, count);
      return {
        values: [
          ...columns,
          ...outputs.map((name) => column(name).slice(0, count)),
          ...(setup.warnings === 'column' ? [Float64Array.from(warnings.subarray(0, count))] : []),
        ],
        status: status.slice(0, count),
        warningCounts: countBits(warnings.subarray(0, count)),
      };
    },
  };
}
