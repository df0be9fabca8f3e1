/** Adding things and taking them out, notes and pictures, in the inspector: by pointer, by touch and by keys alone. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

/** One dot, as a PNG. */
const DOT = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

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
  // An edit that met another is answered so, and a host that starts again is away for a moment.
  expect(errors.filter((error) => !/409|ERR_CONNECTION|ERR_INCOMPLETE/.test(error))).toEqual([]);
});

const build = () => JSON.parse(bench.text());
const inspector = (of = page): Locator => of.locator('.inspector');
const add = (name: string, of = page): Locator =>
  of.locator('.add-or-take-out').getByRole('button', { name, exact: true });
const form = (of = page): Locator => inspector(of).locator('form.add-form');
const undo = (name: RegExp) => page.locator('.head').getByRole('button', { name });
const focused = (of = page): Promise<string> => of.evaluate(() => document.activeElement?.id ?? '');

async function show(address: string, name: string, of = page): Promise<void> {
  await of.evaluate((at) => {
    window.location.hash = `layout${at}`;
  }, address);
  await inspector(of).getByRole('heading', { name, exact: true }).waitFor();
}

async function attach(of: Page, file: string): Promise<void> {
  const input = inspector(of).locator('.add-row .choose-file input').first();
  await input.setInputFiles({ name: file, mimeType: 'image/png', buffer: DOT });
}

describe('at the desk', () => {
  beforeEach(async () => {
    ({ page, errors } = await openPage(browser, bench));
  });

  it('by keys alone: a stage is put in before another and taken out again; what changes too is told first', async () => {
    const before = bench.text();
    await show('/path/stages/chain-2', 'Chain 2');
    await add('Stage before it, toward the engine').focus();
    await page.keyboard.press('Enter');
    await form().getByLabel('Kind').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('.kind') !== null)).toBe(true);
    await page.keyboard.type('Spur');
    await form().getByLabel('Driver teeth').waitFor();
    await form().getByRole('button', { name: 'Add', exact: true }).press('Enter');
    // Everything that is wanted is told at its field, and the first of it has the focus.
    await expect.poll(() => form().locator('.field .fails').count()).toBe(3);
    expect(await focused()).toBe('form:/path/stages/+/teeth/driver');
    await page.keyboard.type('20');
    await page.keyboard.press('Tab');
    await page.keyboard.type('x');
    await form().getByLabel('Its bearings are carried by').focus();
    await page.keyboard.type('subframe');
    await page.keyboard.press('Enter');
    await form().getByRole('button', { name: 'Add', exact: true }).press('Enter');
    await form().getByText('Driven teeth is a whole number').waitFor();
    await form().getByLabel('Driven teeth').fill('30');
    await form().getByLabel('Driven teeth').press('Enter');
    await form().getByText('Chain 2 moves from Shaft B to Shaft C', { exact: false }).waitFor();
    expect(bench.text()).toBe(before);
    await form().getByRole('button', { name: 'Add it' }).press('Enter');
    await inspector().getByRole('heading', { name: 'Spur 1', exact: true }).waitFor();
    await expect.poll(() => focused()).toBe('field:/path/stages/spur-1/name');
    await expect.poll(() => Object.keys(build().path.stages)).toEqual(['chain-1', 'bevel', 'spur-1', 'chain-2']);
    expect(build().path.stages['spur-1'].teeth).toEqual({ driver: 20, driven: 30 });

    await inspector().getByRole('button', { name: 'Take out Spur 1' }).press('Enter');
    await inspector().getByText('This changes too:').waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take it out');
    await page.keyboard.press('Escape');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Take out Spur 1');
    await page.keyboard.press('Enter');
    await inspector().getByText('This changes too:').waitFor();
    await page.keyboard.press('Enter');
    await inspector().getByRole('heading', { name: 'Chain 2', exact: true }).waitFor();
    await undo(/^Undo Take spur 1 and shaft C out of the path/).press('Enter');
    await undo(/^Undo Add spur “Spur 1” before Chain 2/).press('Enter');
    await expect.poll(() => bench.text()).toBe(before);
  });

  it('rows of lists, groups and seats are added and taken out where they stand; who still uses a thing is named', async () => {
    await show('/brief/engine', 'Engine');
    await inspector().getByRole('button', { name: 'Add gear', exact: true }).click();
    await form().getByLabel('Gear ratio').fill('0.8');
    await form().getByLabel('Gear ratio').press('Enter');
    await expect.poll(() => build().brief.engine.gears.length).toBe(6);
    await expect.poll(() => focused()).toBe('field:/brief/engine/gears/5');
    await inspector().getByRole('button', { name: 'Take out Gear ratio 6' }).click();
    await expect.poll(() => build().brief.engine.gears.length).toBe(5);

    await show('/brief/engine/output', 'Gearbox');
    await inspector().getByRole('button', { name: 'Take out sprocket 17' }).click();
    await inspector().getByText('Chain 1, rings behind sprocket 17 still use sprocket 17.').waitFor();
    await inspector().getByRole('button', { name: 'Show chain-1' }).click();
    await inspector().getByRole('heading', { name: 'Chain 1', exact: true }).waitFor();

    await add('Idler').click();
    await form().getByLabel('Teeth').first().waitFor();
    await page.keyboard.press('Escape');
    expect(await form().count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Idler');

    await show('/path/shafts/shaft-a', 'Shaft A');
    await add('Seat').click();
    await form().getByLabel('Kind').selectOption('bearing');
    await form().getByLabel('Station along the shaft', { exact: true }).fill('1 1/4');
    await form()
      .getByRole('group', { name: 'Unit of Station along the shaft' })
      .getByText('in', { exact: true })
      .click();
    await form().getByLabel('Carried by').selectOption('subframe');
    await form().getByRole('button', { name: 'Add', exact: true }).click();
    await expect.poll(() => build().path.shafts['shaft-a'].seats['bearing-1']?.station).toBe('1 1/4 in');
  });

  it('a part that the build has not: its form stands open, and a check takes a design reserve of your own', async () => {
    await show('/brief/speedometer', 'Speedometer');
    await form().getByLabel('Roll-out of the wheel that it was made for', { exact: true }).fill('1.96 m');
    await form()
      .getByLabel(/^Turns of what it senses/)
      .fill('2.6');
    await form().getByLabel('Senses the turns of').selectOption({ index: 1 });
    await form().getByRole('button', { name: 'Add', exact: true }).click();
    await expect.poll(() => build().brief.speedometer?.madeRollOut).toBe('1.96 m');
    await expect.poll(() => focused()).toMatch(/^field:\/brief\/speedometer\//);

    await page.evaluate(() => {
      window.location.hash = 'strength/path/stages/chain-1?finding=chain.pull%3A%2Fpath%2Fstages%2Fchain-1';
    });
    await inspector().getByRole('button', { name: 'Use a design reserve of your own' }).click();
    await form().getByLabel('Design reserve').fill('1.5');
    await form().getByLabel('Why').fill('tested on the stand');
    await form().getByLabel('Who').fill('the builder');
    expect(await form().getByLabel('When').inputValue()).toMatch(/^\d{4}-\d\d-\d\d$/);
    await form().getByRole('button', { name: 'Add', exact: true }).click();
    await expect.poll(() => build().overrides['chain.pull:/path/stages/chain-1']?.reserve).toBe('1.5');
    await inspector().getByRole('heading', { name: 'Design reserves of your own' }).waitFor();
    await inspector().getByRole('button', { name: 'Take out Chain 1, pull against strength' }).click();
    await expect.poll(() => Object.keys(build().overrides)).toEqual(['chain.pull:/path/stages/chain-2']);
  });

  it('a note and a picture on a part: marked at its column, opened large, taken off; each edit has its Undo', async () => {
    const before = bench.text();
    await show('/path/stages/chain-1', 'Chain 1');
    await add('Note').click();
    await page.keyboard.type('Weld last.\nCheck the slots.');
    await page.keyboard.press('Control+Enter');
    await expect.poll(() => build().notes?.['/path/stages/chain-1']).toBe('Weld last.\nCheck the slots.');
    await attach(page, 'tension_side.png');
    await expect
      .poll(() => Object.values(build().pictures ?? {}))
      .toMatchObject([{ name: 'tension side', of: '/path/stages/chain-1' }]);
    await expect.poll(() => focused()).toBe('field:/pictures/tension-side/name');
    expect(readdirSync(join(bench.folder, 'pictures'))).toHaveLength(1);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('tight side');
    await page.keyboard.press('Enter');
    await expect.poll(() => build().pictures['tension-side'].name).toBe('tight side');
    expect(await page.locator('.path-table .column-marks').textContent()).toBe(', has note, picture');
    expect(await violations(page)).toEqual([]);

    await inspector().getByRole('button', { name: 'Open tight side large' }).click();
    const large = page.getByRole('dialog', { name: 'tight side' });
    const wide = () =>
      large.getByRole('img', { name: 'tight side' }).evaluate((image) => (image as HTMLImageElement).naturalWidth);
    await expect.poll(wide).toBe(1);
    await page.keyboard.press('Escape');
    await large.waitFor({ state: 'detached' });
    await inspector().getByRole('button', { name: 'Take off tight side' }).click();
    await expect.poll(() => build().pictures).toBeUndefined();
    // Undo outlives the page and the host.
    await bench.restart();
    await page.reload();
    await inspector().getByRole('heading', { name: 'Chain 1', exact: true }).waitFor();
    for (const name of [
      /Undo Take tight side/,
      /Undo .*, picture tension side → tight side/,
      /Undo Add picture/,
      /Undo Note on Chain 1/,
    ])
      await undo(name).click();
    await expect.poll(() => bench.text()).toBe(before);
  });

  it('what is no picture is refused with what to choose', async () => {
    await show('/path/stages/chain-1', 'Chain 1');
    const input = inspector().locator('.add-row .choose-file input').first();
    await input.setInputFiles({ name: 'x.png', mimeType: 'image/png', buffer: Buffer.from('none') });
    await inspector().getByRole('alert').getByText('Choose a JPEG, PNG or WebP file').waitFor();
  });

  it('a new stage that meets a change made elsewhere waits whole; kept, it stands on top of theirs', async () => {
    await show('/path/stages/chain-2', 'Chain 2');
    await add('Stage after it, toward the wheel').click();
    await form().getByLabel('Kind').selectOption('spur');
    await form().getByLabel('Driver teeth').fill('20');
    await form().getByLabel('Driven teeth').fill('20');
    await form().getByLabel('Its bearings are carried by').selectOption('subframe');
    await form().getByRole('button', { name: 'Add', exact: true }).click();
    await page.route(
      '**/api/edits',
      async (route) => {
        // The seat that the new stage takes over gets another name meanwhile.
        bench.editFile('"name": "sprocket 48"', '"name": "big sprocket"');
        await route.continue();
      },
      { times: 1 },
    );
    await form().getByRole('button', { name: 'Add it' }).click();
    const panel = page.getByRole('region', { name: 'Changed twice' });
    await panel.waitFor();
    expect(Object.keys(build().path.stages)).toHaveLength(3);
    await panel.getByRole('button', { name: 'Keep mine' }).click();
    await panel.waitFor({ state: 'detached' });
    await expect.poll(() => Object.keys(build().path.stages)).toHaveLength(4);
    expect(bench.text()).not.toContain('big sprocket');
  });
});

describe('by touch at 390 px', () => {
  beforeEach(async () => {
    ({ page, errors } = await openPage(browser, bench, PHONE));
  });

  it('a keep-out is added and taken out, and a picture is taken; everything to touch is large enough', async () => {
    await show('/brief/space', 'Space');
    await add('Keep-out').tap();
    await form().getByLabel('What for').selectOption({ index: 1 });
    await form().getByLabel('Carried by').selectOption('subframe');
    for (const corner of ['Corner rearmost, rightmost, lowest', 'Corner foremost, leftmost, highest'])
      for (const axis of ['Forward, x', 'Left, y', 'Up, z'])
        await form()
          .getByRole('group', { name: corner })
          .getByLabel(axis, { exact: true })
          .fill(corner.startsWith('Corner rear') ? '10 mm' : '60 mm');
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          '.inspector > :not(.element-findings) :is(button, input, select, textarea, .choose-file)',
        ),
      ]
        .map((one) => ({
          what: one.textContent || one.id,
          box: (one.closest('.choose-file') ?? one).getBoundingClientRect(),
        }))
        .filter(({ box }) => box.height > 0 && box.height < 43.5)
        .map(({ what, box }) => `${what} ${box.height}`),
    );
    expect(small).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    expect(await violations(page)).toEqual([]);
    await form().getByRole('button', { name: 'Add', exact: true }).tap();
    await expect.poll(() => Object.keys(build().brief.space.keepOuts)).toContain('keep-out-1');
    await expect.poll(() => focused()).toMatch(/^field:\/brief\/space\/keepOuts\/keep-out-1\//);
    await inspector().getByRole('button', { name: 'Take out Keep-out 1' }).tap();
    await expect.poll(() => Object.keys(build().brief.space.keepOuts)).not.toContain('keep-out-1');

    const camera = inspector().locator('.add-row input[capture="environment"]');
    await camera.setInputFiles({ name: 'image.png', mimeType: 'image/png', buffer: DOT });
    await expect
      .poll(() => Object.values(build().pictures ?? {}))
      .toMatchObject([{ name: 'Space', of: '/brief/space' }]);
    expect(await violations(page)).toEqual([]);
  });
});

describe('in the one file, without a host', () => {
  it('keeps pictures in the browser, and shows them again after the page was loaded anew', async () => {
    const file = fileURLToPath(new URL('../../apps/bench/dist-alone/oddwheel.html', import.meta.url));
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, offline: true });
    page = await context.newPage();
    errors = [];
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(pathToFileURL(file).href);
    await page
      .getByRole('button', { name: /marsh.hauler/i })
      .first()
      .click();
    await page.locator('.path-table').waitFor();
    await show('/path/stages/chain-1', 'Chain 1');
    await attach(page, 'plate from behind.png');
    await page.locator('.saved', { hasText: /^saved \d\d:\d\d$/ }).waitFor();
    await page.reload();
    const small = inspector().getByRole('button', { name: 'Open plate from behind large' }).locator('img');
    await expect.poll(() => small.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(1);
  });
});
