import { fileURLToPath } from 'node:url';
import { runCli } from './run.ts';

const stop = new AbortController();
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => stop.abort());

process.exitCode = await runCli(process.argv.slice(2), {
  stdin: process.stdin,
  stdout: process.stdout,
  stderr: process.stderr,
  cwd: process.cwd(),
  env: process.env,
  home: fileURLToPath(new URL('../../../', import.meta.url)),
  stop: stop.signal,
});
