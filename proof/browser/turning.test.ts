/** The build in space, turned and moved in; a photo laid under a view by two known points. By mouse, by finger, by keys. */
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

const ALONE = pathToFileURL(fileURLToPath(new URL('../../apps/bench/dist-alone/oddwheel.html', import.meta.url))).href;
const START = { x: '440 mm', y: '-80 mm', z: '482.5 mm' };

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

const shaftB = () => JSON.parse(bench.text()).path.shafts['shaft-b'].origin as typeof START;
const picture = (page: Page) => page.getByRole('application');
const choose = (page: Page, name: string) => page.getByLabel('Chosen in the drawing').selectOption({ label: name });

async function layout(phone = false): Promise<{ readonly page: Page; readonly errors: string[] }> {
  bench = await startBench();
  const opened = await openPage(
    browser,
    bench,
    phone ? { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } : {},
  );
  await opened.page.goto(`${bench.url()}/#layout`);
  return opened;
}

async function turnIt(page: Page): Promise<void> {
  await page.getByLabel('Turn it').check();
  await drawn(page);
  await picture(page).scrollIntoViewIfNeeded();
}

/** Share of the picture that is ink. */
const ink = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const canvas = document.querySelector<HTMLCanvasElement>('.turn-picture canvas');
    if (!canvas) return 0;
    const bitmap = await createImageBitmap(canvas);
    const flat = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    flat?.drawImage(bitmap, 0, 0);
    const { data } = flat?.getImageData(0, 0, bitmap.width, bitmap.height) ?? { data: new Uint8ClampedArray() };
    let dark = 0;
    for (let k = 0; k < data.length; k += 4) if ((data[k] ?? 255) < 128 && data[k + 3] === 255) dark += 1;
    return dark / (data.length / 4);
  });
const drawn = (page: Page) => expect.poll(() => ink(page), { timeout: 10_000 }).toBeGreaterThan(0.005);

/** The near end of a shaft on the screen: its name stands beside it. */
async function endOf(page: Page, name: string): Promise<{ x: number; y: number }> {
  const at = await page.locator('.space-names text', { hasText: name }).evaluate((text) => {
    const box = (text as SVGTextElement).ownerSVGElement?.getBoundingClientRect();
    return [
      (box?.left ?? 0) + Number(text.getAttribute('x')) - 6,
      (box?.top ?? 0) + Number(text.getAttribute('y')) + 6,
    ] as const;
  });
  return { x: at[0], y: at[1] };
}

describe('the build in space', () => {
  test('is turned by mouse and by keys, looked at from its sides, and drawn only when something changes', async () => {
    bench = await startBench();
    const { page, errors } = await openPage(browser, bench);
    await page.addInitScript(() => {
      const counted = window as unknown as { drawn: number };
      counted.drawn = 0;
      const { drawElementsInstanced } = WebGL2RenderingContext.prototype;
      WebGL2RenderingContext.prototype.drawElementsInstanced = function (...all) {
        counted.drawn += 1;
        return drawElementsInstanced.apply(this, all);
      };
    });
    await page.goto(`${bench.url()}/#layout`);
    await page.reload();
    await turnIt(page);
    const seen = () => picture(page).getAttribute('aria-label');
    expect(await seen()).toContain('From the left and ahead, 35° above');
    const box = await picture(page).boundingBox();
    if (!box) throw new Error('no picture');
    await page.mouse.move(box.x + 40, box.y + 40);
    await page.mouse.down();
    await page.mouse.move(box.x + 200, box.y + 40, { steps: 4 });
    await page.mouse.up();
    // 160 px are half a right angle, from the corner on to straight ahead.
    await expect.poll(seen).toContain('From ahead, 35° above');
    await picture(page).focus();
    for (let k = 0; k < 7; k += 1) await page.keyboard.press('ArrowUp');
    await expect.poll(seen).toMatch(/From ahead\. /);
    await page.getByRole('button', { name: 'From the left' }).click();
    await expect.poll(seen).toMatch(/From the left\. /);

    const draws = () => page.evaluate(() => (window as unknown as { drawn: number }).drawn);
    const frames = () =>
      page.evaluate(async () => {
        for (let k = 0; k < 6; k += 1) await new Promise(requestAnimationFrame);
      });
    await frames();
    const before = await draws();
    expect(before).toBeGreaterThan(0);
    await frames();
    expect(await draws()).toBe(before);
    await page.getByRole('button', { name: 'From above' }).click();
    await expect.poll(draws).toBeGreaterThan(before);
    expect(errors).toEqual([]);
  });

  test('a press chooses a part for the whole page, a drag moves it, letting go is one edit that Undo takes back', async () => {
    const { page, errors } = await layout();
    await turnIt(page);
    await page.getByRole('button', { name: 'From the left' }).click();
    const axle = await endOf(page, 'Axle C');
    await page.mouse.click(axle.x, axle.y);
    await page.locator('.inspector').getByRole('heading', { name: 'Axle C' }).waitFor();
    const at = await endOf(page, 'Shaft B');
    await page.mouse.click(at.x, at.y);
    await page.getByRole('heading', { name: 'Moving Shaft B' }).waitFor();
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x - 12, at.y - 8, { steps: 4 });
    await page
      .locator('.move-readout')
      .getByText(/^Chain 2 centres/)
      .waitFor();
    expect(shaftB()).toEqual(START);
    await page.mouse.up();
    await expect.poll(() => shaftB().x).not.toBe(START.x);
    // Seen from the left nothing moves sideways, and whole lengths stay whole.
    expect(shaftB().y).toBe(START.y);
    await page.getByRole('button', { name: /^Undo Shaft B moved/ }).click();
    await expect.poll(shaftB).toEqual(START);
    await drawn(page);
    expect(errors).toEqual([]);
  });

  test('from a corner its handle moves by keys along the axes of the vehicle, and Escape puts it back', async () => {
    const { page } = await layout();
    await turnIt(page);
    await choose(page, 'Shaft B');
    const handle = page.getByRole('button', { name: 'Move Shaft B, forward and up' });
    await handle.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowLeft');
    await page.locator('.move-readout').getByText('1 mm forward, 1 mm up').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.move-readout').waitFor({ state: 'detached' });
    expect(shaftB()).toEqual(START);
    await handle.focus();
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => shaftB().z).toBe('492.5 mm');
    // A part on a shaft that is seen end on has no handle; a turn gives it one.
    await choose(page, 'bearing R on Shaft B');
    await page.getByRole('button', { name: 'From the left' }).click();
    await expect.poll(() => page.getByRole('button', { name: /^Move bearing R/ }).count()).toBe(0);
    await page.getByRole('button', { name: 'From above' }).click();
    await page.getByRole('button', { name: /^Move bearing R/ }).waitFor();
  });

  test('by finger at 390 px one finger turns it and moves nothing, and the page keeps its width', async () => {
    const { page, errors } = await layout(true);
    await turnIt(page);
    await choose(page, 'Shaft B');
    await picture(page).evaluate((one) => one.scrollIntoView({ block: 'center' }));
    const box = await picture(page).boundingBox();
    if (!box) throw new Error('no picture');
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: readonly { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: [...points] });
    const before = await picture(page).getAttribute('aria-label');
    await send('touchStart', [{ x: box.x + 30, y: box.y + 30 }]);
    for (let k = 1; k <= 6; k += 1) await send('touchMove', [{ x: box.x + 30 + 30 * k, y: box.y + 30 }]);
    await send('touchEnd', []);
    await expect.poll(() => picture(page).getAttribute('aria-label')).not.toBe(before);
    expect(shaftB()).toEqual(START);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    expect(box.height).toBeLessThan(0.65 * 844);
    expect(errors).toEqual([]);
  });

  test('without WebGL one sentence says so, and the parts in words still choose', async () => {
    bench = await startBench();
    const { page, errors } = await openPage(browser, bench);
    await page.addInitScript(() => {
      const { getContext } = HTMLCanvasElement.prototype;
      HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
        return kind.startsWith('webgl') ? null : Reflect.apply(getContext, this, [kind, ...rest]);
      } as typeof getContext;
    });
    await page.goto(`${bench.url()}/#layout`);
    await page.reload();
    await page.getByLabel('Turn it').check();
    await page.getByText('it has no WebGL').waitFor();
    await page.getByText('The parts in words').click();
    const row = page.locator('.parts-in-words tr', { hasText: 'sprocket 48 on Axle C' });
    // Its tip circle stands round the wheel's centre: as far back as forward.
    expect(await row.locator('td').first().textContent()).toMatch(/^−201\smm to 201\smm$/);
    await page.locator('.parts-in-words').getByRole('button', { name: 'Shaft B', exact: true }).click();
    await page.getByRole('heading', { name: 'Moving Shaft B' }).waitFor();
    expect(errors).toEqual([]);
  });

  test('draws in the single file from the disk, with the network cut', async () => {
    bench = await startBench();
    const context = await browser.newContext({
      viewport: { width: 1440, height: 1000 },
      locale: 'en-GB',
      offline: true,
    });
    const page = await context.newPage();
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(ALONE);
    await page
      .getByRole('button', { name: /marsh.hauler/i })
      .first()
      .click();
    await page.locator('.path-table').waitFor();
    await page.goto(`${ALONE}#layout`);
    await turnIt(page);
    await layIt(page);
    await page.locator('[data-view="from the left"] image').waitFor({ state: 'attached' });
    expect(errors).toEqual([]);
    await context.close();
  });
});

/** A photo of 800 × 400 pixels. */
async function photo(page: Page): Promise<Buffer> {
  const data = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [800, 400];
    const pen = canvas.getContext('2d');
    pen?.fillRect(590, 230, 20, 20);
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(data.split(',')[1] ?? '', 'base64');
}

/** Attaches the photo and lays it under the view from the left: two points 400 px and 500 mm apart, level. */
async function layIt(page: Page): Promise<void> {
  await page.getByLabel('Drawing', { exact: true }).check();
  const buffer = await photo(page);
  await page
    .locator('.underlays input[type=file]')
    .first()
    .setInputFiles({ name: 'wheel_from_the_left.png', mimeType: 'image/png', buffer });
  await page.getByRole('button', { name: 'Lay under a view wheel from the left' }).click();
  const box = await page.locator('.mark-picture img').boundingBox();
  if (!box) throw new Error('no picture');
  await page.locator('.mark-picture').click({ position: { x: 0.75 * box.width, y: 0.6 * box.height } });
  await page.locator('.mark-picture').click({ position: { x: 0.25 * box.width, y: 0.6 * box.height } });
  const [first, second] = ['Where point 1', 'Where point 2'].map((name) => page.getByRole('group', { name }));
  await first?.getByLabel('Is at').selectOption({ label: 'Wheel, its centre' });
  await second?.getByLabel('Forward, x').fill('50 cm');
  await second?.getByLabel(/^Left, y/).fill('0 mm');
  await page.getByText('Still to do: say where point 2 is').waitFor();
  await second?.getByLabel('Up, z').fill('0');
  await page.getByText(/0 has no unit|has no unit/).waitFor();
  await second?.getByLabel('Up, z').fill('0 mm');
  await page.getByText(/^One pixel is 1\.2\d mm/).waitFor();
  await page.getByRole('button', { name: 'Lay it there' }).click();
  await page.locator('.lay-picture').waitFor({ state: 'detached' });
}

describe('a photo under a view', () => {
  const kept = () => Object.values(JSON.parse(bench.text()).pictures ?? {})[0] as { under?: Record<string, unknown> };
  const laid = (page: Page) => page.locator('[data-view="from the left"] image');
  /** Where a pixel of the picture lies, mm of the view. */
  const lies = (page: Page, x: number, y: number): Promise<readonly number[]> =>
    laid(page).evaluate(
      (image, [right, down]) => {
        const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = (image.getAttribute('transform') ?? '')
          .replace(/[^-\d.e ]/g, ' ')
          .trim()
          .split(/\s+/)
          .map(Number);
        return [a * (right ?? 0) + c * (down ?? 0) + e, b * (right ?? 0) + d * (down ?? 0) + f];
      },
      [x, y],
    );

  test('is laid by two known points, hidden, adjusted by keys, and taken away; Undo takes back each', async () => {
    const { page, errors } = await layout();
    await layIt(page);
    await expect.poll(() => kept().under?.view).toBe('from the left');
    expect(kept().under).toMatchObject({ second: { at: { x: '50 cm', y: '0 mm', z: '0 mm' } } });
    const [x = 9, y = 9] = await lies(page, 600, 240);
    expect(Math.hypot(x, y)).toBeLessThan(2);
    expect((await lies(page, 200, 240))[0]).toBeCloseTo(-500, -1);
    await page.getByText('only what stands in the plane of its two points is to scale').waitFor();

    // At 2 m a thing 100 mm nearer, seen 300 mm aside, lies 300 · 0.1 / 2 = 15 mm out, and looks 2 / 1.9 as large.
    const distance = page.getByLabel('The camera stood from that plane');
    await distance.fill('2');
    await page.getByText('3 m or 10 ft').waitFor();
    await distance.fill('2 m');
    await page
      .getByText(/looks 5\.3 % larger; seen 300\smm from the middle of the picture it lies 15\smm too far out/)
      .waitFor();

    await page.getByRole('button', { name: 'Hide wheel from the left' }).click();
    expect(await laid(page).count()).toBe(0);
    await page.getByRole('button', { name: 'Show wheel from the left' }).click();
    await laid(page).waitFor({ state: 'attached' });

    await page.getByRole('button', { name: 'Adjust wheel from the left' }).click();
    const point = page.getByRole('button', { name: /^Point 2, / });
    await point.focus();
    const before = (await lies(page, 0, 0))[0] ?? 0;
    await page.keyboard.press('Shift+ArrowLeft');
    // The drawing follows while it is adjusted, and the file does not.
    await expect.poll(async () => Math.abs(((await lies(page, 0, 0))[0] ?? 0) - before)).toBeGreaterThan(5);
    const file = kept().under;
    await page.getByRole('button', { name: 'Leave it as it was' }).click();
    expect(kept().under).toEqual(file);
    await expect.poll(async () => Math.abs(((await lies(page, 0, 0))[0] ?? 0) - before)).toBeLessThan(1e-6);

    await page.getByRole('button', { name: 'Take from under the drawing wheel from the left' }).click();
    await expect.poll(() => kept().under).toBe(undefined);
    await page
      .locator('.head')
      .getByRole('button', { name: /^Undo .*taken from under the drawing/ })
      .click();
    await expect.poll(() => kept().under).toEqual(file);
    await page
      .locator('.head')
      .getByRole('button', { name: /^Undo .*laid under the view/ })
      .click();
    await expect.poll(() => kept().under).toBe(undefined);
    expect(errors).toEqual([]);
  });

  test('fits a phone of 360 px while it is laid', async () => {
    bench = await startBench();
    const { page } = await openPage(browser, bench, {
      viewport: { width: 360, height: 780 },
      hasTouch: true,
      isMobile: true,
    });
    await page.goto(`${bench.url()}/#layout`);
    await layIt(page);
    await page.getByRole('button', { name: 'Adjust wheel from the left' }).click();
    await page.locator('.mark-picture img').waitFor();
    const point = await page.getByRole('button', { name: /^Point 1, / }).boundingBox();
    expect(Math.min(point?.width ?? 0, point?.height ?? 0)).toBeGreaterThanOrEqual(44);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
  });
});

test('axe finds nothing while it is turned and while a picture is laid, at the desk and in shop mode', async () => {
  const { page } = await layout();
  await layIt(page);
  await page.getByRole('button', { name: 'Adjust wheel from the left' }).click();
  await page.locator('.mark-picture img').waitFor();
  for (const mode of ['Shop mode', 'Desk mode'] as const) {
    expect(await violations(page)).toEqual([]);
    await turnIt(page);
    await choose(page, 'Shaft B');
    await page.getByRole('button', { name: /^Move Shaft B/ }).waitFor();
    await page.getByText('The parts in words').click();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: mode }).click();
    await page.getByLabel('Drawing', { exact: true }).check();
    await page.getByRole('button', { name: 'Adjust wheel from the left' }).click();
  }
});
