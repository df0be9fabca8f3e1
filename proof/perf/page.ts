/**
 * Drags the slider of the real page through its whole range and prints the longest task of the page's own thread, and how
 * long the numbers take to follow. Nothing is asserted: times belong to the machine. The aim is 50 ms for a task.
 */
import { openBrowser, openPage, startBench } from '../browser/bench.ts';

const MOVES = 120;

interface Watched {
  tasks: number[];
  frames: number[];
}

const bench = await startBench();
const browser = await openBrowser();
try {
  const { page } = await openPage(browser, bench);
  // The runner of this file marks functions by name; the page has no such mark.
  await page.evaluate('globalThis.__name = (one) => one');
  await page.evaluate(() => {
    const watched: Watched = { tasks: [], frames: [] };
    Object.assign(window, { watched });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) watched.tasks.push(entry.duration);
    }).observe({ type: 'longtask', buffered: false });
    let last = performance.now();
    const frame = (now: number): void => {
      watched.frames.push(now - last);
      last = now;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
  const box = await page.getByRole('slider', { name: 'Road speed' }).boundingBox();
  if (!box) throw new Error('The page has no slider.');
  const y = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width * 0.1, y);
  await page.mouse.down();
  for (let move = 0; move <= MOVES; move++) await page.mouse.move(box.x + box.width * (0.1 + (0.8 * move) / MOVES), y);
  await page.mouse.up();

  const followed = await page.evaluate(async () => {
    const speed = () => document.querySelector('.path-table tbody tr:nth-child(2)')?.textContent;
    const slider = document.querySelector<HTMLElement>('[role=slider]');
    const taken: number[] = [];
    for (let step = 0; step < 20; step++) {
      const before = speed();
      const start = performance.now();
      slider?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft', bubbles: true }));
      while (speed() === before && performance.now() - start < 2000)
        await new Promise((resolve) => setTimeout(resolve, 1));
      taken.push(performance.now() - start);
    }
    return taken;
  });
  const watched = await page.evaluate(() => (window as unknown as { watched: Watched }).watched);
  const show = (what: string, ms: number): void => console.log(`${what.padEnd(46)} ${ms.toFixed(1).padStart(9)} ms`);
  show(`longest task over 50 ms in ${MOVES} moves of the slider`, Math.max(0, ...watched.tasks));
  show('longest frame meanwhile', Math.max(0, ...watched.frames));
  show('numbers follow the slider after (median)', followed.sort((a, b) => a - b)[followed.length >> 1] ?? Number.NaN);
} finally {
  await browser.close();
  await bench.stop();
}
