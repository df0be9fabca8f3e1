import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { inRoot, root } from './run.mjs';

const STAMP = 'node_modules/.oddwheel-lock';
/** npm writes this file last in every install. */
const NPM_MARK = 'node_modules/.package-lock.json';
const LEAST_NODE = [20, 19];

/** Codes with which npm says that it found no network. */
const OFFLINE =
  /\b(ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|ENETUNREACH|EHOSTUNREACH|ENOTCACHED|ERR_SOCKET_TIMEOUT)\b/;

/** The sentence that refuses a Node version, or null when it will do. */
export function nodeFault(version) {
  const [major, minor] = version.split('.').map(Number);
  const [leastMajor, leastMinor] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return null;
  return `Oddwheel needs Node ${LEAST_NODE.join('.')} or newer; this is Node ${version}.`;
}

/** The npm that belongs to the running Node: [program, leading arguments]. */
function npmCommand() {
  const bin = dirname(process.execPath);
  const places = [
    process.env.npm_execpath?.endsWith('npm-cli.js') ? process.env.npm_execpath : null,
    join(bin, '../lib/node_modules/npm/bin/npm-cli.js'),
    join(bin, 'node_modules/npm/bin/npm-cli.js'),
  ];
  const found = places.find((place) => place && existsSync(place));
  return found ? [process.execPath, [found]] : ['npm', []];
}

const lockHash = () =>
  createHash('sha256')
    .update(readFileSync(inRoot('package-lock.json')))
    .digest('hex');

/** Why an install is needed, or null when the installed packages answer the lock file. */
function reason(hash) {
  if (!existsSync(inRoot(NPM_MARK))) return 'the packages are not there yet';
  if (existsSync(inRoot(STAMP)) && readFileSync(inRoot(STAMP), 'utf8') === hash) return null;
  // Installed by hand: npm's own mark tells whether that was since the lock file changed.
  const byHand = statSync(inRoot(NPM_MARK)).mtimeMs >= statSync(inRoot('package-lock.json')).mtimeMs;
  return byHand ? null : 'package-lock.json changed';
}

function npmCi() {
  const [program, leading] = npmCommand();
  return new Promise((resolve) => {
    const child = spawn(program, [...leading, 'ci', '--no-audit', '--no-fund', '--loglevel=error'], {
      cwd: root,
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let errors = '';
    child.stderr.on('data', (chunk) => {
      errors += chunk;
    });
    child.on('error', (error) => resolve({ code: 1, errors: error.message }));
    child.on('close', (code) => resolve({ code: code ?? 1, errors }));
  });
}

function installFault(errors) {
  const code = OFFLINE.exec(errors)?.[0];
  if (code) return `Could not fetch the packages (${code}). Connect to the internet once, then run this again.`;
  const line = errors.split('\n').find((text) => text.trim() !== '') ?? 'npm gave no reason';
  return `npm ci failed: ${line.trim()}`;
}

/**
 * Installs what package-lock.json names when it is not installed yet, and says so; otherwise does nothing.
 * @param say takes one line of what is going on.
 * @throws Error with one line when Node is too old or npm cannot install.
 */
export async function ensureInstalled(say = console.log) {
  const fault = nodeFault(process.versions.node);
  if (fault) throw new Error(fault);
  const hash = lockHash();
  const why = reason(hash);
  if (why) {
    say(`Installing the packages with npm ci (${why}) …`);
    const { code, errors } = await npmCi();
    if (code !== 0) throw new Error(installFault(errors));
  }
  writeFileSync(inRoot(STAMP), hash);
}
