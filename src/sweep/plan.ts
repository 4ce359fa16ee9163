import type { BatchKernel } from '../flight/engine/batch.js';
import { readOptions } from '../inputs/read.js';
import { readScene, type Scene, withDefaults } from '../scene/scene.js';
import { type SweepAbout, sweepAbout } from './about.js';
import type { Design } from './design.js';
import { isWithin } from './factors.js';
import { gatherInputs } from './inputs.js';
import { OUTPUTS, resolveOutputs } from './outputs.js';
import { designPoints } from './points.js';
import { type SweepBase, sweepBaseFields, sweepSetup } from './setup.js';
import { flightStage, launchStage } from './stages/flight-stage.js';
import { runStage } from './stages/run-stage.js';
import { sceneRows } from './stages/scene-rows.js';
import { strikeStage } from './stages/strike-stage.js';
import { createWork, type Work } from './stages/work.js';
import { STATUS_CODE } from './status.js';

/** The computed rows `start` to `start + count − 1`, one array a column. @internal */
export interface PlanRows {
  readonly values: readonly Float64Array[];
  readonly status: Uint8Array;
}

/** A design and a setup, checked and ready to be computed in any pieces. @internal */
export interface SweepPlan {
  readonly about: SweepAbout;
  readonly evaluate: (start: number, count: number) => PlanRows;
}

/** What a sweep is asked for, as the caller gave it. @internal */
export interface SweepRequest {
  readonly design: Design;
  readonly scene: Scene;
  /** Options that stay the same in every row. */
  readonly base: SweepBase;
}

/**
 * Checks a request and lays out the stages of the walk. Every row is computed from its index alone, so that pieces of
 * any size, in any order and on any thread give the same bits.
 * @throws `FairflightError`
 * @internal
 */
export function sweepPlan(request: SweepRequest, kernel?: BatchKernel): SweepPlan {
  const points = designPoints(request.design);
  const setup = sweepSetup(readOptions(sweepBaseFields, request.base));
  const scene = readScene(request.scene);
  const inputs = gatherInputs(points.names, setup);
  const outputs = resolveOutputs(setup.outputs, inputs.struck);
  const scenes = sceneRows(inputs, scene);
  const needs = (stage: string): boolean => outputs.some((name) => OUTPUTS[name].stage === stage);
  const strikes = inputs.struck ? strikeStage(inputs, setup.settings.clubhead, scenes) : launchStage(inputs);
  const flies = flightStage(scenes, setup.settings, kernel);
  const runs = runStage(inputs, scenes, withDefaults(scene).turf);
  const stages = [
    strikes,
    ...(needs('flight') || needs('run') ? [flies] : []),
    ...(needs('run') ? [runs] : []),
  ];
  // The ends of a range are checked at the door; a list may hold anything.
  const checked = points.about['kind'] !== 'list';

  const engine = kernel?.name ?? 'JavaScript';
  let work: Work | undefined;
  return {
    about: sweepAbout({ points, outputs, setup, scene, struck: inputs.struck, engine }, request.scene),
    evaluate: (start, count) => {
      if (work === undefined || work.status.length < count) work = createWork(count);
      work.clear();
      const { status, column } = work;
      const columns = points.names.map(() => new Float64Array(count));
      points.fill(start, count, columns);
      if (!checked) {
        points.names.forEach((name, j) => {
          const values = columns[j] as Float64Array;
          for (let i = 0; i < count; i++) {
            if (!isWithin(name, values[i] as number)) status[i] = STATUS_CODE.outsideRange;
          }
        });
      }
      for (const stage of stages) stage(columns, work, count);
      return {
        values: [...columns, ...outputs.map((name) => column(name).slice(0, count))],
        status: status.slice(0, count),
      };
    },
  };
}
