/** The search for trains on the Ratios step, played in a real browser. */
import { openSession } from '@oddwheel/build/session';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

const PHONE: BrowserContextOptions = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };
const CRUISE = 40 / 3.6;

let browser: Browser;
let bench: Bench;
let page: Page;
let errors: string[];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  bench = await startBench();
});
afterEach(async () => {
  await page.context().close();
  await bench.stop();
  expect(errors).toEqual([]);
});

async function open(options: BrowserContextOptions = {}): Promise<void> {
  ({ page, errors } = await openPage(browser, bench, options));
  await page.evaluate(() => {
    window.location.hash = 'ratios';
  });
  await page.locator('.trains').waitFor();
}

const plain = async (place: ReturnType<Page['locator']>): Promise<string> =>
  ((await place.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
const number = (text: string): number => Number(text.replaceAll(/[^\d.]/g, ''));
const button = (name: string) => page.getByRole('button', { name, exact: true });
const listed = (row: number) => page.locator('.train-table tbody tr:not(.train-more-row)').nth(row);

/** What the build on the disk comes to: path ratio, engine speed when cruising in the last gear, pull in first. */
function onDisk(): readonly [path: number, engine: number, pull: number] {
  const opened = openSession(bench.text(), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { assessment, evaluation } = opened.session;
  const { scene } = evaluation.middle;
  const { pulls } = assessment.road;
  const path = scene.stages.reduce((product, { ratio }) => product * ratio, 1);
  const overall = assessment.gears.at(-1)?.overall.value ?? Number.NaN;
  const engine = (CRUISE / (scene.rollOut ?? Number.NaN)) * overall * 60;
  return [path, engine, 'gears' in pulls ? (pulls.gears[0]?.atPeakTorque.value ?? Number.NaN) / 1000 : Number.NaN];
}

/** Two numbers, one of them rounded to four figures. */
const expectShown = (shown: number, exact: number): void => {
  expect(Math.abs(shown / exact - 1)).toBeLessThan(6e-4);
};

describe('the best trains', () => {
  it('by keyboard: teeth that cannot be read, a search that is stopped, another order, the list, side by side, the front', async () => {
    await open();
    await page.getByLabel(/^Chain 1, \d+ : \d+$/).selectOption('range');
    const driver = page.getByLabel('Driver teeth of Chain 1');
    await driver.fill('many');
    await button('Find trains').press('Enter');
    await page.getByText('many was read. A range of teeth').waitFor();
    expect(await driver.getAttribute('aria-invalid')).toBe('true');
    await driver.fill('9..80');
    await page.getByLabel('Driven teeth of Chain 1').fill('9..80');
    await button('Find trains').press('Enter');
    await button('Stop').press('Enter');
    await page.getByText('Stopped.').waitFor();
    await page.getByLabel(/^Chain 1, \d+ : \d+$/).selectOption('usual');

    await button('Later: meets the targets').press('Enter');
    await expect.poll(() => plain(page.locator('.train-order li').first())).toContain('even links');
    await button('Find trains').press('Enter');
    await page.locator('.train-table').waitFor();
    await page.getByLabel('Compare train 2').press('Space');
    const table = page.locator('.compare-table');
    await expect.poll(() => table.locator('thead th').count()).toBe(3);
    expect(await plain(table.locator('thead th').nth(1))).toBe('as drawn');
    // The build as drawn shows in the comparison what its own table of gears shows.
    const first = number(await plain(page.locator('.gear-table tbody tr').first().locator('td').first()));
    expectShown(number(await plain(table.locator('tbody tr').first().locator('td').first())), first);
    await button('Find the front').press('Enter');
    await page.locator('.trains .plot-reading').filter({ hasText: 'on the front' }).waitFor();
    await page.locator('.trains .plot-curve.chosen[d*="L"]').first().waitFor();
  });

  it('one that is taken gives the numbers that the list showed, as one edit with its Undo; so does one tooth more', async () => {
    await open();
    const before = bench.text();
    await button('Find trains').click();
    await listed(1).waitFor();
    const cells = await Promise.all([2, 3, 4].map((column) => plain(listed(1).locator('th, td').nth(column))));
    const reserve = number(await plain(listed(1).locator('.train-lowest')));
    await listed(1).locator('.link').click();
    await button('Take this train').click();
    await expect.poll(() => bench.text() === before).toBe(false);
    cells.forEach((cell, k) => {
      expectShown(number(cell), onDisk()[k] ?? Number.NaN);
    });
    const opened = openSession(bench.text(), { ends: 'not yet' });
    const reserves = opened.ok ? opened.session.assessment.findings.map(({ reserve: one }) => one?.value ?? 0) : [];
    expect(reserves.some((one) => Math.abs(one - reserve) < 0.0051)).toBe(true);
    // What was listed stands for the build before: it says so, and is taken no more.
    await page.getByText('The build has changed since. Find trains again').waitFor();
    expect(await button('Take this train').isDisabled()).toBe(true);
    const undo = page.locator('.head').getByRole('button', { name: /^Undo Chain/ });
    await undo.click();
    await expect.poll(() => bench.text() === before).toBe(true);

    await button('Try these teeth').click();
    const row = page.locator('.swap-table tbody tr', { has: page.locator('th', { hasText: /^18/ }) });
    await row.waitFor();
    const pull = number(await plain(row.locator('td').nth(-3)));
    await row.getByRole('button', { name: 'Take 18 teeth' }).click();
    await expect.poll(() => /"driver": 18/.test(bench.text())).toBe(true);
    expectShown(pull, onDisk()[2]);
  });

  it('fit 360 px, are worked by touch, and have no fault of accessibility', async () => {
    await open(PHONE);
    await button('Best trains').tap();
    await button('Find trains').tap();
    await listed(0).waitFor();
    for (const name of ['Two things that count', 'Side by side', 'One tooth more']) await button(name).tap();
    await page.getByLabel('Compare train 2').tap();
    await listed(0).locator('.link').tap();
    await button('Try these teeth').tap();
    await page.locator('.swap-table').waitFor();
    await page.locator('.compare-table').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
  });
});
