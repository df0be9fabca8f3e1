import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, pathCell, ranged, startBench } from './bench.ts';

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
  ({ page, errors } = await openPage(browser, bench));
});
afterEach(async () => {
  await page.context().close();
  await bench.stop();
});

const saved = async () => {
  await page.locator('.saved', { hasText: /^saved \d\d:\d\d$/ }).waitFor();
  await ranged(page);
};
const field = (label: string) => page.locator('.inspector').getByLabel(label, { exact: true });
const element = (name: string) => page.locator('.path-table').getByRole('button', { name, exact: true });

/** Steps that have a screen. */
const STEPS = ['brief', 'ratios', 'layout', 'strength'] as const;

const goTo = async (of: Page, step: string): Promise<void> => {
  await of.evaluate((name) => {
    window.location.hash = name;
  }, step);
  await of.locator('main h2:visible').first().waitFor();
};

/** The row of a chain's pull against its strength, which holds and so lies among those that are folded away. */
async function pullOf(of: Page, chain: string): Promise<Locator> {
  for (const more of await of.getByRole('button', { name: 'Show them' }).all()) await more.click();
  return of.locator('.finding-button', { hasText: `${chain}, pull against strength` });
}

/** Commits a value in a field of an element. */
async function type(name: string, label: string, value: string): Promise<void> {
  await element(name).click();
  await field(label).fill(value);
  await field(label).press('Enter');
}

const changedLines = (before: string, after: string): string[] => {
  const old = before.split('\n');
  const now = after.split('\n');
  expect(now).toHaveLength(old.length);
  return now.filter((line, index) => line !== old[index]);
};

describe('the page of the demo', () => {
  it('shows the path from engine to ground, and nothing goes wrong in the browser', async () => {
    expect(await pathCell(page, 'speed or teeth', 'Chain 1')).toContain('17 : 30');
    expect(await pathCell(page, 'speed or teeth', 'Bevel pair')).toContain('14 : 33');
    expect(await pathCell(page, 'speed or teeth', 'Ground')).toMatch(/km\/h$/);
    expect(errors).toEqual([]);
  });

  it('a sprocket tooth fewer changes what hangs on it, is one line of the file, and comes back with Undo', async () => {
    const before = bench.text();
    // The road speed stays: what lies before the chain turns faster by 17/16, and the pull at the ground follows the engine.
    const cells = async () => [
      await pathCell(page, 'speed or teeth', 'Engine'),
      await pathCell(page, 'speed or teeth', 'Gearbox'),
      await pathCell(page, 'torque or line speed', 'Shaft A'),
      await pathCell(page, 'power or pull', 'Chain 1'),
    ];
    const numbers = await cells();
    const rpm = (cell: string | undefined) => Number(cell?.replace(/ ±.*/, '').replaceAll(/\s/g, ''));
    await type('Chain 1', 'Driver teeth', '16');
    await saved();
    expect(await pathCell(page, 'speed or teeth', 'Chain 1')).toBe('16 : 30, 1.875');
    const changed = await cells();
    for (const [index, cell] of changed.entries()) expect(cell).not.toBe(numbers[index]);
    expect(rpm(changed[0]) / rpm(numbers[0])).toBeCloseTo(17 / 16, 2);
    expect(changedLines(before, bench.text())).toEqual(['        "teeth": { "driver": 16, "driven": 30 },']);

    await page.locator('.head').getByRole('button', { name: 'Undo Chain 1, driver teeth 17 → 16' }).click();
    await page.locator('.path-table', { hasText: '17 : 30' }).waitFor();
    await expect.poll(cells).toEqual(numbers);
    await expect.poll(() => bench.text()).toBe(before);
    await page.locator('.head').getByRole('button', { name: 'Redo Chain 1, driver teeth 17 → 16' }).click();
    await page.locator('.path-table', { hasText: '16 : 30' }).waitFor();
    expect(errors).toEqual([]);
  });

  it('an edit outlives a reload of the page and a restart of the host, and can be undone after both', async () => {
    const before = bench.text();
    await type('Chain 1', 'Driver teeth', '16');
    await saved();
    await page.reload();
    await page.locator('.path-table', { hasText: '16 : 30' }).waitFor();
    await bench.restart();
    await page.goto(bench.url());
    await page.locator('.head').getByRole('button', { name: 'Undo Chain 1, driver teeth 17 → 16' }).click();
    await page.locator('.path-table', { hasText: '17 : 30' }).waitFor();
    await expect.poll(() => bench.text()).toBe(before);
  });

  it('Undo pressed while an edit is still being kept takes that edit back', async () => {
    const before = bench.text();
    let answer = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      answer = resolve;
    });
    await page.route('**/api/edits', async (route) => {
      const response = await route.fetch();
      await held;
      await route.fulfill({ response });
    });
    await type('Chain 1', 'Driver teeth', '16');
    await page.locator('.saved', { hasText: /^saving$/ }).waitFor();
    await expect.poll(() => bench.text()).not.toBe(before);
    await page.locator('.head').getByRole('button', { name: 'Undo Chain 1, driver teeth 17 → 16' }).click();
    answer();
    await page.locator('.path-table', { hasText: '17 : 30' }).waitFor();
    await expect.poll(() => bench.text()).toBe(before);
  });

  it('wrong input says what was read and what is right; the old value stays in force', async () => {
    const before = bench.text();
    await element('Bevel pair').click();
    await field('Module at the large end').fill('58');
    await field('Module at the large end').press('Enter');
    const fault = page.locator('.field .fails');
    await fault.waitFor();
    expect(await fault.textContent()).toContain('58');
    expect(await fault.textContent()).toContain('mm');
    expect(await fault.textContent()).toContain('In force: 5 mm.');
    expect(await field('Module at the large end').getAttribute('aria-invalid')).toBe('true');
    await field('Module at the large end').press('Escape');
    expect(await field('Module at the large end').inputValue()).toBe('5 mm');
    expect(await fault.count()).toBe(0);
    expect(bench.text()).toBe(before);
  });

  it('an edit by a text editor appears, and what is being typed stays', async () => {
    await element('Chain 2').click();
    await field('Links').fill('8');
    bench.editFile('"driver": 14, "driven": 33', '"driver": 15, "driven": 33');
    await page.locator('.path-table', { hasText: '15 : 33' }).waitFor();
    expect(await field('Links').inputValue()).toBe('8');
    bench.editFile('"links": 84', '"links": 88');
    await page.getByText('Changed elsewhere to 88 while you typed.').waitFor();
    expect(await field('Links').inputValue()).toBe('8');
    await field('Links').press('Escape');
    expect(await field('Links').inputValue()).toBe('88');
  });

  it('a file that a text editor broke lists its faults and is left alone; the page follows when it is right again', async () => {
    bench.editFile('"mass": "320 kg"', '"mass": "320"');
    const faults = page.locator('.faults');
    await faults.waitFor();
    expect(await faults.textContent()).toContain('/brief/vehicle/mass');
    expect(await element('Chain 1').isVisible()).toBe(true);
    expect(bench.text()).toContain('"mass": "320"');
    bench.editFile('"mass": "320"', '"mass": "330 kg"');
    await faults.waitFor({ state: 'detached' });
  });

  it('a finding opens with its formulas as MathML, each with a sentence, and its sources', async () => {
    await (await pullOf(page, 'Chain 1')).click();
    const working = page.locator('.working');
    await working.locator('math').first().waitFor();
    for (const name of await working
      .locator('math')
      .evaluateAll((all) => all.map((one) => one.getAttribute('aria-label'))))
      expect(name).toMatch(/\w/);
    expect(await working.locator('.sources li').count()).toBeGreaterThan(0);
    expect(await working.locator('.symbols tbody tr').count()).toBeGreaterThan(0);
  });
});

describe('findings', () => {
  it('each one opens, and says what is missing where it has no number', async () => {
    let opened = 0;
    for (const step of STEPS) {
      await goTo(page, step);
      for (const more of await page.getByRole('button', { name: 'Show them' }).all()) await more.click();
      const rows = page.locator('.finding-button');
      for (let row = 0; row < (await rows.count()); row++) {
        const name = await rows.nth(row).textContent();
        await rows.nth(row).click();
        await page.locator('.working h3', { hasText: name ?? '' }).waitFor();
        await page.locator('.working .result').waitFor();
        expect(await rows.nth(row).getAttribute('aria-expanded'), name ?? '').toBe('true');
        opened++;
      }
    }
    expect(opened).toBeGreaterThan(60);
    expect(errors).toEqual([]);
  });

  it('an origin of a working leads to its field', async () => {
    await (await pullOf(page, 'Chain 2')).click();
    await page.locator('.symbols').getByRole('button', { name: 'chain 2, teeth, driver' }).first().click();
    await expect.poll(() => field('Driver teeth').evaluate((input) => input === document.activeElement)).toBe(true);
  });
});

describe('two hands on one file', () => {
  it('both values of a field changed twice stand side by side, and the choice decides', async () => {
    // The text editor is a moment faster: its change is on the disk before the page's edit arrives.
    await page.route(
      '**/api/edits',
      async (route) => {
        bench.editFile('"links": 84', '"links": 88');
        await route.continue();
      },
      { times: 1 },
    );
    await type('Chain 2', 'Links', '86');
    const panel = page.getByRole('region', { name: 'Changed twice' });
    await panel.waitFor();
    const row = panel.locator('tbody tr');
    expect((await row.locator('th, td').allTextContents()).slice(0, 4)).toEqual(['Chain 2, links', '84', '86', '88']);
    await expect.poll(() => field('Links').inputValue()).toBe('88');
    await panel.getByRole('button', { name: 'Keep mine' }).click();
    await panel.waitFor({ state: 'detached' });
    await expect.poll(() => bench.text()).toContain('"links": 86');
    expect(await field('Links').inputValue()).toBe('86');
  });

  it('without a connection edits are kept and counted, and saved once it is back', async () => {
    await page.context().setOffline(true);
    await type('Chain 1', 'Driver teeth', '16');
    await page.locator('.path-table', { hasText: '16 : 30' }).waitFor();
    await page.locator('.band', { hasText: '1 edit is kept in this page only' }).waitFor();
    await expect.poll(() => page.locator('.saved').textContent()).toBe('1 edit not saved');
    expect(bench.text()).toContain('"driver": 17, "driven": 30');
    await page.context().setOffline(false);
    await saved();
    expect(bench.text()).toContain('"driver": 16, "driven": 30');
  });
});

describe('keyboard', () => {
  it('walks elements and findings, opens and closes, edits, and undoes, without a pointer', async () => {
    await page.keyboard.press('j');
    await page.keyboard.press('j');
    const second = page.locator('.finding-button').nth(1);
    expect(await second.evaluate((row) => row === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await page.locator('.working').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.working').waitFor({ state: 'detached' });

    await element('Engine').press('Enter');
    for (const name of ['Gearbox', 'Chain 1', 'Shaft A']) {
      await page.keyboard.press(']');
      await expect.poll(() => element(name).getAttribute('aria-pressed')).toBe('true');
    }
    await page.keyboard.press('[');
    await expect.poll(() => element('Chain 1').getAttribute('aria-pressed')).toBe('true');
    await field('Driver teeth').focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('16');
    await page.keyboard.press('Enter');
    await page.locator('.path-table', { hasText: '16 : 30' }).waitFor();
    await saved();
    await page.keyboard.press('Control+z');
    await page.locator('.path-table', { hasText: '17 : 30' }).waitFor();
    await page.keyboard.press('Control+Shift+z');
    await page.locator('.path-table', { hasText: '16 : 30' }).waitFor();

    await element('Engine').focus();
    await page.keyboard.press('?');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Keys' }).waitFor({ state: 'detached' });
  });

  it('moves the slider: digits take a gear, arrows half a km/h, and beyond the gear it says which one would do', async () => {
    const slider = page.getByRole('slider', { name: 'Road speed' });
    await slider.focus();
    await page.keyboard.press('2');
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    const low = Number(await slider.getAttribute('aria-valuenow'));
    expect(low % 0.5).toBe(0);
    await page.keyboard.press('ArrowRight');
    expect(Number(await slider.getAttribute('aria-valuenow'))).toBe(low + 0.5);
    await expect
      .poll(() => pathCell(page, 'speed or teeth', 'Ground'))
      .toContain((low + 0.5).toFixed(low + 0.5 < 10 ? 2 : 1));
    await page.keyboard.press('End');
    await page.keyboard.press('PageUp');
    await expect.poll(() => page.locator('#here-note').textContent()).toMatch(/gear|3rd/i);
  });
});

describe('for everyone', () => {
  const phone = { viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true };

  it('axe finds nothing at 1440 px, with a finding open and a fault under a field', async () => {
    expect(await violations(page)).toEqual([]);
    await (await pullOf(page, 'Chain 1')).click();
    await page.locator('.working math').first().waitFor();
    const input = page.locator('.inspector input').last();
    await input.fill('?');
    await input.press('Enter');
    expect(await violations(page)).toEqual([]);
  });

  it('axe finds nothing on any step, at the desk and in shop mode', async () => {
    for (const mode of ['Shop mode', 'Desk mode'] as const) {
      for (const step of STEPS) {
        await goTo(page, step);
        expect(await violations(page), `${step}, before ${mode}`).toEqual([]);
      }
      await page.getByRole('button', { name: mode }).click();
    }
  });

  it('axe finds nothing on a phone, on the page and in the inspector', async () => {
    const { page: small } = await openPage(browser, bench, phone);
    expect(await violations(small)).toEqual([]);
    await small.locator('.finding-button').first().tap();
    await small.locator('.working').waitFor();
    expect(await violations(small)).toEqual([]);
    await small.context().close();
  });

  it('whatever can be touched on a phone is at least 44 px high and wide', async () => {
    const { page: small } = await openPage(browser, bench, phone);
    const tooSmall = () =>
      small
        .locator('button:visible, select:visible, input:visible, summary:visible, [role=slider]:visible')
        .evaluateAll((all) =>
          all
            // A finding's whole row is its button; the skip button shows itself only to the keyboard.
            .map((one) => (one.matches('.finding-button, .element-findings .link') ? (one.closest('li') ?? one) : one))
            .filter((one) => !one.matches('.skip'))
            .filter((one) => one.getBoundingClientRect().height < 44 || one.getBoundingClientRect().width < 43.5)
            .map((one) => one.outerHTML.slice(0, 120)),
        );
    expect(await tooSmall()).toEqual([]);
    await (await pullOf(small, 'Chain 1')).tap();
    await small.locator('.working math').first().waitFor();
    expect(await tooSmall()).toEqual([]);
    await small.context().close();
  });

  it('nothing runs off the side at 360 px, in desk and in shop mode', async () => {
    for (const hasTouch of [false, true]) {
      const { page: small } = await openPage(browser, bench, {
        viewport: { width: 360, height: 740 },
        hasTouch,
        isMobile: hasTouch,
      });
      const width = () => small.evaluate(() => document.documentElement.scrollWidth);
      expect(await width()).toBe(360);
      await small.locator('.finding-button').first().click();
      await small.locator('.working').waitFor();
      expect(await width()).toBe(360);
      await small.context().close();
    }
  });
});
