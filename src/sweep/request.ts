import type { ModelChoice } from '../aerodynamics/index.js';
import { modelAsData } from '../aerodynamics/resolve.js';
import { resolveModel } from '../aerodynamics/resolve-model.js';
import { type CustomField, custom, type Declared } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import { type ReadScene, type Scene, sceneFields } from '../scene/scene.js';
import { type ReadDesign, readDesign } from './read-design.js';
import { type SweepBase, type SweepSetup, sweepSetup } from './setup.js';

/** A scene as read whose coefficient model is an id or data wherever it can be, so that it can travel. @internal */
export type SweepScene = Omit<ReadScene, 'aerodynamics'> & { readonly aerodynamics?: ModelChoice };

/** A sweep as read: a copy of what was asked for, plain data but for a coefficient model of functions. @internal */
export interface SweepRequest {
  readonly design: ReadDesign;
  readonly scene: SweepScene;
  readonly setup: SweepSetup;
}

const sweepSceneFields: Declared<Scene> = /* @__PURE__ */ frozen(() => ({
  ...sceneFields,
  aerodynamics: custom(readModel as CustomField['read'], 'coefficient model'),
}));

function readModel(choice: ModelChoice, path: string): ModelChoice {
  return modelAsData(choice, path) ?? resolveModel(choice, path);
}

/**
 * Reads a sweep.
 * @param base - options, already read; those that are not of the base play no part
 * @throws `FairflightError`
 * @internal
 */
export function readSweep(design: unknown, scene: unknown, base: SweepBase): SweepRequest {
  return {
    design: readDesign(design),
    // Reading has put records in the place of the presets' names.
    scene: readOptions(sweepSceneFields, scene, 'scene') as SweepScene,
    setup: sweepSetup(base),
  };
}
