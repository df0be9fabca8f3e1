/** The few things a build folder needs of a file system. Paths use "/". Each call that writes is one step that can fail. */
export interface FileSystem {
  /** Contents of a file; undefined when there is none. */
  read(path: string): Promise<Uint8Array | undefined>;
  /** Makes or replaces a file. Nothing is durable before `sync`, nor its name before `syncFolder`. */
  write(path: string, bytes: Uint8Array): Promise<void>;
  append(path: string, bytes: Uint8Array): Promise<void>;
  /** Returns once the contents of a file would survive a power cut. */
  sync(path: string): Promise<void>;
  /** The same for the names in a folder. */
  syncFolder(path: string): Promise<void>;
  /** Gives a file or folder another name, in one step, over a file that has it. */
  rename(from: string, to: string): Promise<void>;
  /** Makes a folder and those above it, durably; it may be there already. */
  makeFolder(path: string): Promise<void>;
  /** Removes a folder with all that is in it; it may be missing. */
  removeFolder(path: string): Promise<void>;
  /** Names in a folder; undefined when there is no folder. */
  list(path: string): Promise<string[] | undefined>;
  /** Waits until nobody else holds the folder's lock. Fails with a `StoreError` when that takes too long. */
  lock(folder: string): Promise<Lock>;
  /** Calls `changed` some time after any of the named files in the folder may have changed. */
  watch(folder: string, names: readonly string[], changed: () => void): () => void;
}

export interface Lock {
  /** False when the lock was taken over, because this program stood still for too long. */
  held(): Promise<boolean>;
  release(): Promise<void>;
}
