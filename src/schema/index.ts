export { parseDelivery } from './delivery.js';
export { parseLaunch } from './launch.js';
export type { DecimalMark } from './number-text.js';
export {
  type ReadShotsOptions,
  readShots,
  type ShotTable,
} from './read-shots.js';
export type { Rejection, RejectionReason } from './rejection.js';
export { parseScene } from './scene.js';
export type { ShotNeeds } from './shot-header.js';
