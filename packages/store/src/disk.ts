import type { FileSystem } from './file-system.ts';
import { folderMedium } from './folder.ts';
import { storeOn } from './medium.ts';
import { nodeFileSystem } from './node-file-system.ts';
import type { BuildStore, StoreOptions } from './store.ts';

/**
 * A store on a build folder. Several programs may have it open, and any editor may change build.json meanwhile: each write
 * takes the folder's lock for itself, and no edit of another program is written over.
 *
 * Rejects with a `StoreError` when the folder holds no build.json, or one that is not UTF-8.
 */
export function openDiskStore(
  folder: string,
  options: StoreOptions & { readonly fs?: FileSystem },
): Promise<BuildStore> {
  return storeOn(folderMedium(options.fs ?? nodeFileSystem, folder), options);
}
