import { folderMedium } from './folder.ts';
import { storeOn } from './medium.ts';
import { type MemoryFileSystem, memoryFileSystem } from './memory-file-system.ts';
import type { BuildStore, StoreOptions } from './store.ts';

/** Where a build in memory lies in its file system. */
export const MEMORY_FOLDER = '/build';

/** A file system in memory that holds a new build folder with this text. */
export function memoryBuild(text: string): MemoryFileSystem {
  return memoryFileSystem({ [`${MEMORY_FOLDER}/build.json`]: text });
}

/** A store on a build in memory, from `memoryBuild`. Several stores may be open on one. */
export function openMemoryStore(files: MemoryFileSystem, options: StoreOptions): Promise<BuildStore> {
  return storeOn(folderMedium(files, MEMORY_FOLDER), options);
}
