import { hashBytes } from '@oddwheel/build/document/hash';
import type { Fault } from '@oddwheel/build/fault';
import { TRUE_FILE } from '@oddwheel/build/true/types';
import type { FileSystem } from './file-system.ts';
import { BUILD_FILE, HISTORY_FILE, LOG_FILE, PICTURE_FOLDER, writeDurably } from './folder.ts';
import { nodeFileSystem } from './node-file-system.ts';
import { StoreError } from './store.ts';

export interface NewBuild {
  readonly validate: (text: string) => readonly Fault[];
  /** Log, history and record of run-out to begin with. */
  readonly log?: string;
  readonly history?: string;
  readonly runOut?: string;
  readonly pictures?: readonly Uint8Array[];
  readonly fs?: FileSystem;
}

/**
 * Makes a build folder with this build file, whole or not at all. The folder may be there already if it is empty.
 *
 * Rejects with a `StoreError`: `store.not-empty` when anything is in the folder, `store.refused` with the faults when the
 * text has any.
 */
export async function createBuildFolder(folder: string, text: string, options: NewBuild): Promise<void> {
  const fs = options.fs ?? nodeFileSystem;
  const faults = options.validate(text);
  if (faults.length > 0) throw new StoreError('store.refused', 'The build file has faults.', faults);
  const target = folder.length > 1 ? folder.replace(/[/\\]+$/, '') : folder;
  const names = await fs.list(target);
  if (names && names.length > 0) {
    throw new StoreError(
      'store.not-empty',
      `${target} is not empty: it holds ${names.slice(0, 3).join(', ')}. Name a new folder.`,
    );
  }
  if (names) {
    await fill(fs, target, text, options);
    return;
  }
  const cut = Math.max(target.lastIndexOf('/'), target.lastIndexOf('\\'));
  const parent = cut < 0 ? '.' : target.slice(0, cut) || '/';
  const next = `${cut < 0 ? '' : target.slice(0, cut + 1)}.${target.slice(cut + 1)}.next`;
  await fs.removeFolder(next);
  await fs.makeFolder(next);
  await fill(fs, next, text, options);
  await fs.rename(next, target);
  await fs.syncFolder(parent);
}

/** build.json comes last: a folder is no build before it is there. */
async function fill(
  fs: FileSystem,
  folder: string,
  text: string,
  { log, history, runOut, pictures = [] }: NewBuild,
): Promise<void> {
  const encoder = new TextEncoder();
  if (pictures.length > 0) {
    const pictureFolder = `${folder}/${PICTURE_FOLDER}`;
    await fs.makeFolder(pictureFolder);
    for (const bytes of pictures) await writeDurably(fs, pictureFolder, hashBytes(bytes), bytes);
  }
  if (history !== undefined) await writeDurably(fs, folder, HISTORY_FILE, encoder.encode(history));
  if (runOut !== undefined) await writeDurably(fs, folder, TRUE_FILE, encoder.encode(runOut));
  if (log !== undefined) await writeDurably(fs, folder, LOG_FILE, encoder.encode(log));
  await writeDurably(fs, folder, BUILD_FILE, encoder.encode(text));
}
