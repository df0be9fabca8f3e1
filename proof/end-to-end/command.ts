import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Finding, GearSpan, LoadCase, PathElement } from '@oddwheel/build/assess/types';
import type { ExitCode } from '@oddwheel/cli/io';
import { runCli } from '@oddwheel/cli/run';

/** What `check --json` prints, as far as these tests read it. */
export interface Checked {
  readonly path: readonly PathElement[];
  readonly gears: readonly GearSpan[];
  readonly cases: readonly LoadCase[];
  readonly findings: readonly Finding[];
}

async function* nothing(): AsyncGenerator<string> {}

/** A folder with a build of `proof/builds` in it, and how to check it; `end` takes the folder away. */
export async function folderOf(name: string): Promise<{
  readonly check: (...options: readonly string[]) => Promise<{ readonly code: ExitCode; readonly checked: Checked }>;
  readonly end: () => Promise<void>;
}> {
  const folder = await mkdtemp(join(tmpdir(), 'oddwheel-proof-'));
  await cp(fileURLToPath(new URL(`../builds/${name}.json`, import.meta.url)), join(folder, 'build.json'));
  const check = async (...options: readonly string[]): Promise<{ code: ExitCode; checked: Checked }> => {
    let [out, err] = ['', ''];
    const code = await runCli(['check', folder, '--json', ...options], {
      stdin: nothing(),
      stdout: { write: (text) => (out += text) },
      stderr: { write: (text) => (err += text) },
      cwd: folder,
      env: {},
      home: fileURLToPath(new URL('../../', import.meta.url)),
      stop: new AbortController().signal,
    });
    if (err !== '') throw new Error(err);
    return { code, checked: JSON.parse(out) as Checked };
  };
  return { check, end: () => rm(folder, { recursive: true }) };
}

/** The element of this kind that stands last on the path. */
export function lastOf(checked: Checked, kind: PathElement['kind']): PathElement {
  const found = checked.path.findLast((element) => element.kind === kind);
  if (found === undefined) throw new Error(`There is no ${kind} on the path.`);
  return found;
}
