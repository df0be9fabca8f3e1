import { cp, mkdir, readdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { complain } from './complain.ts';
import { DONE, type ExitCode, type Io, print } from './io.ts';
import { BUILD_FILE } from './read-folder.ts';

/** Names of the demo builds that come with the program, in alphabetical order. */
async function demoNames(home: string): Promise<string[]> {
  const entries = await readdir(join(home, 'examples'), { withFileTypes: true });
  const folders = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  const builds = await Promise.all(
    folders.map(async (name) => ((await readdir(join(home, 'examples', name))).includes(BUILD_FILE) ? [name] : [])),
  );
  return builds.flat().sort();
}

async function stands(path: string): Promise<'nothing' | 'empty folder' | 'folder with files' | 'file'> {
  try {
    return (await readdir(path)).length === 0 ? 'empty folder' : 'folder with files';
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT' ? 'nothing' : 'file';
  }
}

/**
 * `new`: copies a demo build into a new folder.
 * @param folder where to; must not be there yet, or be empty
 */
export async function newBuild(io: Io, folder: string, options: { like: string; json?: true }): Promise<ExitCode> {
  const names = await demoNames(io.home);
  if (!names.includes(options.like))
    return complain(io, '--like', [
      { at: '', problem: 'There is no demo build of this name.', read: options.like, accepted: names.join(', ') },
    ]);
  const target = resolve(io.cwd, folder);
  const there = await stands(target);
  if (there === 'file' || there === 'folder with files')
    return complain(io, folder, [
      {
        at: '',
        problem: 'A new build goes into a folder of its own.',
        read: `a ${there}`,
        accepted: 'a new name, or an empty folder',
      },
    ]);
  await mkdir(target, { recursive: true });
  await cp(join(io.home, 'examples', options.like), target, { recursive: true, errorOnExist: true, force: false });
  if (options.json) print(io.stdout, [JSON.stringify({ format: 1, folder, like: options.like })]);
  else
    print(io.stdout, [
      `Made ${folder} from the demo build ${options.like}, which is invented.`,
      `Next: oddwheel check ${folder}, or oddwheel open ${folder}.`,
    ]);
  return DONE;
}
