import { cp, mkdir, readdir, readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { validateText } from '@oddwheel/build/session';
import { readArchive } from '@oddwheel/store/archive';
import { createBuildFolder } from '@oddwheel/store/new-build';
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

/** Fills a new folder; gives the exit code after a complaint, or null when it is made. */
type Fill = (target: string) => Promise<ExitCode | null>;

/** A saved build as the bench makes it, "Save as one file". */
function fromArchive(io: Io, file: string): Fill {
  return async (target) => {
    let bytes: Uint8Array;
    try {
      bytes = await readFile(resolve(io.cwd, file));
    } catch {
      const problem = 'There is no such file, or it may not be read.';
      return complain(io, '--like', [{ at: '', problem, read: file, accepted: 'a build saved as one file' }]);
    }
    const read = readArchive(bytes, validateText);
    if (!read.ok)
      return complain(
        io,
        file,
        read.faults.map(({ address, ...fault }) => ({ ...fault, at: address })),
      );
    const { build, log, history, runOut, pictures } = read.content;
    await createBuildFolder(target, build, {
      validate: validateText,
      ...(log === '' ? {} : { log }),
      ...(history === '' ? {} : { history }),
      ...(runOut === '' ? {} : { runOut }),
      pictures: [...pictures.values()],
    });
    return null;
  };
}

async function fromDemo(io: Io, name: string): Promise<Fill | ExitCode> {
  const names = await demoNames(io.home);
  if (!names.includes(name))
    return complain(io, '--like', [
      {
        ...{ at: '', problem: 'There is no demo build of this name.', read: name },
        accepted: `${names.join(', ')}, or a file that the bench saved, its name ending in .zip`,
      },
    ]);
  return async (target) => {
    await mkdir(target, { recursive: true });
    await cp(join(io.home, 'examples', name), target, { recursive: true, errorOnExist: true, force: false });
    return null;
  };
}

/**
 * `new`: copies a demo build, or a build saved as one file, into a new folder.
 * @param folder where to; must not be there yet, or be empty
 */
export async function newBuild(io: Io, folder: string, options: { like: string; json?: true }): Promise<ExitCode> {
  const { like } = options;
  const saved = /\.zip$/i.test(like);
  const fill = saved ? fromArchive(io, like) : await fromDemo(io, like);
  if (typeof fill === 'number') return fill;
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
  const failed = await fill(target);
  if (failed !== null) return failed;
  if (options.json) print(io.stdout, [JSON.stringify({ format: 1, folder, like })]);
  else
    print(io.stdout, [
      saved ? `Made ${folder} from ${like}.` : `Made ${folder} from the demo build ${like}, which is invented.`,
      `Next: oddwheel check ${folder}, or oddwheel open ${folder}.`,
    ]);
  return DONE;
}
