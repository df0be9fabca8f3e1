/** Small helpers of the scripts. Node built-ins only: the scripts run before anything is installed. */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Folder of the whole project. */
export const root = fileURLToPath(new URL('../', import.meta.url));

/** Path of a file of the project, named from the project's folder. */
export const inRoot = (path) => fileURLToPath(new URL(`../${path}`, import.meta.url));

/**
 * Runs a Node program of the project or of a package, by path from the project's folder, and waits for its end.
 * It gets this terminal, or with `quiet` its output is kept and given back. Ctrl+C is left for the program to act on.
 */
export function runNode(path, args, { quiet = false } = {}) {
  return new Promise((resolve, reject) => {
    const stdio = quiet ? ['ignore', 'pipe', 'pipe'] : 'inherit';
    const child = spawn(process.execPath, [inRoot(path), ...args], { cwd: root, stdio });
    let output = '';
    const keep = (chunk) => {
      output += chunk;
    };
    child.stdout?.setEncoding('utf8').on('data', keep);
    child.stderr?.setEncoding('utf8').on('data', keep);
    const leave = () => {};
    const pass = (signal) => child.kill(signal);
    process.on('SIGINT', leave).on('SIGTERM', pass);
    child.on('error', reject);
    child.on('close', (code, signal) => {
      process.off('SIGINT', leave).off('SIGTERM', pass);
      resolve({ code: code ?? (signal === 'SIGINT' ? 130 : 143), output });
    });
  });
}

/** Runs the whole of a script; an error ends it with its message on one line and exit code 2. */
export async function script(main) {
  try {
    process.exitCode = await main();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 2;
  }
}
