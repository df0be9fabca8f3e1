import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { inRoot } from './run.mjs';

function addFiles(hash, path) {
  for (const entry of readdirSync(inRoot(path), { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const child = `${path}/${entry.name}`;
    if (entry.isDirectory()) addFiles(hash, child);
    else if (!/\.test\.tsx?$/.test(entry.name)) addFile(hash, child);
  }
}

function addFile(hash, path) {
  hash
    .update(`${path}\0`)
    .update(readFileSync(inRoot(path)))
    .update('\0');
}

/** One hash over the names and bytes of files and whole folders (without their tests), by path from the project's folder. */
export function hashInputs(paths) {
  const hash = createHash('sha256');
  for (const path of paths) {
    const found = statSync(inRoot(path), { throwIfNoEntry: false });
    if (found?.isDirectory()) addFiles(hash, path);
    else if (found) addFile(hash, path);
  }
  return hash.digest('hex');
}
