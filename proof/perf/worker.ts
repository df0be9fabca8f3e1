/**
 * Prints how long an edit of the demo takes in a worker of the browser, bundled as the page is: by the page's own model, what changed since the
 * last answer included, from when the edit was due. Edits come as far apart as those of a dragged control, and the ends of ranges are asked for after
 * each, as the page does.
 * Nothing is asserted: times belong to the machine. The aim is 5 ms, the cap 16 ms. Run by `npm run perf:worker`.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { openBrowser } from '../browser/bench.ts';

const RUNS = 400;
/** ms. */
const CAP = 16;
const SPANS = [
  [0, 20],
  [20, 100],
  [100, 200],
  [200, RUNS],
] as const;

const TEXT = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

async function script(): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL('in-worker.mjs', import.meta.url))],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    platform: 'browser',
    conditions: ['source'],
    logLevel: 'error',
  });
  return outputFiles[0]?.text ?? '';
}

/** The time that a part of the edits keeps within. */
function within(times: readonly number[], part: number): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
  return `${at.toFixed(1).padStart(6)} ms`;
}

const source = await script();
const browser = await openBrowser();
try {
  const page = await browser.newPage();
  // As text: the runner of this file marks functions by name, and the page has no such mark.
  const times = await page.evaluate<number[]>(`new Promise((tell, fail) => {
    const from = URL.createObjectURL(new Blob([${JSON.stringify(source)}], { type: 'text/javascript' }));
    const worker = new Worker(from);
    worker.onmessage = ({ data }) => tell(data);
    worker.onerror = ({ message }) => fail(new Error(message));
    worker.postMessage(${JSON.stringify({ text: TEXT, runs: RUNS })});
  })`);
  console.log('one edit in the worker     half within  nine of ten     all    over 16 ms');
  for (const [from, to] of SPANS) {
    const some = times.slice(from, to);
    console.log(
      `edits ${String(from + 1).padStart(3)} to ${String(to).padEnd(14)}${within(some, 0.5)}    ${within(some, 0.9)}  ${within(some, 1)}    ${String(some.filter((time) => time > CAP).length).padStart(4)}`,
    );
  }
} finally {
  await browser.close();
}
