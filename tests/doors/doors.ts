import * as batch from '../../src/batch.js';
import * as dispersion from '../../src/dispersion/index.js';
import * as gpu from '../../src/gpu/index.js';
import * as root from '../../src/index.js';
import * as models from '../../src/models.js';
import * as node from '../../src/node/index.js';
import * as reference from '../../src/reference.js';
import * as schema from '../../src/schema/index.js';
import * as session from '../../src/session/index.js';
import * as sweep from '../../src/sweep/index.js';
import * as units from '../../src/units/index.js';
import type { Door } from './door.js';
import { dispersionDoors } from './table/dispersion.js';
import { modelDoors } from './table/models.js';
import { nodeDoors } from './table/node.js';
import { rootDoors } from './table/root.js';
import { schemaDoors } from './table/schema.js';
import { sessionDoors } from './table/session.js';
import { sweepDoors } from './table/sweep.js';

/** Every public function that is given something, with arguments that are fine and the declaration of each. */
export const doors: readonly Door[] = [
  ...rootDoors,
  ...modelDoors,
  ...sessionDoors,
  ...dispersionDoors,
  ...sweepDoors,
  ...schemaDoors,
  ...nodeDoors,
];

/** Public functions without a row, each with the reason. Units, arithmetic of one number, have a test of their own. */
export const elsewhere: Readonly<Record<string, string>> = {
  'root.FairflightError': 'a class of errors, made by the library',
  'batch.loadBatchKernel': 'takes nothing',
  'gpu.openGpu': 'takes nothing; what it gives flies in a browser, in tests/gpu',
};

/** Everything public, by entry. */
export const entries: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  root,
  units,
  models,
  session,
  dispersion,
  sweep,
  batch,
  gpu,
  reference,
  schema,
  node,
};
