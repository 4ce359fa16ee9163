import { type FileHandle, open } from 'node:fs/promises';
import { describe } from '../errors.js';
import { refusal } from '../inputs/refuse.js';

/**
 * Opens a file, not a folder or a device.
 * @throws `FairflightError` `invalid-input` with the system's reason
 * @internal
 */
export async function openFile(path: string, flags: 'r' | 'r+' | 'w'): Promise<FileHandle> {
  const file = await open(path, flags).catch((error: unknown) => {
    // The system repeats the path after its reason.
    const reason = error instanceof Error ? error.message.split(', open ')[0] : describe(error);
    throw refusal('path', `path ${describe(path)} cannot be opened: ${reason}`, { value: path });
  });
  if ((await file.stat()).isFile()) return file;
  await file.close();
  throw refusal('path', `path ${describe(path)} is not that of a file`, { value: path });
}
