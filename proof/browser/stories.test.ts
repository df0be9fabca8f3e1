/** From an empty folder to a laid-out drive, in a real browser: by pointer, by touch, and by keys alone. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { validateText } from '@oddwheel/build/session';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, ranged, startEmpty } from './bench.ts';
import * as story from './story.ts';

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
  ({ page, errors } = await story.openSheet(browser, bench.url(), options));
}

const inFile = (address: string): unknown => story.valueIn(bench.text(), address);
const stages = (): readonly string[] => Object.keys(inFile('/path/stages') as object);
const step = (name: string) => page.locator('.steps ol').getByRole('button', { name: new RegExp(name) });
const head = (name: RegExp) => page.locator('.head').getByRole('button', { name });
const inspector = () => page.locator('.inspector');
const form = () => inspector().locator('form.add-form');
const handle = () => page.getByRole('button', { name: /^Move Shaft B/ });
const pull = () => page.locator('[data-finding]').filter({ hasText: 'pull against strength' }).first();
const SHAFT_B = '/path/shafts/shaft-b/origin';
const CURVE = '/brief/engine/curve/rows';

/** The file as every story leaves it: whole, with what was typed as it was typed. */
function expectKept(): void {
  expect(validateText(bench.text())).toEqual([]);
  expect(inFile('/brief/engine/peaks')).toEqual({
    ...{ power: '27 kW', powerAt: '7500 rpm', torque: '41 N.m', torqueAt: '5200 rpm' },
  });
  expect(inFile('/brief/vehicle/mass')).toBe('705 lb');
  expect(inFile('/brief/wheel/tyre')).toBe('110/85R36');
  expect(inFile('/brief/targets/topSpeed')).toBe('65 km/h');
  expect(stages()).toEqual(['chain-1', 'bevel', 'spur-1', 'chain-2']);
}

describe('from an empty folder to a laid-out drive', () => {
  it('by pointer at 1440 px', async () => {
    await open(story.DESK);
    expect(await violations(page)).toEqual([]);
    for (const [id, text] of story.SIX) {
      await page.locator(`#${id}`).click();
      await page.keyboard.type(text);
      // The reduction wanted is known before all is typed.
      if (id === 'six-mass')
        await page
          .getByRole('group', { name: /^Unit of Mass/ })
          .getByText('lb')
          .click();
    }
    await page.getByText('Overall reduction wanted in top gear 23.26 : 1, of which 11.55 : 1').waitFor();
    await page.getByText(/^Laid out as chain/).waitFor();
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await story.laidOut(page);
    expect(Object.keys(inFile('/path/shafts') as object)).toEqual(['shaft-a', 'shaft-b', 'axle-c']);

    // What it stands on, most checks first; a row leads to where the right value is typed.
    const stands = page.getByRole('region', { name: 'What the build stands on' });
    await stands.getByRole('button', { name: /^Show all/ }).click();
    const counts = await stands.locator('li .list-value').allTextContents();
    const numbers = counts.map((text) => Number.parseInt(text, 10) || 0);
    expect(numbers).toEqual(numbers.toSorted((a, b) => b - a));
    await stands.getByRole('button', { name: 'Module of the bevel pair' }).click();
    await inspector().getByRole('heading', { name: 'Bevel pair', exact: true }).waitFor();

    // A field of a part with a tap on its unit: the file holds what was typed.
    await page.locator('.path-table').getByRole('button', { name: 'Shaft A' }).click();
    const before = bench.text();
    await story.field(page, story.DIAMETER).fill('1.75');
    await story.units(page, story.DIAMETER).getByRole('button', { name: 'in', exact: true }).click();
    await expect.poll(() => inFile(story.DIAMETER)).toBe('1.75 in');
    await head(/^Undo/).click();
    await expect.poll(() => bench.text()).toBe(before);

    // Shaft B is dragged in the drawing.
    await ranged(page);
    const drawn = page.locator('[data-view="from the left"] [data-of="/path/shafts/shaft-b"]').first();
    const chosenAt = await story.middle(drawn);
    await page.mouse.click(chosenAt.x, chosenAt.y);
    await page.getByRole('heading', { name: 'Moving Shaft B' }).waitFor();
    // What stands above the drawing may have grown meanwhile.
    const at = await story.middle(drawn);
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x - 9, at.y - 6, { steps: 3 });
    await page.locator('.move-readout').waitFor();
    await page.mouse.up();
    await expect.poll(() => bench.text()).not.toBe(before);
    expect(inFile(`${SHAFT_B}/x`)).toMatch(/^\d+(\.\d+)? mm$/);
    await head(/^Undo Shaft B moved/).click();
    await expect.poll(() => bench.text()).toBe(before);

    // A stage more, and a torque curve of two clicks.
    await page.locator('.path-table').getByRole('button', { name: 'Chain 2' }).click();
    await inspector().getByRole('button', { name: 'Stage before it, toward the engine' }).click();
    await form().getByLabel('Kind').selectOption('spur');
    await form().getByLabel('Driver teeth').fill('20');
    await form().getByLabel('Driven teeth').fill('20');
    await form().getByLabel('Its bearings are carried by').selectOption('subframe');
    await form().getByRole('button', { name: 'Add', exact: true }).click();
    await form().getByRole('button', { name: 'Add it' }).click();
    await expect.poll(stages).toHaveLength(4);
    await step('Brief').click();
    const plot = page.locator('.curve-plot svg');
    await plot.scrollIntoViewIfNeeded();
    await plot.click({ position: { x: 200, y: 150 } });
    await page.locator('.curve-point').first().waitFor();
    await plot.click({ position: { x: 400, y: 120 } });
    await expect.poll(() => inFile(CURVE)).toHaveLength(2);
    await head(/^Undo/).click();
    await expect.poll(() => inFile(CURVE) ?? []).not.toHaveLength(2);

    await step('Strength').click();
    const slider = page.getByRole('slider', { name: 'Road speed' });
    const speed = await slider.getAttribute('aria-valuenow');
    const { x, y } = await story.middle(slider);
    await page.mouse.click(x + 100, y);
    await expect.poll(() => slider.getAttribute('aria-valuenow')).not.toBe(speed);
    await ranged(page);
    await pull().click();
    await inspector().locator('math').first().waitFor();
    for (const name of story.STEPS) {
      await step(name).click();
      await expect.poll(() => step(name).getAttribute('aria-current')).toBe('step');
    }
    expectKept();
  }, 180_000);

  it('by touch at 390 px', async () => {
    await open(story.PHONE);
    expect(await story.overflow(page)).toBe(0);
    await page.getByRole('button', { name: 'To the demos' }).tap();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('demo-heading');
    for (const [id, text] of story.SIX) {
      if (id === 'six-gears' || id === 'six-primary') continue;
      await page.locator(`#${id}`).tap();
      await page.keyboard.type(text);
      if (id === 'six-mass')
        await page
          .getByRole('group', { name: /^Unit of Mass/ })
          .getByText('lb')
          .tap();
    }
    await page.getByLabel('don’t know').tap();
    await page.getByText('after a usual gearbox').waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Lay it out' }).tap();
    await story.laidOut(page);
    expect(inFile('/brief/engine/gears/0')).toBe('2.4..3.2');
    expect(await story.overflow(page)).toBe(0);
    await page.getByRole('button', { name: 'What the build stands on' }).tap();
    await page.locator('.stands-on').getByRole('button', { name: 'Gearbox ratios' }).waitFor();
    expect(await violations(page)).toEqual([]);

    // Shaft B is moved by its handle; the finger need not hide it.
    await page.getByLabel('Chosen in the drawing').selectOption({ label: 'Shaft B' });
    const before = bench.text();
    await ranged(page);
    await story.swipe(page, await story.middle(handle()), { x: 0, y: -30 });
    await expect.poll(() => inFile(`${SHAFT_B}/z`)).not.toBe(story.valueIn(before, `${SHAFT_B}/z`));
    await head(/^Undo Shaft B moved/).tap();
    await expect.poll(() => bench.text()).toBe(before);

    await page.locator('.path-table').getByRole('button', { name: 'Shaft A' }).tap();
    await story.field(page, story.DIAMETER).fill('1.75');
    await story.units(page, story.DIAMETER).getByRole('button', { name: 'in', exact: true }).tap();
    await expect.poll(() => inFile(story.DIAMETER)).toBe('1.75 in');
    // The inspector has the whole page: Undo is at hand below it.
    await page.getByRole('region', { name: 'Last edit' }).getByRole('button', { name: 'Undo' }).tap();
    await expect.poll(() => bench.text()).toBe(before);

    await inspector().getByRole('button', { name: 'Close' }).tap();
    await page.locator('.path-table').getByRole('button', { name: 'Chain 2' }).tap();
    await inspector().getByRole('button', { name: 'Stage before it, toward the engine' }).tap();
    await form().getByLabel('Kind').selectOption('spur');
    await form().getByLabel('Driver teeth').fill('20');
    await form().getByLabel('Driven teeth').fill('20');
    await form().getByLabel('Its bearings are carried by').selectOption('subframe');
    await form().getByRole('button', { name: 'Add', exact: true }).tap();
    await form().getByRole('button', { name: 'Add it' }).tap();
    await expect.poll(stages).toHaveLength(4);
    const made = inspector().getByRole('heading', { name: 'Spur 1', exact: true });
    await made.waitFor();
    await page.reload();
    await made.waitFor();
    await inspector().getByRole('button', { name: 'Close' }).tap();

    for (const name of story.STEPS) {
      await page.locator('.step-opener').tap();
      await step(name).tap();
      await expect.poll(() => page.locator('.step-opener').textContent()).toContain(name);
      expect(await story.overflow(page)).toBe(0);
    }
    await page.locator('.step-opener').tap();
    await step('Strength').tap();
    const slider = page.getByRole('slider', { name: 'Road speed' });
    const speed = await slider.getAttribute('aria-valuenow');
    await story.swipe(page, await story.middle(slider), { x: 60, y: 0 });
    await expect.poll(() => slider.getAttribute('aria-valuenow')).not.toBe(speed);
    await ranged(page);
    await pull().tap();
    await inspector().locator('math').first().waitFor();
    expect(await story.overflow(page)).toBe(0);
    expectKept();
  }, 180_000);

  it('by keys alone', async () => {
    await open(story.DESK);
    for (const [id, text] of story.SIX) {
      await story.tabTo(page, `#${id}`, 12);
      await page.keyboard.type(text);
      if (id !== 'six-mass') continue;
      await story.tabTo(page, '[aria-label^="Unit of Mass"] button:last-child', 3);
      await page.keyboard.press('Enter');
    }
    await page.keyboard.press('Enter');
    await story.laidOut(page);
    // Keys go on from the sheet that was made, and the form of a part that is not given, open by itself, does not take them.
    await form().locator('input, select').first().waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.id), { timeout: 10_000 }).toBe('step-sheet');

    await story.findByKeys(page, 'Shaft A');
    const before = bench.text();
    await story.tabTo(page, `[id="field:${story.DIAMETER}"]`);
    await page.keyboard.type('1.75');
    await story.tabTo(page, `[id="field:${story.DIAMETER}"] ~ .unit-taps button:nth-child(2)`, 3);
    await page.keyboard.press('Enter');
    await expect.poll(() => inFile(story.DIAMETER)).toBe('1.75 in');
    await head(/^Undo .*diameter/).waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => bench.text()).toBe(before);

    // Shaft B is moved by arrows.
    await story.findByKeys(page, 'Shaft B');
    await handle().waitFor();
    await story.tabTo(page, 'button[aria-label^="Move Shaft B"]');
    await page.keyboard.press('ArrowLeft');
    await page.locator('.move-readout').waitFor();
    await page.keyboard.press('Enter');
    await expect.poll(() => bench.text()).not.toBe(before);
    await head(/^Undo Shaft B moved/).waitFor();
    await page.keyboard.press('Control+z');
    await expect.poll(() => bench.text()).toBe(before);

    await story.findByKeys(page, 'Chain 2');
    await story.tabToButton(page, 'Stage before it, toward the engine', 200);
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.kind') !== null)).toBe(true);
    // A list chooses by the letters that come quickly one after the other; a slow machine may break them apart.
    await expect
      .poll(async () => {
        await page.keyboard.type('Spur');
        await page.waitForTimeout(1200);
        return form().getByLabel('Kind').inputValue();
      })
      .toBe('spur');
    await form().getByLabel('Driver teeth').waitFor();
    for (const end of ['driver', 'driven']) {
      await story.tabTo(page, `[id$="/teeth/${end}"]`, 12);
      await page.keyboard.type('20');
    }
    await story.tabTo(page, 'form.add-form select[id$="/body"], form.add-form label:has(+ select) + select', 20);
    await page.keyboard.type('subframe');
    await page.keyboard.press('Enter');
    await story.tabToButton(page, 'Add');
    await page.keyboard.press('Enter');
    await form().getByRole('button', { name: 'Add it' }).waitFor();
    await story.tabToButton(page, 'Add it');
    await page.keyboard.press('Enter');
    await expect.poll(stages).toHaveLength(4);

    await page.keyboard.press('Escape');
    await page.keyboard.press('Alt+4');
    await page.getByRole('heading', { name: 'What breaks first' }).waitFor();
    // The first finding with a reserve has a working.
    const onReserve = (): Promise<boolean> =>
      page.evaluate(() =>
        /\d\.\d\d/.test(document.activeElement?.closest('li')?.querySelector('.reserve')?.textContent ?? ''),
      );
    await story.tabTo(page, '[role="slider"]');
    const slider = page.getByRole('slider', { name: 'Road speed' });
    await page.keyboard.press('4');
    await expect.poll(() => slider.getAttribute('aria-valuetext')).toContain('gear 4');
    await page.keyboard.press('PageUp');
    for (let k = 0; k < 120 && !(await onReserve()); k += 1) await page.keyboard.press('j');
    await page.keyboard.press('Enter');
    await inspector().locator('math').first().waitFor();
    await page.keyboard.press('Escape');
    for (const [k, name] of story.STEPS.entries()) {
      await page.keyboard.press(`Alt+${k + 1}`);
      await expect.poll(() => step(name).getAttribute('aria-current')).toBe('step');
    }
    expect(await violations(page)).toEqual([]);
    expectKept();
  }, 180_000);
});

describe('the empty sheet', () => {
  it('tells what is wrong at its field, at once and again when it is laid out; nothing is made', async () => {
    await open(story.DESK);
    await page.locator('#six-power').fill('27');
    // On the way to its unit the number is not at fault yet.
    await page.locator('#six-power').press('Tab');
    expect(await page.getByText(/has no unit/).count()).toBe(0);
    await page.locator('#six-mass').fill('320');
    await page.locator('#six-speed').focus();
    await page.getByText('"320" has no unit.').waitFor();
    await page.getByRole('button', { name: 'Lay it out' }).click();
    await page.getByText('"27" has no unit.').waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('six-power');
    expect(await page.locator('.six .fails').count()).toBe(8);
    expect(existsSync(join(bench.folder, 'build.json'))).toBe(false);
  });

  it('knows the reduction from three fields, and says what is still to type', async () => {
    await open(story.DESK);
    for (const [id, text] of story.SIX.filter(([id]) => /powerAt|tyre|speed/.test(id)))
      await page.locator(`#${id}`).fill(text);
    await page.getByText('Overall reduction wanted in top gear 23.26 : 1.').waitFor();
    await page.getByText('Still to type: peak power, peak torque, gearbox, mass.').waitFor();
  });

  it('shows a demo with one press, and tells a second page that a build was begun meanwhile', async () => {
    await open(story.DESK);
    const second = await page.context().newPage();
    await second.goto(bench.url());
    await second.getByRole('button', { name: 'hill-trike' }).waitFor();
    await page.getByRole('button', { name: 'rail-cart' }).click();
    await page.locator('.path-table').waitFor();
    expect(inFile('/name')).toBe('rail-cart');
    await second.getByRole('button', { name: 'hill-trike' }).click();
    await second.getByText('A build was begun in this folder meanwhile.', { exact: false }).waitFor();
    await second.reload();
    await second.locator('.path-table').waitFor();
    expect(inFile('/name')).toBe('rail-cart');
  });
});
