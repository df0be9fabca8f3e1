/** From an empty folder to a laid-out drive, in a real browser: by pointer, by touch, and by keys alone. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Bench, openBrowser, startEmpty } from './bench.ts';

const SIX: readonly (readonly [string, string])[] = [
  ['six-power', '27 kW'],
  ['six-powerAt', '7500 rpm'],
  ['six-torque', '41 N.m'],
  ['six-torqueAt', '5200 rpm'],
  ['six-gears', '2.75 1.78 1.36 1.12 0.96'],
  ['six-primary', '65:31'],
  ['six-tyre', '110/85R36'],
  ['six-mass', '320 kg'],
  ['six-speed', '65 km/h'],
];
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const DESK = { viewport: { width: 1440, height: 1000 } };
const LINKS = 'field:/path/stages/chain-1/links';

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
  bench = await startEmpty();
});
afterEach(async () => {
  await page.context().close();
  await bench.stop();
  // That there is no build yet is told by this answer.
  expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
});

async function open(options: BrowserContextOptions): Promise<void> {
  const context = await browser.newContext({ locale: 'en-GB', ...options });
  page = await context.newPage();
  errors = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(bench.url());
  await page.getByRole('heading', { name: 'No build on the sheet' }).waitFor();
}

const build = () => JSON.parse(bench.text());
const step = (name: string) => page.locator('.steps').getByRole('button', { name: new RegExp(name) });
const overflow = (): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

async function violations(): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { axe: checker } = window as unknown as { axe: { run: () => Promise<{ violations: { id: string }[] }> } };
    return (await checker.run()).violations.map(({ id }) => id);
  });
}

const laidOut = (): Promise<void> => page.getByRole('heading', { name: 'Checks of the layout' }).waitFor();

describe('from an empty folder to a laid-out drive', () => {
  it('by pointer at 1440 px: six fields, a unit tap, undo, the slider, a finding and its working, every step', async () => {
    await open(DESK);
    expect(await violations()).toEqual([]);
    for (const [id, text] of SIX) await page.locator(`#${id}`).fill(text);
    await page.getByText(/Laid out as chain/).waitFor();
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await laidOut();
    expect(Object.keys(build().path.stages)).toHaveLength(3);
    expect(build().brief.engine.peaks.power).toBe('27 kW');

    // A field of a part with a tap on its unit: the file holds what was typed.
    await page.locator('.path-table').getByRole('button', { name: 'Shaft A' }).click();
    const diameter = page.locator('.inspector input[id^="field:/path/shafts/shaft-a/seats/"][id$="/diameter"]').first();
    const address = ((await diameter.getAttribute('id')) ?? '').slice('field:'.length);
    const before = bench.text();
    await diameter.fill('1.75');
    const field = page.locator('.inspector .field').filter({ has: page.locator(`[id="field:${address}"]`) });
    await field.getByRole('button', { name: 'in', exact: true }).click();
    await expect
      .poll(() =>
        address
          .split('/')
          .slice(1)
          .reduce((at, key) => at[key], build()),
      )
      .toBe('1.75 in');
    await page.locator('.head').getByRole('button', { name: /^Undo/ }).click();
    await expect.poll(() => bench.text()).toBe(before);

    await step('Strength').click();
    const slider = page.getByRole('slider').first();
    await slider.focus();
    const speed = await slider.getAttribute('aria-valuenow');
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => slider.getAttribute('aria-valuenow')).not.toBe(speed);
    await page.locator('[data-finding]').filter({ hasText: 'pull against strength' }).first().click();
    await page.locator('.inspector math').first().waitFor();
    for (const name of ['Brief', 'Ratios', 'Layout', 'Strength', 'Subframe', 'Make', 'True', 'Fit-up', 'Book']) {
      await step(name).click();
      await expect.poll(() => step(name).getAttribute('aria-current')).toBe('step');
    }
  }, 120_000);

  it('by touch at 390 px: six fields with "don’t know" for the gearbox, then the layout and its inputs', async () => {
    await open(PHONE);
    expect(await overflow()).toBe(0);
    for (const [id, text] of SIX) {
      if (id === 'six-gears' || id === 'six-primary') continue;
      await page.locator(`#${id}`).tap();
      await page.locator(`#${id}`).fill(text);
    }
    await page.getByLabel('don’t know').tap();
    await page.getByRole('button', { name: 'Lay it out' }).tap();
    await laidOut();
    expect(build().brief.engine.gears[0]).toMatch(/\.\./);
    expect(await overflow()).toBe(0);
    expect(await violations()).toEqual([]);
    await page.locator('.path-table').getByRole('button', { name: 'Chain 1' }).tap();
    const links = page.locator(`[id="${LINKS}"]`);
    const now = Number(await links.inputValue());
    await links.fill(String(now + 2));
    await page.keyboard.press('Enter');
    await expect.poll(() => build().path.stages['chain-1'].links).toBe(now + 2);
    await page.reload();
    await page.locator(`[id="${LINKS}"]`).waitFor();
    expect(build().path.stages['chain-1'].links).toBe(now + 2);
  }, 120_000);

  it('by keys alone: tab through the fields, Enter lays out, keys go on from there', async () => {
    await open(DESK);
    await page.locator('#six-power').focus();
    for (const [id, text] of SIX) {
      // Taps on units and the tick lie in between.
      for (let k = 0; k < 6 && (await page.evaluate(() => document.activeElement?.id)) !== id; k += 1)
        await page.keyboard.press('Tab');
      expect(await page.evaluate(() => document.activeElement?.id)).toBe(id);
      await page.keyboard.type(text);
    }
    await page.keyboard.press('Enter');
    await laidOut();
    expect(existsSync(join(bench.folder, 'build.json'))).toBe(true);
    await page.keyboard.press('Alt+4');
    await page.getByRole('heading', { name: 'What breaks first' }).waitFor();
    const onPull = (): Promise<boolean> =>
      page.evaluate(() => /pull against strength$/.test(document.activeElement?.textContent ?? ''));
    for (let k = 0; k < 30 && !(await onPull()); k += 1) await page.keyboard.press('j');
    await page.keyboard.press('Enter');
    await page.locator('.inspector math').first().waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Alt+3');
    await laidOut();
    expect(await violations()).toEqual([]);
  }, 120_000);

  it('what is wrong stands at its field, the first one has the focus, and nothing is made', async () => {
    await open(DESK);
    await page.locator('#six-power').fill('27');
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await page
      .getByText(/has no unit/)
      .first()
      .waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('six-power');
    expect(existsSync(join(bench.folder, 'build.json'))).toBe(false);
  });

  it('a demo is looked at with one press', async () => {
    await open(DESK);
    await page.getByRole('button', { name: 'rail-cart' }).click();
    await page.locator('.path-table').waitFor();
    expect(build().name).toBe('rail-cart');
  });
});
