import type { Json } from '@oddwheel/build/document/json';
import { type Append, appendTrue } from '@oddwheel/build/true/record';
import { TRUE_FILE } from '@oddwheel/build/true/types';
import type { FileSystem } from './file-system.ts';
import { nodeFileSystem } from './node-file-system.ts';

/** Text of a build folder's record of run-out; empty when there is none yet. */
export async function readTrueText(folder: string, fs: FileSystem = nodeFileSystem): Promise<string> {
  const bytes = await fs.read(`${folder}/${TRUE_FILE}`);
  // A line that was cut off may end inside a character.
  return bytes ? new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) : '';
}

/**
 * Adds entries to a folder's record of run-out, each once; returns when they would survive a power cut.
 * @param make entries for the record as it is, made while nobody else writes
 * @returns the faults when any entry is wrong; then nothing was added
 */
export async function addTrue(
  folder: string,
  make: (existing: string) => readonly Json[],
  fs: FileSystem = nodeFileSystem,
): Promise<Append> {
  const lock = await fs.lock(folder);
  try {
    const existing = await readTrueText(folder, fs);
    const added = appendTrue(existing, make(existing));
    if (added.ok && added.text !== '') {
      const path = `${folder}/${TRUE_FILE}`;
      await fs.append(path, new TextEncoder().encode(added.text));
      await fs.sync(path);
      if (existing === '') await fs.syncFolder(folder);
    }
    return added;
  } finally {
    await lock.release();
  }
}
