import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { complain } from './complain.ts';
import type { BAD, Io } from './io.ts';

export const BUILD_FILE = 'build.json';

const SAYS: Readonly<Record<string, string>> = {
  ENOENT: 'There is no build here.',
  ENOTDIR: 'This is a file, not the folder of a build.',
  EISDIR: 'Here stands a folder where the build file should be.',
  EACCES: 'The build file may not be read.',
};

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : String(error);
}

/**
 * Reads the text of a folder's build file.
 * @param or what else than a folder with a build is accepted, in words
 * @returns the path as it was asked for and the text, or the exit code after the complaint
 */
export async function readBuildText(
  io: Io,
  folder: string,
  or = '',
): Promise<
  | { readonly ok: true; readonly path: string; readonly text: string }
  | { readonly ok: false; readonly code: typeof BAD }
> {
  const path = join(folder, BUILD_FILE);
  const accepted = `a folder that holds ${BUILD_FILE}${or}; "oddwheel new FOLDER" makes one`;
  let bytes: Uint8Array;
  try {
    bytes = await readFile(resolve(io.cwd, path));
  } catch (error) {
    const code = codeOf(error);
    const problem = SAYS[code] ?? `The build file cannot be read (${code}).`;
    return { ok: false, code: complain(io, path, [{ at: '', problem, read: folder, accepted }]) };
  }
  try {
    return { ok: true, path, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    const problem = 'The build file is not text in UTF-8.';
    return {
      ok: false,
      code: complain(io, path, [{ at: '', problem, read: `${bytes.length} bytes`, accepted: 'UTF-8 text' }]),
    };
  }
}
