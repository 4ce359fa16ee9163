import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { aerodynamics } from './cases/aerodynamics.js';
import { air } from './cases/air.js';
import { batch } from './cases/batch.js';
import { dispersion } from './cases/dispersion.js';
import { flight } from './cases/flight.js';
import { locate } from './cases/locate.js';
import { optimum } from './cases/optimum.js';
import { run } from './cases/run.js';
import { schema } from './cases/schema.js';
import { sensitivity } from './cases/sensitivity.js';
import { session } from './cases/session.js';
import { shot } from './cases/shot.js';
import { strike } from './cases/strike.js';
import { sweep } from './cases/sweep.js';
import { units } from './cases/units.js';
import type { AnswerRecord } from './record.js';
import type { Room } from './room.js';

/** Every room that is asked. */
export const rooms: readonly Room[] = [
  units,
  air,
  aerodynamics,
  strike,
  locate,
  flight,
  batch,
  run,
  shot,
  optimum,
  sensitivity,
  dispersion,
  session,
  sweep,
  schema,
];

/** Where the record is kept. */
export const RECORD_FILE: string = fileURLToPath(new URL('record.json', import.meta.url));

/** The record as it stands. */
export function readRecord(): AnswerRecord {
  return JSON.parse(readFileSync(RECORD_FILE, 'utf8')) as AnswerRecord;
}
