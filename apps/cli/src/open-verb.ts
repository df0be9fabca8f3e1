import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { isEmpty, startHost } from '@oddwheel/host/start';
import { complain } from './complain.ts';
import { DONE, type ExitCode, type Io, print } from './io.ts';
import { readBuildText } from './read-folder.ts';

export interface OpenOptions {
  readonly port?: string;
  readonly lan?: true;
  readonly browser: boolean;
  readonly json?: true;
}

function portOf(text: string): number | null {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return port <= 65535 ? port : null;
}

/** Program that opens an address in the builder's browser; null where nobody would see it. */
function browserCommand(env: Io['env']): [string, string[]] | null {
  if (env.CI) return null;
  if (process.platform === 'darwin') return ['open', []];
  if (process.platform === 'win32') return ['explorer.exe', []];
  return env.DISPLAY || env.WAYLAND_DISPLAY ? ['xdg-open', []] : null;
}

function openBrowser(url: string, env: Io['env']): void {
  const command = browserCommand(env);
  if (!command) return;
  const [program, args] = command;
  // Without such a program nothing opens; the address stands in the terminal.
  spawn(program, [...args, url], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

function stopped(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve();
    else signal.addEventListener('abort', () => resolve(), { once: true });
  });
}

/** `open`: serves a build folder on the bench until it is told to stop; in an empty or new folder the page begins the build. */
export async function openVerb(io: Io, folder: string, options: OpenOptions): Promise<ExitCode> {
  const port = options.port === undefined ? undefined : portOf(options.port);
  if (port === null)
    return complain(io, 'open', [
      {
        at: '--port',
        problem: 'This is not a port.',
        read: options.port ?? '',
        accepted: 'a whole number from 0 to 65535',
      },
    ]);
  const empty = await isEmpty(resolve(io.cwd, folder));
  if (!empty) {
    const build = await readBuildText(io, folder, ', or one that is empty or not there yet');
    if (!build.ok) return build.code;
  }
  const say = (line: string) => print(options.json ? io.stderr : io.stdout, [line]);
  let host: Awaited<ReturnType<typeof startHost>>;
  try {
    host = await startHost({
      folder: resolve(io.cwd, folder),
      benchDir: resolve(io.home, 'apps/bench/dist'),
      ...(port === undefined ? {} : { port }),
      lan: options.lan === true,
      log: say,
    });
  } catch (error) {
    const problem = error instanceof Error ? error.message : String(error);
    return complain(io, 'open', [
      {
        at: '',
        problem,
        read: `port ${options.port ?? 'not given'}`,
        accepted: 'a free port, and a page that is built (npm run build)',
      },
    ]);
  }
  if (options.json) print(io.stdout, [JSON.stringify({ format: 1, url: host.url })]);
  else if (empty) say(`There is no build in ${folder} yet: begin one at ${host.url} (Ctrl+C ends it).`);
  else say(`The bench for ${folder} is at ${host.url} (Ctrl+C ends it).`);
  if (options.browser) openBrowser(host.url, io.env);
  await stopped(io.stop);
  await host.close();
  return DONE;
}
