/**
 * Drags a shaft of the demo across the layout's drawing and prints how long the drawing and the numbers take to follow. Nothing is asserted:
 * times belong to the machine. The aims are one frame of 60 Hz (16.7 ms) for the drawing, two for the numbers, and no task over 50 ms.
 * Run by `npm run perf:drag`.
 */
import { openBrowser, openPage, startBench } from '../browser/bench.ts';

const MOVES = 60;
const SHAFT = '/path/shafts/shaft-b';

interface Watched {
  readonly tasks: number[];
  /** The page's own scripts within frames that took over 50 ms. */
  readonly scripts: number[];
  readonly frames: number[];
  /** From a pointer's move to the part's new place, and to the model's numbers. */
  readonly drawn: number[];
  readonly told: number[];
  /** When numbers came. */
  readonly came: number[];
}

/** What the browser tells of a slow frame. */
interface LongFrame extends PerformanceEntry {
  readonly scripts: readonly { readonly duration: number }[];
}

const bench = await startBench();
const browser = await openBrowser();
try {
  const { page } = await openPage(browser, bench);
  await page.goto(`${bench.url()}/#layout`);
  await page.locator('.drawing-sheet svg').waitFor();
  await page.getByLabel('Chosen in the drawing').selectOption({ label: 'Shaft B' });
  const handle = page.getByRole('button', { name: /^Move Shaft B/ });
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (!box) throw new Error('The drawing has no handle.');
  // The runner of this file marks functions by name; the page has no such mark.
  await page.evaluate('globalThis.__name = (one) => one');
  await page.evaluate((shaft) => {
    const watched: Watched = { tasks: [], scripts: [], frames: [], drawn: [], told: [], came: [] };
    Object.assign(window, { watched });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) watched.tasks.push(entry.duration);
    }).observe({ type: 'longtask', buffered: false });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        watched.scripts.push(...(entry as LongFrame).scripts.map(({ duration }) => duration));
    }).observe({ type: 'long-animation-frame', buffered: false });
    let last = performance.now();
    const frame = (now: number): void => {
      watched.frames.push(now - last);
      last = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
    const place = (): string =>
      document.querySelector(`[data-view="from the left"] [data-of="${shaft}"]`)?.getAttribute('transform') ?? '';
    const numbers = (): string => document.querySelector('.move-readout .becomes')?.textContent ?? '';
    let [was, said] = [place(), numbers()];
    let [moved, asked] = [0, 0];
    // Before the page's own listeners, so that their work counts.
    window.addEventListener(
      'pointermove',
      () => {
        if (moved === 0) moved = performance.now();
        if (asked === 0) asked = performance.now();
      },
      true,
    );
    new MutationObserver(() => {
      const now = performance.now();
      if (moved > 0 && place() !== was) {
        watched.drawn.push(now - moved);
        [was, moved] = [place(), 0];
      }
      if (numbers() !== said) {
        if (asked > 0) watched.told.push(now - asked);
        watched.came.push(now);
        [said, asked] = [numbers(), 0];
      }
    }).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
  }, SHAFT);
  await page.mouse.move(box.x + 10, box.y + 10);
  await page.mouse.down();
  await page.mouse.move(box.x + 14, box.y + 10);
  await page.waitForTimeout(500);
  // One move at a time, each waited for: from the pointer to the numbers.
  for (let move = 0; move < MOVES; move += 1) {
    await page.mouse.move(box.x + 14 + (move % 2 === 0 ? move : -move) / 3, box.y + 10 - move / 3);
    await page.waitForTimeout(120);
  }
  const single = await page.evaluate(() => {
    const { watched } = window as unknown as { watched: Watched };
    return {
      drawn: watched.drawn.splice(0),
      told: watched.told.splice(0),
      frames: watched.frames.splice(0),
      came: watched.came.splice(0),
    };
  });
  // Then a hurried drag, in which only the newest place is asked for.
  for (let move = 0; move < 4 * MOVES; move += 1)
    await page.mouse.move(box.x + 14 + 20 * Math.sin(move / 9), box.y + 10 - 20 * Math.cos(move / 9));
  const hurried = await page.evaluate(() => (window as unknown as { watched: Watched }).watched);
  await page.keyboard.press('Escape');
  await page.mouse.up();

  const sorted = (all: readonly number[]): number[] => [...all].sort((a, b) => a - b);
  const at = (all: readonly number[], part: number): number =>
    sorted(all)[Math.min(all.length - 1, Math.floor(part * all.length))] ?? Number.NaN;
  const gaps = (times: readonly number[]): number[] => times.slice(1).map((time, k) => time - (times[k] ?? time));
  const show = (what: string, ms: number): void => console.log(`${what.padEnd(58)} ${ms.toFixed(1).padStart(8)} ms`);
  show(`pointer to the part's new place (median of ${single.drawn.length})`, at(single.drawn, 0.5));
  show('pointer to the part’s new place (19 of 20)', at(single.drawn, 0.95));
  show(`pointer to numbers (median of ${single.told.length})`, at(single.told, 0.5));
  show('pointer to numbers (19 of 20)', at(single.told, 0.95));
  show('hurried drag: frame (median)', at(hurried.frames, 0.5));
  show('hurried drag: frame (19 of 20)', at(hurried.frames, 0.95));
  // In a hurry an answer may be to an earlier place, so what counts is how often numbers come.
  show('hurried drag: from numbers to numbers (median)', at(gaps(hurried.came), 0.5));
  show('hurried drag: from numbers to numbers (19 of 20)', at(gaps(hurried.came), 0.95));
  // A busy machine stretches a task that does little: what the page itself did in it stands beside it.
  show('longest task over 50 ms on the main thread, 0 for none', Math.max(0, ...hurried.tasks));
  show('longest script of the page in a frame over 50 ms', Math.max(0, ...hurried.scripts));
} finally {
  await browser.close();
  await bench.stop();
}
