import fs from 'node:fs';
import { stat } from 'node:fs/promises';
import { lock } from 'proper-lockfile';
import type { Lock } from './file-system.ts';
import { StoreError } from './store.ts';

const LOCK_NAME = '.lock';
/** A lock that was not renewed for this long belongs to a program that died. */
const STALE_MS = 2000;
const RETRY_MS = 10;
/** Longer than the lock of a dead program can stand in the way. */
const PATIENCE_MS = 10_000;

/** Time stamps as this program last set them on its locks; another stamp means that another program has the lock. */
const stamps = new Map<string, number>();

/** The file system as the locking library uses it; notes each renewal. */
const lockFs = {
  ...fs,
  utimes(path: string, atime: Date, mtime: Date, done: (error: NodeJS.ErrnoException | null) => void) {
    fs.utimes(path, atime, mtime, (error) => {
      if (error) return done(error);
      fs.stat(path, (statError, stats) => {
        if (!statError) stamps.set(path, stats.mtimeMs);
        done(statError);
      });
    });
  },
};

/** Takes the folder's lock for one write; waits while others have it. */
export async function lockFolder(folder: string): Promise<Lock> {
  const path = `${folder}/${LOCK_NAME}`;
  let compromised = false;
  const release = await acquire(folder, path, () => {
    compromised = true;
  });
  const stamp = await stampOf(path);
  if (stamp !== undefined) stamps.set(path, stamp);
  return {
    async held() {
      const now = await stampOf(path);
      return !compromised && now !== undefined && now === stamps.get(path);
    },
    async release() {
      try {
        await release();
      } catch {
        // It was taken over, or the folder is gone: there is nothing left to release.
      }
    },
  };
}

async function acquire(folder: string, path: string, lost: () => void): Promise<() => Promise<void>> {
  try {
    return await lock(folder, {
      lockfilePath: path,
      fs: lockFs,
      stale: STALE_MS,
      retries: { retries: PATIENCE_MS / RETRY_MS, factor: 1, minTimeout: RETRY_MS, maxTimeout: RETRY_MS },
      onCompromised: lost,
    });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ELOCKED') {
      throw new StoreError(
        'store.busy',
        `Another program has been writing in ${folder} for ten seconds. Nothing was saved.`,
      );
    }
    if (code === 'EACCES' || code === 'EROFS' || code === 'EPERM') {
      throw new StoreError('store.read-only', `${folder} cannot be written.`);
    }
    throw error;
  }
}

async function stampOf(path: string): Promise<number | undefined> {
  try {
    return (await stat(path)).mtimeMs;
  } catch {
    return undefined;
  }
}
