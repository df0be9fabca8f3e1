/** Starts the real host on a copy of the demo, as a builder's terminal would, and opens its page in a real browser. */
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { findBrowser } from '../../scripts/browser.mjs';

const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** A host under test and the folder that it serves. */
export interface Bench {
  readonly folder: string;
  /** Text of build.json on the disk. */
  readonly text: () => string;
  /** Replaces a part of build.json as a text editor would. */
  readonly editFile: (from: string, to: string) => void;
  readonly url: () => string;
  /** Ends the host as a power cut would, in the middle of whatever it does. */
  readonly kill: () => Promise<void>;
  /** Ends the host, if it still runs, and starts it again on the same folder and port. */
  readonly restart: () => Promise<void>;
  readonly stop: () => Promise<void>;
}

/** Serves a fresh copy of the marsh-hauler demo. */
export function startBench(): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'oddwheel-bench-'));
  cpSync(fromRoot('examples/marsh-hauler'), folder, { recursive: true });
  return serve(folder);
}

/** Serves an empty folder. */
export function startEmpty(): Promise<Bench> {
  return serve(mkdtempSync(join(tmpdir(), 'oddwheel-empty-')));
}

async function serve(folder: string): Promise<Bench> {
  const file = join(folder, 'build.json');
  let host = await startHost(folder, 0);
  return {
    folder,
    text: () => readFileSync(file, 'utf8'),
    editFile: (from, to) => {
      const before = readFileSync(file, 'utf8');
      if (!before.includes(from)) throw new Error(`build.json has no ${from}`);
      writeFileSync(file, before.replace(from, to));
    },
    url: () => host.url,
    kill: () => end(host.process, 'SIGKILL'),
    restart: async () => {
      await end(host.process);
      host = await startHost(folder, Number(new URL(host.url).port));
    },
    stop: async () => {
      await end(host.process);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function startHost(
  folder: string,
  port: number,
): Promise<{ readonly process: ChildProcess; readonly url: string }> {
  const args = [fromRoot('apps/cli/dist/oddwheel.mjs'), 'open', folder, '--no-browser', '--port', String(port)];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let output = '';
  const url = await new Promise<string>((resolve, reject) => {
    const read = (part: Buffer): void => {
      output += part.toString();
      const found = /http:\/\/127\.0\.0\.1:\d+/.exec(output);
      if (found) resolve(found[0]);
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.on('exit', (code) => reject(new Error(`The host ended with ${code}: ${output}`)));
  });
  return { process: child, url };
}

function end(child: ChildProcess, signal: NodeJS.Signals = 'SIGTERM'): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.once('exit', () => resolve());
    child.kill(signal);
  });
}

export async function openBrowser(): Promise<Browser> {
  const { executablePath, env, args } = await findBrowser();
  const given = Object.entries(env).flatMap(([key, value]) => (value === undefined ? [] : [[key, value] as const]));
  return chromium.launch({ executablePath, env: Object.fromEntries(given), args });
}

/** Waits until the ends of all ranges were tried, which come right after the numbers at their middle. */
export const ranged = (page: Page): Promise<void> => page.locator('[data-ends="tried"]').waitFor();

/** A page of the bench that is ready, with every error that the browser reported. */
export async function openPage(
  browser: Browser,
  bench: Bench,
  options: BrowserContextOptions = {},
): Promise<{ readonly page: Page; readonly errors: string[] }> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, locale: 'en-GB', ...options });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(bench.url());
  await page.getByRole('heading', { name: 'What breaks first' }).waitFor();
  await ranged(page);
  return { page, errors };
}

/** A cell of the path's table, by row and element; its words with plain spaces. */
export async function pathCell(page: Page, row: string, element: string): Promise<string> {
  const table = page.locator('.path-table');
  const heads = await table.locator('thead th').allTextContents();
  const column = heads.findIndex((head) => head.trim() === element);
  const cell = table.locator('tbody tr', { has: page.locator('th', { hasText: new RegExp(`^${row}$`) }) });
  return ((await cell.locator('th, td').nth(column).textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
}
