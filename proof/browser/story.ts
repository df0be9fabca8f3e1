/** What the stories from an empty sheet to a laid-out drive have in common. */
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';

/** The six fields as a builder types them, by the id of their box; the mass gets its unit by a tap. */
export const SIX: readonly (readonly [id: string, text: string])[] = [
  ['six-power', '27 kW'],
  ['six-powerAt', '7500 rpm'],
  ['six-torque', '41 N.m'],
  ['six-torqueAt', '5200 rpm'],
  ['six-gears', '2.75 1.78 1.36 1.12 0.96'],
  ['six-primary', '65:31'],
  ['six-tyre', '110/85R36'],
  ['six-mass', '705'],
  ['six-speed', '65 km/h'],
];
export const PHONE: BrowserContextOptions = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
export const DESK: BrowserContextOptions = { viewport: { width: 1440, height: 1000 } };
export const STEPS = ['Brief', 'Ratios', 'Layout', 'Strength', 'Subframe', 'Make', 'True', 'Fit-up', 'Book'] as const;
/** A diameter of the first layout that every story changes. */
export const DIAMETER = '/path/shafts/shaft-a/seats/bearing-front/diameter';
export const field = (page: Page, address: string): Locator => page.locator(`[id="field:${address}"]`);
/** The units to tap beside a field of the inspector. */
export const units = (page: Page, address: string): Locator =>
  page
    .locator('.inspector .field')
    .filter({ has: field(page, address) })
    .locator('.unit-taps');

/** A value of a build file by its address. */
export function valueIn(text: string, address: string): unknown {
  return address
    .split('/')
    .slice(1)
    .reduce((at: unknown, key) => (at as Record<string, unknown> | undefined)?.[key], JSON.parse(text));
}

/** An empty sheet, with every error that the browser reports from then on. */
export async function openSheet(
  browser: Browser,
  url: string,
  options: BrowserContextOptions,
): Promise<{ readonly page: Page; readonly errors: string[] }> {
  const context = await browser.newContext({ locale: 'en-GB', ...options });
  const page = await context.newPage();
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(url);
  await page.getByRole('heading', { name: 'No build on the sheet' }).waitFor();
  return { page, errors };
}

export const laidOut = (page: Page): Promise<void> =>
  page.getByRole('heading', { name: 'Checks of the layout' }).waitFor();

/** By how much the page is wider than the screen, px. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Presses Tab until what has the focus fits, and gives how often; fails when nothing on the page does. */
export async function tabTo(page: Page, selector: string, most = 600): Promise<number> {
  // What the worker has to answer first may come a moment after the key before.
  await page.locator(selector).first().waitFor({ state: 'attached' });
  for (let k = 0; k <= most; k += 1) {
    const there = await page.evaluate((fits) => document.activeElement?.matches(fits) === true, selector);
    if (there) return k;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach ${selector}.`);
}

/** Presses Tab until a button with these words has the focus. */
export async function tabToButton(page: Page, words: string, most = 40): Promise<void> {
  await page.locator('button', { hasText: words }).first().waitFor({ state: 'attached' });
  for (let k = 0; k <= most; k += 1) {
    const here = await page.evaluate(() => document.activeElement?.textContent);
    if (here === words) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach ${words}.`);
}

/** Opens a part by its name through Find, with keys alone. */
export async function findByKeys(page: Page, name: string): Promise<void> {
  await page.keyboard.press('/');
  await page.locator('#find-input').waitFor();
  await page.keyboard.type(name);
  await page.getByText(/^\d+ found$/).waitFor();
  await page.keyboard.press('Enter');
  await page.locator('.inspector').getByRole('heading', { name, exact: true }).waitFor();
}

/** A finger that goes down on a spot, moves by so much, and lifts. */
export async function swipe(page: Page, from: { x: number; y: number }, by: { x: number; y: number }): Promise<void> {
  const touch = await page.context().newCDPSession(page);
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: { x: number; y: number }[]) =>
    touch.send('Input.dispatchTouchEvent', { type, touchPoints });
  await send('touchStart', [from]);
  for (let k = 1; k <= 6; k += 1) await send('touchMove', [{ x: from.x + (by.x * k) / 6, y: from.y + (by.y * k) / 6 }]);
  await send('touchEnd', []);
  // A touch sooner than this after the last one is half of a double tap to the browser, and presses nothing.
  await page.waitForTimeout(400);
}

/** The middle of something on the screen, scrolled into view. */
export async function middle(of: Locator): Promise<{ readonly x: number; readonly y: number }> {
  await of.scrollIntoViewIfNeeded();
  const box = await of.boundingBox();
  if (!box) throw new Error('It is not on the screen.');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
