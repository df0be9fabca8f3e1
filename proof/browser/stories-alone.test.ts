/** From an empty sheet to a laid-out drive in the one HTML file, from the disk and without a network. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { validateText } from '@oddwheel/build/session';
import { readArchive } from '@oddwheel/store/archive';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { openBrowser } from './bench.ts';
import * as story from './story.ts';

const FILE = pathToFileURL(fileURLToPath(new URL('../../apps/bench/dist-alone/oddwheel.html', import.meta.url))).href;

let browser: Browser;
let folder: string;
let page: Page;
let errors: string[];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'oddwheel-story-'));
});
afterEach(async () => {
  await page.context().close();
  rmSync(folder, { recursive: true, force: true });
  expect(errors).toEqual([]);
});

async function layOut(options: BrowserContextOptions): Promise<void> {
  ({ page, errors } = await story.openSheet(browser, FILE, { ...options, offline: true }));
  for (const [id, text] of story.SIX) await page.locator(`#${id}`).fill(text);
  await page
    .getByRole('group', { name: /^Unit of Mass/ })
    .getByText('lb')
    .click();
  await page.getByText(/^Laid out as chain/).waitFor();
  await page.getByRole('button', { name: 'Lay it out' }).click();
  await story.laidOut(page);
  await page.locator('.saved', { hasText: 'kept in this browser' }).waitFor();
}

/** The build as it is kept: saved as one file through the page, and read as any other program would. */
async function kept(): Promise<{ readonly build: string; readonly history: string }> {
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('dialog').getByRole('button', { name: 'Save as one file' }).click();
  const path = join(folder, 'build.oddwheel.zip');
  await (await download).saveAs(path);
  await page.keyboard.press('Escape');
  const read = readArchive(new Uint8Array(readFileSync(path)), validateText);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.content;
}

describe('in the one file', () => {
  it('at 1440 px: laid out, a field with a unit tap, kept over a reload, undone after it', async () => {
    await layOut(story.DESK);
    const first = (await kept()).build;
    expect(validateText(first)).toEqual([]);
    expect(story.valueIn(first, '/brief/vehicle/mass')).toBe('705 lb');
    expect(Object.keys(story.valueIn(first, '/path/stages') as object)).toEqual(['chain-1', 'bevel', 'chain-2']);

    await page.locator('.path-table').getByRole('button', { name: 'Shaft A' }).click();
    await story.field(page, story.DIAMETER).fill('1.75');
    await story.units(page, story.DIAMETER).getByRole('button', { name: 'in', exact: true }).click();
    await page.locator('.saved', { hasText: /^saved \d\d:\d\d$/ }).waitFor();
    await page.reload();
    await expect.poll(() => story.field(page, story.DIAMETER).inputValue()).toBe('1.75 in');
    const changed = await kept();
    expect(story.valueIn(changed.build, story.DIAMETER)).toBe('1.75 in');
    expect(changed.history).toContain('1.75 in');
    await page
      .locator('.head')
      .getByRole('button', { name: /^Undo .*diameter/ })
      .click();
    await expect.poll(() => story.field(page, story.DIAMETER).inputValue()).not.toBe('1.75 in');
    expect((await kept()).build).toBe(first);

    await page.getByRole('heading', { name: 'What the build stands on' }).waitFor();
    expect(await violations(page)).toEqual([]);
  }, 120_000);

  it('at 390 px: laid out, another one begun beside it, and both are kept', async () => {
    await layOut(story.PHONE);
    expect(await story.overflow(page)).toBe(0);
    await page.getByRole('button', { name: 'Build', exact: true }).tap();
    await page.getByRole('dialog').getByRole('button', { name: 'New', exact: true }).tap();
    await page.getByRole('heading', { name: 'No build on the sheet' }).waitFor();
    // What was typed for the other build is not there any more.
    expect(await page.locator('#six-power').inputValue()).toBe('');
    expect(await story.overflow(page)).toBe(0);
    expect(await violations(page)).toEqual([]);
    await page.getByRole('button', { name: 'marsh-hauler' }).tap();
    await page.locator('.path-table').waitFor();
    await page.getByRole('button', { name: 'Build', exact: true }).tap();
    await expect
      .poll(() => page.getByRole('dialog').locator('.kept-name').allTextContents())
      .toEqual(['new-build', 'marsh-hauler']);
  }, 120_000);
});
