export type { DocumentName } from './documents.js';
export {
  jsonSchemaOf,
  parseBall,
  parseClubhead,
  parseDelivery,
  parseLaunch,
  parseMeasuredShot,
  parseScene,
  parseTurf,
} from './json.js';
export type { JsonSchema } from './json-field.js';
export type { DecimalMark } from './number-text.js';
export { type ReadShotsOptions, readShots, type ShotTable } from './read-shots.js';
export type { Rejection, RejectionReason } from './rejection.js';
export type { ShotNeeds } from './shot-header.js';
