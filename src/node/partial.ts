import { randomBytes } from 'node:crypto';
import { access, link, mkdir, readdir, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { describe } from '../errors.js';
import { refusal } from '../inputs/refuse.js';
import { refusePath, systemCode } from './disk.js';

/**
 * An unfinished file lies in a folder beside its path, `path.3f9a01c2.partial`, with its journal. The folder's name is its
 * writer's alone. Whoever goes on with it, or does away with it, first gives it a name of its own, in one step of the file
 * system, and the writer it had notices that its folder is gone. So no lock is needed that a crash could leave behind, and
 * what takes the final name is always the file of one writer, whole.
 * @internal
 */
export interface Partial {
  readonly folder: string;
  readonly rows: string;
  readonly journal: string;
}

function partialIn(folder: string): Partial {
  return { folder, rows: join(folder, 'rows'), journal: join(folder, 'journal') };
}

function freshName(path: string): string {
  return `${path}.${randomBytes(4).toString('hex')}.partial`;
}

/** Every unfinished file of a path. @throws `FairflightError` `invalid-input` when its folder cannot be read @internal */
export async function partialsOf(path: string): Promise<readonly Partial[]> {
  const folder = dirname(path);
  const begin = `${basename(path)}.`;
  const names = await readdir(folder).catch((error: unknown) => {
    throw refusePath(path, error);
  });
  return names
    .filter((name) => name.startsWith(begin) && /^[0-9a-f]{8}\.partial$/.test(name.slice(begin.length)))
    .sort()
    .map((name) => partialIn(join(folder, name)));
}

/** Begins an unfinished file. @throws `FairflightError` `invalid-input` when nothing can be written there @internal */
export async function beginPartial(path: string): Promise<Partial> {
  const partial = partialIn(freshName(path));
  await mkdir(partial.folder).catch((error: unknown) => {
    throw refusePath(path, error);
  });
  return partial;
}

/** Takes an unfinished file over from whoever wrote it. @throws `FairflightError` when another was quicker @internal */
export async function takeOver(path: string, { folder }: Partial): Promise<Partial> {
  const own = freshName(path);
  await rename(folder, own).catch((error: unknown) => {
    throw systemCode(error) === 'ENOENT' ? refuseTaken(path) : refusePath(path, error);
  });
  return partialIn(own);
}

/** Does away with an unfinished file. @internal */
export async function discard(path: string, partial: Partial): Promise<void> {
  const own = await takeOver(path, partial).catch(() => undefined);
  if (own !== undefined) await rm(own.folder, { recursive: true, force: true });
}

/** @throws `FairflightError` `system` when another process has taken the unfinished file over @internal */
export async function requireOwn(path: string, { folder }: Partial): Promise<void> {
  await access(folder).catch((error: unknown) => {
    throw systemCode(error) === 'ENOENT' ? refuseTaken(path) : error;
  });
}

function refuseTaken(path: string): Error {
  return refusal(
    'path',
    `another process has begun ${describe(path)} anew or goes on with it, so this one stops`,
    { value: path, hint: 'let one process at a time write to a path' },
    'system',
  );
}

/**
 * Gives the finished file its name, in one step.
 * @throws `FairflightError` when something is there and must not be replaced; the system's own error, `ENOENT` when the
 *   file was taken over
 * @internal
 */
export async function publish(path: string, { folder, rows }: Partial, overwrite: boolean): Promise<void> {
  if (overwrite || !(await linkedTo(rows, path))) await rename(rows, path);
  await rm(folder, { recursive: true, force: true });
}

/** Unlike a new name, a link never replaces what is there. False where the file system has none. */
async function linkedTo(rows: string, path: string): Promise<boolean> {
  try {
    await link(rows, path);
    return true;
  } catch (error) {
    const code = systemCode(error);
    if (code === 'ENOENT') throw error;
    if (code !== 'EEXIST' && !(await exists(path))) return false;
    throw refusal(
      'path',
      `another process has finished ${describe(path)} in the meantime`,
      { value: path, hint: 'call again with overwrite: true and resume: true to replace it' },
      'system',
    );
  }
}

/** @internal */
export function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}
