import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Assessment, Finding, GearSpan, LoadCase, PathElement } from '@oddwheel/build/assess/types';
import type { ExitCode } from '@oddwheel/cli/io';
import { runCli } from '@oddwheel/cli/run';

/** What `check --json` prints, as far as these tests read it. */
export interface Checked {
  readonly path: readonly PathElement[];
  readonly gears: readonly GearSpan[];
  readonly cases: readonly LoadCase[];
  readonly findings: readonly Finding[];
  readonly adjustment: Assessment['adjustment'];
  readonly stroke: Assessment['stroke'];
  readonly road: Assessment['road'];
  readonly closure: Assessment['closure'];
}

async function* nothing(): AsyncGenerator<string> {}

const HOME = fileURLToPath(new URL('../../', import.meta.url));

interface Ran {
  readonly code: ExitCode;
  readonly checked: Checked;
}

/** Runs `check --json` on a folder, in process. */
export async function checkFolder(folder: string, ...options: readonly string[]): Promise<Ran> {
  let [out, err] = ['', ''];
  const code = await runCli(['check', folder, '--json', ...options], {
    stdin: nothing(),
    stdout: { write: (text) => (out += text) },
    stderr: { write: (text) => (err += text) },
    cwd: folder,
    env: {},
    home: HOME,
    stop: new AbortController().signal,
  });
  if (err !== '') throw new Error(err);
  return { code, checked: JSON.parse(out) as Checked };
}

/** The demo build of this name, checked where it lies. */
export const checkDemo = (name: string): Promise<Ran> => checkFolder(join(HOME, 'examples', name));

/**
 * A folder with a build of `proof/builds` in it, and how to check it; `end` takes the folder away.
 * @param change made to the text of the build before it is written
 */
export async function folderOf(
  name: string,
  change: (text: string) => string = (text) => text,
): Promise<{ readonly check: (...options: readonly string[]) => Promise<Ran>; readonly end: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'oddwheel-proof-'));
  const text = await readFile(new URL(`../builds/${name}.json`, import.meta.url), 'utf8');
  await writeFile(join(folder, 'build.json'), change(text));
  return { check: (...options) => checkFolder(folder, ...options), end: () => rm(folder, { recursive: true }) };
}

/** The element of this kind that stands last on the path. */
export function lastOf(checked: Checked, kind: PathElement['kind']): PathElement {
  const found = checked.path.findLast((element) => element.kind === kind);
  if (found === undefined) throw new Error(`There is no ${kind} on the path.`);
  return found;
}

/** Text with ordinary spaces in the place of those that do not break. */
export const spaced = (text: string | undefined): string => (text ?? '').replaceAll(/[\u00a0\u2009\u202f]/g, ' ');
