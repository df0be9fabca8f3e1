/** The Ratios step and the stroke of the arm, played in a real browser. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, pathCell, startBench } from './bench.ts';

const PHONE: BrowserContextOptions = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

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

async function open(step: 'ratios' | 'layout', options: BrowserContextOptions = {}): Promise<void> {
  ({ page, errors } = await openPage(browser, bench, options));
  await page.evaluate((name) => {
    window.location.hash = name;
  }, step);
  await page
    .locator(step === 'ratios' ? '.ratios .plot' : '.stroke-chain')
    .first()
    .waitFor({ state: 'attached' });
}

const plot = (name: string) => page.getByRole('region', { name, exact: true });
const plain = async (place: ReturnType<Page['locator']>): Promise<string> =>
  ((await place.textContent()) ?? '').replaceAll(/\s+/g, ' ').trim();
const number = (text: string): number => Number(text.replace(/ ?±.*/, '').replaceAll(/[^\d.]/g, ''));

describe('the Ratios step', () => {
  it('draws the curves once, and the slider moves a line across them with the numbers of the path', async () => {
    await open('ratios');
    for (const name of ['Pull against road load', 'Speed in gears', 'Speeding up'])
      expect(await plot(name).locator('.plot-cursor').count()).toBe(1);
    const lines = await plot('Pull against road load').locator('.plot-curve').count();
    const cursor = () => plot('Pull against road load').locator('.plot-cursor').getAttribute('d');
    const before = await cursor();
    const curve = await plot('Pull against road load').locator('.plot-curve').first().getAttribute('d');
    const engineBefore = number(await pathCell(page, 'speed or teeth', 'Engine'));
    await page.getByRole('slider', { name: 'Road speed' }).focus();
    await page.keyboard.press('PageUp');
    await expect.poll(cursor).not.toBe(before);
    expect(await plot('Pull against road load').locator('.plot-curve').first().getAttribute('d')).toBe(curve);
    expect(await plot('Pull against road load').locator('.plot-curve').count()).toBe(lines);
    // The line follows the hand, the numbers follow the model: both of them together.
    const engine = async () => [
      number(await plain(plot('Speed in gears').locator('.plot-reading b'))),
      number(await pathCell(page, 'speed or teeth', 'Engine')),
    ];
    await expect.poll(async () => (await engine()).every((speed) => speed > engineBefore * 1.1)).toBe(true);
    const [read, told] = await engine();
    expect(read).toBe(told);
  });

  it('another gear is the chosen curve, and words at curves do not cover each other', async () => {
    await open('ratios');
    await page.getByRole('button', { name: 'Gear 4', exact: true }).click();
    await expect.poll(() => plain(plot('Pull against road load').locator('.plot-word.chosen'))).toBe('4th');
    for (const sheet of await page.locator('.ratios .plot-sheet').all()) {
      const boxes = await sheet.locator('.plot-word').evaluateAll((words) =>
        words.map((word) => {
          const { left, right, top, bottom } = word.getBoundingClientRect();
          return { left, right, top: top + 3, bottom: bottom - 3 };
        }),
      );
      expect(boxes.length).toBeGreaterThan(1);
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1))
          expect(a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top).toBe(true);
      });
    }
  });

  it('each plot opens as a table by keyboard', async () => {
    await open('ratios');
    const summary = plot('Pull against road load').locator('summary');
    await summary.focus();
    await page.keyboard.press('Enter');
    const rows = plot('Pull against road load').locator('tbody tr');
    await rows.first().waitFor();
    expect(await rows.count()).toBe(13);
    expect(await plain(plot('Pull against road load').locator('thead tr'))).toContain('25 % climb');
  });

  it('power is lost stage by stage, and nothing goes missing on the way', async () => {
    await open('ratios');
    const cells = async (column: number) =>
      Promise.all(
        (await page.locator('.power-table tbody tr').all()).slice(0, -1).map(async (row) => {
          return number(await plain(row.locator('th, td').nth(column)));
        }),
      );
    const [lost, on] = [await cells(1), await cells(3)];
    expect(on).toHaveLength(5);
    for (const [k, power] of on.entries()) if (k > 0) expect((on[k - 1] ?? 0) - (lost[k] ?? 0)).toBeCloseTo(power, 0);
    expect(on.at(-1)).toBeLessThan(on[0] ?? 0);
  });

  it('a tooth more changes the gears, and a line of the road opens its finding', async () => {
    await open('ratios');
    const first = page.locator('.gear-table tbody tr').first().locator('td').first();
    const before = number(await plain(first));
    await page.locator('.path-table').getByRole('button', { name: 'Chain 1', exact: true }).click();
    const field = page.locator('.inspector').getByLabel('Driver teeth', { exact: true });
    await field.fill('18');
    await field.press('Enter');
    await expect.poll(async () => number(await plain(first)) / before).toBeCloseTo(17 / 18, 3);
    await page.locator('.road-rows').getByRole('button', { name: 'Heat in the clutch in a start' }).click();
    await expect.poll(() => page.evaluate(() => window.location.hash)).toContain('road.clutch');
  });

  it('without a torque curve it says what is missing and leads there', async () => {
    const build = JSON.parse(bench.text()) as { brief: { engine: Record<string, object> } };
    delete build.brief.engine.curve;
    writeFileSync(join(bench.folder, 'build.json'), JSON.stringify(build, null, 2));
    ({ page, errors } = await openPage(browser, bench));
    await page.evaluate(() => {
      window.location.hash = 'ratios';
    });
    expect(await page.locator('.ratios .plot').count()).toBe(0);
    await page
      .locator('.ratios')
      .getByRole('button', { name: /^the torque curve/ })
      .click();
    await expect.poll(() => page.evaluate(() => window.location.hash)).toContain('engine');
  });

  it('fits 360 px with every table open, and has no fault of accessibility', async () => {
    await open('ratios', PHONE);
    for (const summary of await page.locator('.plot-table summary').all()) await summary.click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
  });
});

describe('the stroke of the arm on the Layout step', () => {
  it('gives the slack to set, and the line follows the arm', async () => {
    await open('layout');
    const panel = page.getByRole('region', { name: 'Over the stroke of the arm' });
    expect(await plain(panel.locator('.stroke-slack'))).toContain('12.8 mm');
    const cursor = () => panel.locator('.plot-cursor').getAttribute('d');
    const before = await cursor();
    await page.getByRole('slider', { name: /^Swinging arm/ }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(cursor).not.toBe(before);
    await panel.locator('summary').first().click();
    expect(await panel.locator('.plot-table tbody tr').count()).toBe(9);
  });

  it('its panels are folded on a phone, open by a tap, and have no fault of accessibility', async () => {
    await open('layout', PHONE);
    const heading = page.getByRole('button', { name: 'Over the stroke of the arm', exact: true });
    expect(await heading.getAttribute('aria-expanded')).toBe('false');
    expect(await page.locator('.stroke-chain').isVisible()).toBe(false);
    await heading.tap();
    expect(await page.locator('.stroke-chain').isVisible()).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
  });
});
