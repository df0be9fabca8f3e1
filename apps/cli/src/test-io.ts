/** A run of the command for tests: everything it writes is kept. */
import { fileURLToPath } from 'node:url';
import type { ExitCode, Io } from './io.ts';
import { runCli } from './run.ts';

export const HOME: string = fileURLToPath(new URL('../../../', import.meta.url));

export interface Ran {
  readonly code: ExitCode;
  readonly out: string;
  readonly err: string;
}

async function* once(text: string): AsyncGenerator<string> {
  yield text;
}

/** Runs the command in process. */
export async function run(
  argv: readonly string[],
  { cwd = HOME, stdin = '', ...more }: { cwd?: string; stdin?: string } & Partial<Omit<Io, 'stdin' | 'cwd'>> = {},
): Promise<Ran> {
  let out = '';
  let err = '';
  const code = await runCli(argv, {
    stdin: once(stdin),
    stdout: { write: (text) => (out += text) },
    stderr: { write: (text) => (err += text) },
    cwd,
    env: {},
    home: HOME,
    stop: new AbortController().signal,
    ...more,
  });
  return { code, out, err };
}
