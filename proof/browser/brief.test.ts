import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

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
afterEach(async () => {
  await page.context().close();
  await bench.stop();
});

const goToBrief = async (): Promise<void> => {
  await page.evaluate(() => {
    window.location.hash = 'brief';
  });
  await section('Engine').waitFor();
};
const section = (name: string): Locator =>
  page.locator('.brief-section', { has: page.getByRole('button', { name, exact: true }) });
const fieldOf = (name: string, label: string): Locator => section(name).getByLabel(label, { exact: true });
const brief = () => JSON.parse(bench.text()).brief;
const undo = () => page.locator('.head').getByRole('button', { name: /^Undo / });
const point = (row: number): Locator => page.locator(`.curve-point[data-point="${row}"]`);

/** Opens the recipe beside a field, and gives the box that it stands in. */
async function openRecipe(name: string, label: string): Promise<Locator> {
  const box = section(name).locator('.measure', { hasText: label });
  await box.locator('> summary').click();
  return box;
}

describe('the brief at the desk', () => {
  beforeEach(async () => {
    bench = await startBench();
    ({ page, errors } = await openPage(browser, bench));
    await goToBrief();
  });
  afterEach(() => expect(errors).toEqual([]));

  it('every field of the brief stands on the sheet and is edited in place; blanks say what they stand on', async () => {
    for (const name of ['Gearbox', 'Wheel and tyre', 'Vehicle', 'Targets', 'Space', 'Reference vehicle', 'Shop'])
      expect(await section(name).locator('.field').count()).toBeGreaterThan(1);
    await fieldOf('Vehicle', 'Mass, ready to drive, no load').fill('310..330 kg');
    await fieldOf('Vehicle', 'Mass, ready to drive, no load').press('Enter');
    await expect.poll(() => brief().vehicle.mass).toBe('310..330 kg');
    await section('Vehicle').getByText('middle 320 kg').waitFor();
    expect(await section('Gearbox').getByText('assumed 90..97 %').count()).toBe(1);
    expect(await section('Gearbox').locator('.section-head').textContent()).toMatch(/\d assumed/);
    await fieldOf('Vehicle', 'Wheelbase').fill('81');
    await section('Vehicle').getByRole('group', { name: 'Unit of Wheelbase' }).getByText('in', { exact: true }).click();
    await expect.poll(() => brief().vehicle.wheelbase).toBe('81 in');
  });

  it('what to find out next leads to the field on the sheet', async () => {
    await page.getByRole('button', { name: 'Driven wheel, measured roll-out of one turn, loaded' }).click();
    const focused = await page.evaluate(() => document.activeElement?.id);
    expect(focused).toBe('sheet-field:/brief/wheel/rollOut');
  });

  it('a point of the curve is clicked in, dragged, moved by keys, and taken out; each is one edit with its own Undo', async () => {
    const before = bench.text();
    const rows = () => brief().engine.curve.rows as [number, number][];
    const plot = page.locator('.curve-plot svg');
    const spot = async (row: number) => {
      await plot.scrollIntoViewIfNeeded();
      const at = await point(row).locator('.curve-dot').boundingBox();
      return { x: (at?.x ?? 0) + (at?.width ?? 0) / 2, y: (at?.y ?? 0) + (at?.height ?? 0) / 2 };
    };
    // Between the points of 2500 and 3500, below the line.
    const [low, high] = [await spot(2), await spot(3)];
    await page.mouse.click((low.x + high.x) / 2, low.y + 40);
    await expect.poll(() => rows().length).toBe(11);
    expect(rows()[3]?.[0]).toBe(3000);
    await undo().click();
    await expect.poll(() => bench.text()).toBe(before);

    await expect.poll(() => page.locator('.curve-point').count()).toBe(10);
    const from = await spot(5);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 10, from.y + 20, { steps: 4 });
    await page.mouse.move(from.x + 20, from.y + 30, { steps: 4 });
    expect(bench.text()).toBe(before);
    await page.mouse.up();
    await expect.poll(() => rows()[5]?.[1]).toBeLessThan(38);
    expect(rows()[5]?.[0]).toBeGreaterThan(5500);
    await undo().click();
    await expect.poll(() => bench.text()).toBe(before);

    const sixth = 'Point 6 of 10: 40.2 N·m at 5500 rpm';
    await expect.poll(() => point(5).getAttribute('aria-label')).toBe(sixth);
    await point(5).focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowRight');
    expect(await point(5).getAttribute('aria-label')).toBe('Point 6 of 10: 40.3 N·m at 6000 rpm');
    await page.keyboard.press('Escape');
    expect(await point(5).getAttribute('aria-label')).toBe(sixth);
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    await expect.poll(() => rows()[5]?.[0]).toBe(5450);
    await page.keyboard.press('Delete');
    await expect.poll(() => rows().length).toBe(9);
  });

  it('the curve is pasted from a spreadsheet; a wrong line is named and nothing is lost', async () => {
    await page.getByText('Paste a table').click();
    const place = page.getByLabel('Columns from a table, under a line with their units');
    await place.fill('rpm\tkW\n2000\t6\n4000\tx\n6000\t24');
    await page.getByRole('button', { name: 'Read the table' }).click();
    expect(await page.locator('.paste-table .curve-faults').textContent()).toContain('Line 3');
    expect(await place.inputValue()).toContain('4000\tx');
    await place.fill('rpm\tkW\n2000\t6\n4000\t16\n6000\t24');
    await page.getByRole('button', { name: 'Read the table' }).click();
    await expect
      .poll(() => brief().engine.curve.rows)
      .toEqual([
        [2000, 28.65],
        [4000, 38.2],
        [6000, 38.2],
      ]);
    await page.getByText('Points as a table').click();
    const torque = page.getByLabel('Torque of point 2, N·m');
    await torque.fill('39,5');
    await torque.press('Enter');
    await expect.poll(() => brief().engine.curve.rows[1]).toEqual([4000, 39.5]);
    await page.getByRole('button', { name: 'Take out point 1' }).click();
    await expect.poll(() => brief().engine.curve.rows.length).toBe(2);
  });

  it('without a curve two clicks begin one', async () => {
    const { curve } = brief().engine;
    const peaks = '"peaks": { "torque": "40 N.m", "torqueAt": "5500 rpm", "power": "30 kW", "powerAt": "8200 rpm" }';
    const text = bench.text();
    const from = text.slice(text.indexOf('"curve"'), text.indexOf('"idle"'));
    bench.editFile(from, `${peaks},\n      `);
    await page.getByText('Click its points on the plot').waitFor();
    expect(curve.rows.length).toBe(10);
    const plot = page.locator('.curve-plot svg');
    await plot.scrollIntoViewIfNeeded();
    await plot.click({ position: { x: 200, y: 150 } });
    expect(await page.locator('.curve-point').count()).toBe(1);
    await plot.click({ position: { x: 400, y: 120 } });
    await expect.poll(() => brief().engine.curve?.rows?.length).toBe(2);
  });

  it('rolls ten turns: the sum is done, opened, and put into the field by one tap', async () => {
    const box = await openRecipe('Wheel and tyre', 'Measured roll-out');
    await expect.poll(() => box.locator('output').textContent()).toBe('not yet: 1 reading to write down');
    await box.getByLabel('Distance between the marks', { exact: true }).fill('33.52');
    await box.getByLabel('Turns of the wheel').focus();
    expect(await box.locator('.fails').textContent()).toContain('33.52');
    await box
      .getByRole('group', { name: 'Unit of Distance between the marks' })
      .getByText('m', { exact: true })
      .click();
    await box.getByText('3.352 ± 0.002').waitFor();
    await box.getByText('Working and source').click();
    expect(await box.locator('math').count()).toBeGreaterThan(2);
    expect(await box.locator('.sources').textContent()).toContain('Common practice');
    await box.getByRole('button', { name: 'Put 3.350..3.354 m into the field' }).click();
    await expect.poll(() => brief().wheel.rollOut).toBe('3.350..3.354 m');
    await undo().click();
    await expect.poll(() => brief().wheel.rollOut).toBe('3.28..3.42 m');
  });

  it('counts turns with the primary ratio of the build, weighs over a lever, and times a swing', async () => {
    const turns = await openRecipe('Gearbox', 'Gear ratio 1');
    expect(await turns.getByLabel('Primary ratio', { exact: true }).inputValue()).toBe('65:31');
    await turns.getByLabel('Turns of the crank, with parts of a turn', { exact: true }).fill('57.7');
    await turns.getByRole('button', { name: 'Put 2.747..2.757 into the field' }).click();
    await expect.poll(() => brief().engine.gears[0]).toBe('2.747..2.757');

    const scales = await openRecipe('Vehicle', 'Laden mass on the driven axle');
    await scales.getByLabel('Over a plank, beyond the range of the scale', { exact: true }).check();
    await scales.getByLabel(/^Reading under each driven wheel/).fill('98 kg');
    await scales.getByLabel('Reading with the bare plank', { exact: true }).fill('4 kg');
    await scales.getByLabel('From the ground bar to the bar on the scale', { exact: true }).fill('1.8 m');
    await scales.getByLabel('From the ground bar to the middle of the tyre', { exact: true }).fill('450 mm');
    await scales.getByRole('button', { name: 'Put 374..378 kg into the field' }).click();
    await expect.poll(() => brief().vehicle.drivenLoad).toBe('374..378 kg');

    const swing = await openRecipe('Vehicle', 'Moment of inertia of the driven wheel');
    await swing.getByLabel('Mass of the wheel as it hangs', { exact: true }).fill('42 kg');
    await swing.getByLabel('Time of all swings', { exact: true }).fill('63.4 s');
    await swing.getByLabel('Length of the ropes', { exact: true }).fill('2.4 m');
    await swing.getByLabel('From each rope to the middle of the wheel', { exact: true }).fill('400 mm');
    await swing.getByRole('button', { name: /^Put [\d.]+ kg\.m2 into the field$/ }).click();
    await expect.poll(() => brief().vehicle.wheelInertia).toMatch(/^6\.\d+\.\.7\.\d+ kg\.m2$/);
  });
});

describe('the brief on a phone', () => {
  beforeEach(async () => {
    bench = await startBench();
    const phone = { viewport: { width: 360, height: 780 }, hasTouch: true, isMobile: true };
    ({ page, errors } = await openPage(browser, bench, phone));
    await goToBrief();
  });

  it('folds to its parts, opens one by a tap, fits 360 px, and has no fault of access with all open', async () => {
    expect(await page.locator('.brief-section .field').count()).toBe(0);
    for (const fold of await page.locator('.section-fold').all()) await fold.tap();
    await section('Shop').locator('.field').first().waitFor();
    for (const label of ['Mass, ready to drive', 'Moment of inertia of the driven wheel'])
      await openRecipe('Vehicle', label);
    await page.getByText('Points as a table').tap();
    await page.getByText('Paste a table').tap();
    const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(over).toBeLessThanOrEqual(0);
    expect(await violations(page)).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('a point is dragged by a finger', async () => {
    await section('Engine').locator('.section-fold').tap();
    await page.locator('.curve-plot').scrollIntoViewIfNeeded();
    // The drawing takes its width once it is laid out.
    await expect.poll(async () => (await page.locator('.curve-plot svg').boundingBox())?.width).toBeLessThan(360);
    const at = await point(5).locator('.curve-dot').boundingBox();
    const [x, y] = [(at?.x ?? 0) + 4, (at?.y ?? 0) + 4];
    const touch = await page.context().newCDPSession(page);
    const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
      touch.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    await send('touchStart', [{ x, y }]);
    for (let k = 1; k <= 5; k += 1) await send('touchMove', [{ x, y: y + 8 * k }]);
    await send('touchEnd', []);
    await expect.poll(() => brief().engine.curve.rows[5][1]).toBeLessThan(36);
  });
});
