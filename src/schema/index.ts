export type { DateOrder } from './dates.js';
export type { DocumentName } from './documents.js';
export type { UnitGroup } from './find-units.js';
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
export { readShots, type ShotColumn, type ShotTable } from './read-shots.js';
export type { ColumnUnits, ReadShotsOptions } from './read-shots-options.js';
export type { Rejection, RejectionReason } from './rejection.js';
export type { NamedColumns, ShotNeeds } from './shot-header.js';
