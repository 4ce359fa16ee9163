import { type FileHandle, lstat, open, stat } from 'node:fs/promises';
import { describe } from '../errors.js';
import { refusal } from '../inputs/refuse.js';

/** What a person can do about an error of the system. */
const REMEDIES: Readonly<Record<string, string>> = {
  ENOSPC: 'free some space',
  EDQUOT: 'free some space, or have the quota raised',
  EFBIG: 'use a file system that takes a file of this size',
  EROFS: 'make the file system writable',
  EACCES: 'get leave to write there',
  EPERM: 'get leave to write there',
  EMFILE: 'close some files',
  ENFILE: 'close some files',
};

interface SystemError extends Error {
  readonly code: string;
}

function isSystemError(error: unknown): error is SystemError {
  return error instanceof Error && typeof (error as Partial<SystemError>).code === 'string';
}

/** The system's own code, such as `ENOENT`. @internal */
export function systemCode(error: unknown): string | undefined {
  return isSystemError(error) ? error.code : undefined;
}

/** The system's reason without the path, which it repeats. */
function reasonOf(error: unknown): string {
  return error instanceof Error ? (error.message.split(" '")[0] as string) : describe(error);
}

/**
 * A step of writing that the system refused.
 * @returns a `FairflightError` `system` that says how to go on
 * @internal
 */
export function refuseSystem(path: string, error: unknown): Error {
  const remedy = REMEDIES[systemCode(error) ?? ''] ?? 'see to the disk';
  return refusal(
    'path',
    `${describe(path)} cannot be written further: ${reasonOf(error)}`,
    { value: path, hint: `${remedy}, then call again with resume: true: what is done is kept` },
    'system',
  );
}

/**
 * A path that cannot be used at all.
 * @returns a `FairflightError` `invalid-input` with the system's reason
 * @internal
 */
export function refusePath(path: string, error: unknown): Error {
  return refusal('path', `path ${describe(path)} cannot be opened: ${reasonOf(error)}`, { value: path });
}

/** Size of the file at a path [bytes]; undefined when nothing is there. @throws `FairflightError` for what is no file @internal */
export async function sizeAt(path: string): Promise<number | undefined> {
  const found = await stat(path).catch(async (error: unknown) => {
    // A link to nothing is something, too.
    const isFree = await lstat(path).then(
      () => false,
      (reason: unknown) => systemCode(reason) === 'ENOENT',
    );
    if (isFree) return undefined;
    throw refusePath(path, error);
  });
  if (found === undefined || found.isFile()) return found?.size;
  throw refusal('path', `path ${describe(path)} is not that of a file`, { value: path });
}

/** Opens a file for reading, not a folder or a device. @throws `FairflightError` `invalid-input` @internal */
export async function openToRead(path: string): Promise<FileHandle> {
  const file = await open(path, 'r').catch((error: unknown) => {
    throw refusePath(path, error);
  });
  if ((await file.stat()).isFile()) return file;
  await file.close();
  throw refusal('path', `path ${describe(path)} is not that of a file`, { value: path });
}

/** Writes all of the bytes at a place. @internal */
export async function writeAll(file: FileHandle, bytes: Uint8Array, position: number): Promise<void> {
  for (let done = 0; done < bytes.length; ) {
    done += (await file.write(bytes, done, bytes.length - done, position + done)).bytesWritten;
  }
}
