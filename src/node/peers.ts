import { refusal } from '../inputs/refuse.js';

/**
 * Loads an optional package.
 * @throws `FairflightError` `unsupported` that says what to install, when it is not there
 * @internal
 */
export async function peer<T>(name: string, purpose: string, load: () => Promise<T>): Promise<T> {
  try {
    return await load();
  } catch (error) {
    throw refusal(
      name,
      `${purpose} needs the package ${name}`,
      { value: error, hint: `npm install ${name}` },
      'unsupported',
    );
  }
}
