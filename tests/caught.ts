import { type FairflightError, isFairflightError } from '../src/errors.js';

/** The library's error that `action` throws; fails when it throws none, or another. */
export function caught(action: () => unknown): FairflightError {
  try {
    action();
  } catch (error) {
    if (isFairflightError(error)) return error;
    throw error;
  }
  throw new Error('expected a FairflightError, but nothing was thrown');
}
