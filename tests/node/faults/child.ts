import { isFairflightError } from '../../../src/errors.js';
import { sweepToFile } from '../../../src/node/index.js';
import { breakDisk } from '../faulty-disk.js';
import { flown, type Order, study } from './order.js';

/** The process that is killed: writes one file as its order says, and tells what came of it. */
const { path, seed, how, fault } = JSON.parse(process.argv[2] as string) as Order;
if (fault !== undefined) await breakDisk(fault.step, fault.calls, fault.code);
process.stdout.write('begun\n');
const outcome = await sweepToFile(path, study(seed), {}, { ...flown, ...how }).then(
  ({ resumedAt }) => ({ kind: 'done', resumedAt }),
  (error: unknown) => {
    if (!isFairflightError(error)) throw error;
    return { kind: 'refused', code: error.code, message: error.message };
  },
);
process.stdout.write(`${JSON.stringify(outcome)}\n`);
