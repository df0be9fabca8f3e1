import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

/** The layout's drawing as something to work in: by mouse, by finger, by keys. */
let browser: Browser;
let bench: Bench;

beforeAll(async () => {
  browser = await openBrowser();
}, 60_000);
afterAll(async () => {
  await browser.close();
});
afterEach(async () => {
  await bench.stop();
});

interface Placed {
  readonly origin: { readonly x: string; readonly y: string; readonly z: string };
  readonly seats: Readonly<Record<string, { readonly station: string }>>;
}
const shaftB = (): Placed => JSON.parse(bench.text()).path.shafts['shaft-b'];
const START = { x: '440 mm', y: '-80 mm', z: '482.5 mm' };

async function layout(phone = false): Promise<{ readonly page: Page; readonly errors: string[] }> {
  bench = await startBench();
  const opened = await openPage(
    browser,
    bench,
    phone ? { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } : {},
  );
  await opened.page.goto(`${bench.url()}/#layout`);
  await opened.page.locator('.drawing-sheet svg').waitFor();
  return opened;
}
const choose = (page: Page, name: string) => page.getByLabel('Chosen in the drawing').selectOption({ label: name });
const handleOf = (page: Page, name: string) => page.getByRole('button', { name: new RegExp(`^Move ${name}`) });
const readout = (page: Page) => page.locator('.move-readout');

/** The middle of a drawn part in a view, on the screen. */
async function partAt(page: Page, view: string, of: string): Promise<{ x: number; y: number }> {
  const part = page.locator(`[data-view="${view}"] [data-of="${of}"]`).first();
  await part.scrollIntoViewIfNeeded();
  const box = await part.boundingBox();
  if (!box) throw new Error(`${of} is not drawn.`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('by mouse at 1440 px', () => {
  test('a press chooses, a drag moves with its numbers, letting go is one edit that Undo takes back', async () => {
    const { page, errors } = await layout();
    const at = await partAt(page, 'from the left', '/path/shafts/shaft-b');
    await page.mouse.click(at.x, at.y);
    await page.getByRole('heading', { name: 'Moving Shaft B' }).waitFor();
    await page.locator('.inspector').getByRole('heading', { name: 'Shaft B' }).waitFor();
    expect(await page.locator('[data-view="from the left"] .part.chosen').count()).toBeGreaterThan(2);

    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x - 9, at.y - 6, { steps: 3 });
    // The drawing goes along before any answer, and the model's numbers follow.
    await expect.poll(() => page.locator('.part.chosen[transform]').count()).toBeGreaterThan(2);
    await readout(page)
      .getByText(/^Chain 2 centres/)
      .waitFor();
    expect(await readout(page).textContent()).toMatch(/forward, .* up/);
    expect(await readout(page).textContent()).toContain('ranges stand at their middle');
    expect(shaftB().origin).toEqual(START);
    await page.mouse.up();
    await expect.poll(() => shaftB().origin.x).not.toBe(START.x);
    expect(shaftB().origin.y).toBe(START.y);
    expect(shaftB().origin.x).toMatch(/^\d+(\.\d+)? mm$/);
    await expect.poll(() => page.locator('.part.chosen[transform]').count()).toBe(0);
    await page.getByRole('button', { name: /^Undo Shaft B moved/ }).click();
    await expect.poll(() => shaftB().origin).toEqual(START);
    expect(errors).toEqual([]);
  });

  test('Escape puts it back while the button is still held', async () => {
    const { page } = await layout();
    await choose(page, 'Shaft B');
    await handleOf(page, 'Shaft B').scrollIntoViewIfNeeded();
    const box = await handleOf(page, 'Shaft B').boundingBox();
    if (!box) throw new Error('no handle');
    await page.mouse.move(box.x + 10, box.y + 10);
    await page.mouse.down();
    await page.mouse.move(box.x + 40, box.y + 10, { steps: 3 });
    await readout(page).waitFor();
    await page.keyboard.press('Escape');
    await readout(page).waitFor({ state: 'detached' });
    await page.mouse.up();
    expect(await page.locator('.part[transform]').count()).toBe(0);
    expect(shaftB().origin).toEqual(START);
  });

  test('a press on the chosen shaft takes the part on it, which then runs along the shaft', async () => {
    const { page } = await layout();
    await choose(page, 'Shaft B');
    const seat = '/path/shafts/shaft-b/seats/bearing-right';
    const at = await partAt(page, 'from above', seat);
    await page.mouse.click(at.x, at.y);
    await page.getByRole('heading', { name: 'Moving bearing R on Shaft B' }).waitFor();
    // Seen end on it has no handle, and the page says so.
    await page.getByLabel('Views').selectOption({ label: 'from the left' });
    await page.getByText('Its shaft is seen end on in this view').waitFor();
    expect(await handleOf(page, 'bearing R').count()).toBe(0);
    await page.getByLabel('Views').selectOption({ label: 'all on one sheet' });
    await handleOf(page, 'bearing R').waitFor();
    const now = await partAt(page, 'from above', seat);
    await page.mouse.move(now.x, now.y);
    await page.mouse.down();
    await page.mouse.move(now.x + 3, now.y + 8, { steps: 4 });
    await readout(page).waitFor();
    await page.mouse.up();
    await expect.poll(() => shaftB().seats['bearing-right']?.station).not.toBe('20 mm');
    expect(shaftB().origin).toEqual(START);
  });
});

describe('by finger at 390 px', () => {
  test('a tap chooses, a swipe over the part scrolls and moves nothing, the handle moves', async () => {
    const { page, errors } = await layout(true);
    const at = await partAt(page, 'from the left', '/path/shafts/shaft-b');
    await page.touchscreen.tap(at.x, at.y);
    await page.getByRole('heading', { name: 'Moving Shaft B' }).waitFor();
    // The lettering is legible at this width.
    const lettering = await page.evaluate(() => {
      const text = document.querySelector('.drawing-sheet .lettering.plain');
      return text ? Number.parseFloat(getComputedStyle(text).fontSize) : 0;
    });
    const scale = await page.evaluate(() => {
      const svg = document.querySelector<SVGSVGElement>('.drawing-sheet svg');
      return svg ? svg.clientWidth / svg.viewBox.baseVal.width : 0;
    });
    expect(lettering * scale).toBeGreaterThan(12);

    const handle = handleOf(page, 'Shaft B');
    await handle.scrollIntoViewIfNeeded();
    const box = await handle.boundingBox();
    if (!box) throw new Error('no handle');
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: [...points] });
    const swipe = async (from: { x: number; y: number }, by: { x: number; y: number }, end = true) => {
      await send('touchStart', [from]);
      for (let k = 1; k <= 6; k += 1)
        await send('touchMove', [{ x: from.x + (by.x * k) / 6, y: from.y + (by.y * k) / 6 }]);
      if (end) await send('touchEnd', []);
    };
    const part = await partAt(page, 'from the left', '/path/shafts/shaft-b');
    const before = await page.evaluate(() => window.scrollY);
    await swipe(part, { x: 0, y: -120 });
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(before);
    expect(shaftB().origin).toEqual(START);

    await handle.scrollIntoViewIfNeeded();
    const grip = await handle.boundingBox();
    if (!grip) throw new Error('no handle');
    const still = await page.evaluate(() => window.scrollY);
    await swipe({ x: grip.x + 20, y: grip.y + 20 }, { x: 0, y: -30 }, false);
    await readout(page).getByText('up').first().waitFor();
    expect(await page.evaluate(() => window.scrollY)).toBe(still);
    await send('touchEnd', []);
    await expect.poll(() => shaftB().origin.z).not.toBe(START.z);
    expect(shaftB().origin.x).toBe(START.x);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    expect(errors).toEqual([]);
  });
});

describe('zooming and panning', () => {
  const sheetWidth = (page: Page) => page.locator('.drawing-sheet svg').evaluate((svg) => svg.clientWidth);

  test('a plain wheel over the drawing scrolls the page, with Ctrl it enlarges; the lettering keeps its height', async () => {
    const { page } = await layout();
    const whole = await sheetWidth(page);
    const at = await partAt(page, 'from the left', '/path/shafts/axle-c');
    await page.mouse.move(at.x, at.y);
    const before = await page.evaluate(() => window.scrollY);
    await page.mouse.wheel(0, 200);
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(before);
    expect(await sheetWidth(page)).toBe(whole);
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -300);
    await page.keyboard.up('Control');
    await expect.poll(() => sheetWidth(page)).toBeGreaterThan(1.8 * whole);
    const lettering = () =>
      page.evaluate(() => {
        const svg = document.querySelector<SVGSVGElement>('.drawing-sheet svg');
        return svg ? (Number(svg.getAttribute('font-size')) * svg.clientWidth) / svg.viewBox.baseVal.width : 0;
      });
    await expect.poll(lettering).toBeLessThan(14.5);
    expect(await lettering()).toBeGreaterThan(12);
    // Empty paper pans what is enlarged: a press on the title's line, where nothing is drawn.
    const frame = page.locator('.layout-views');
    const scrolled = () => frame.evaluate((one) => one.scrollLeft);
    const box = await frame.boundingBox();
    if (!box) throw new Error('no drawing');
    const spot = await page.evaluate(
      ([left, top, width, height]) => {
        for (let y = (top ?? 0) + 20; y < (top ?? 0) + (height ?? 0) - 20; y += 12)
          for (let x = (left ?? 0) + 90; x < (left ?? 0) + (width ?? 0) - 20; x += 12) {
            const near = [0, 11, -11].flatMap((dx) =>
              [0, 11, -11].map((dy) => document.elementFromPoint(x + dx, y + dy)),
            );
            if (near.every((one) => one?.tagName === 'svg')) return { x, y };
          }
        return null;
      },
      [box.x, Math.max(0, box.y), box.width, Math.min(box.height, 900 - Math.max(0, box.y))],
    );
    if (!spot) throw new Error('no empty paper');
    const start = await scrolled();
    await page.mouse.move(spot.x, spot.y);
    await page.mouse.down();
    await page.mouse.move(spot.x + (start > 60 ? 50 : -50), spot.y, { steps: 4 });
    await page.mouse.up();
    expect(Math.abs((await scrolled()) - start)).toBeGreaterThan(35);
  });

  test('two fingers enlarge, and choose nothing', async () => {
    const { page } = await layout(true);
    const whole = await sheetWidth(page);
    const at = await partAt(page, 'from the left', '/path/shafts/axle-c');
    const touch = await page.context().newCDPSession(page);
    const fingers = (type: 'touchStart' | 'touchMove', apart: number) =>
      touch.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: [
          { x: at.x - apart, y: at.y },
          { x: at.x + apart, y: at.y },
        ],
      });
    await fingers('touchStart', 30);
    for (const apart of [40, 50, 60, 75]) await fingers('touchMove', apart);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await expect.poll(() => sheetWidth(page)).toBeGreaterThan(1.8 * whole);
    expect(await page.locator('.part.chosen').count()).toBe(0);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});

test('a keep-out is dragged as a whole, in the units that it is typed in', async () => {
  const { page } = await layout();
  await choose(page, 'engine and gearbox');
  await handleOf(page, 'engine and gearbox').focus();
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Enter');
  const box = () => JSON.parse(bench.text()).brief.space.keepOuts.engine;
  await expect.poll(() => box().least.x).toBe('825 mm');
  expect(box().most).toEqual({ x: '1170 mm', y: '170 mm', z: '330 mm' });
});

test('axe finds nothing while something moves, at the desk and in shop mode', async () => {
  const { page } = await layout();
  for (const mode of ['Shop mode', 'Desk mode'] as const) {
    await choose(page, 'Shaft B');
    await handleOf(page, 'Shaft B').focus();
    await page.keyboard.press('ArrowUp');
    await readout(page)
      .getByText(/^Chain 2 centres/)
      .waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: mode }).click();
  }
});

describe('by keys alone', () => {
  test('arrows move by a millimetre, ten, a tenth; Enter makes one edit; a held chain keeps its centres', async () => {
    const { page } = await layout();
    await choose(page, 'Shaft B');
    await handleOf(page, 'Shaft B').focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowLeft');
    await page.keyboard.press('Alt+ArrowUp');
    await readout(page).getByText('10 mm forward, 1.1 mm up').waitFor();
    expect(shaftB().origin).toEqual(START);
    await page.keyboard.press('Enter');
    await expect.poll(() => shaftB().origin).toEqual({ x: '450 mm', y: '-80 mm', z: '483.6 mm' });

    await page.getByRole('radio', { name: 'Chain 2' }).check();
    await handleOf(page, 'Shaft B').focus();
    for (let k = 0; k < 4; k += 1) await page.keyboard.press('Shift+ArrowRight');
    await readout(page).getByText('centres of Chain 2').waitFor();
    expect(await page.locator('.held-circle').count()).toBeGreaterThan(0);
    await page.keyboard.press('Enter');
    await expect.poll(() => shaftB().origin.x).not.toBe('450 mm');
    const { x, z } = shaftB().origin;
    // To a hundredth of a millimetre in each length, as the file keeps them.
    expect(Math.hypot(Number.parseFloat(x), Number.parseFloat(z))).toBeCloseTo(Math.hypot(450, 483.6), 1);
  });

  test('a place is typed from the floor, and refused with a right example where it cannot be read', async () => {
    const { page } = await layout();
    await choose(page, 'Shaft B');
    const field = page.getByLabel(/Up, z.*above the floor/);
    expect(await field.inputValue()).toBe('1015.67 mm');
    await field.fill('1040');
    await field.press('Enter');
    await page.getByText(/has no unit/).waitFor();
    expect(shaftB().origin).toEqual(START);
    await field.fill('1040 mm above the floor');
    await field.press('Enter');
    // The loaded radius is 3.35 m over a full turn: 533.17 mm.
    await expect.poll(() => shaftB().origin.z).toBe('506.83 mm');
    await page.getByRole('button', { name: /^Undo Shaft B, up, z → 1040 mm above the floor/ }).waitFor();
  });

  test('views, projection and size are chosen without a pointer, and the page keeps its scroll', async () => {
    const { page } = await layout();
    await page.getByLabel('Views').selectOption({ label: 'from behind' });
    await expect.poll(() => page.locator('.drawn-view').count()).toBe(1);
    await page.getByLabel('Views').selectOption({ label: 'all on one sheet' });
    const above = () => page.locator('[data-view="from above"]').boundingBox();
    await expect.poll(() => page.locator('.drawn-view').count()).toBe(5);
    const third = (await above())?.y ?? 0;
    await page.getByLabel('Projection').selectOption('first angle');
    await expect.poll(async () => (await above())?.y ?? 0).toBeGreaterThan(third + 100);
    const width = () => page.locator('.drawing-sheet svg').evaluate((svg) => svg.clientWidth);
    const whole = await width();
    await page.getByRole('button', { name: 'Larger' }).click();
    await expect.poll(width).toBeGreaterThan(1.3 * whole);
    await page.getByRole('button', { name: 'Whole', exact: true }).click();
    await expect.poll(width).toBeLessThan(1.1 * whole);
  });
});
