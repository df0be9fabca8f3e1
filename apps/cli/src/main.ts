import { fileURLToPath } from 'node:url';
import { runCli } from './run.ts';

// A reader that has seen enough (`oddwheel check --json | head`) is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

const stop = new AbortController();
// The listeners stay: the folder's lock ends the process itself on a signal that nobody else listens to.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => stop.abort());

process.exitCode = await runCli(process.argv.slice(2), {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  cwd: process.cwd(),
  env: process.env,
  home: fileURLToPath(new URL('../../../', import.meta.url)),
  stop: stop.signal,
});
