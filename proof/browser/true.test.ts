/** True on a phone beside the machine: readings keyed in by thumb, the next step, a second bench that follows, and a host that dies. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, startBench } from './bench.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' };
const DESK = { viewport: { width: 1440, height: 1000 }, locale: 'en-GB' };
/** Swing of 30 thou, high at two o'clock, as a dial of half thou shows it. */
const SWING = ['7.5', '13', '15', '13', '7.5', '0', '-7.5', '-13', '-15', '-13', '-7.5', '0'];
const STILL = Array<string>(12).fill('0');

let browser: Browser;
let bench: Bench;
let contexts: BrowserContext[];
let errors: string[];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  bench = await startBench();
  contexts = [];
  errors = [];
});
afterEach(async () => {
  for (const context of contexts) await context.close();
  await bench.stop();
  // A host that is killed, and a network that is cut, are told in the console.
  expect(errors.filter((error) => !/ERR_|Failed to load resource/.test(error))).toEqual([]);
});

async function open(options: typeof PHONE | typeof DESK): Promise<Page> {
  const context = await browser.newContext(options);
  contexts.push(context);
  const page = await context.newPage();
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(`${bench.url()}/#true`);
  await page.locator('.true-screen').waitFor();
  return page;
}

interface Line {
  readonly id: string;
  readonly kind: string;
  readonly body: { readonly station?: string; readonly readings?: readonly unknown[] };
}

/** Entries on the disk. */
function onDisk(): readonly Line[] {
  const file = join(bench.folder, 'true.ndjson');
  const text = existsSync(file) ? readFileSync(file, 'utf8') : '';
  return text.split('\n').flatMap((line) => (line === '' ? [] : [JSON.parse(line) as Line]));
}

async function newPart(page: Page): Promise<void> {
  await page.locator('.part-form').getByRole('button', { name: 'Shaft A', exact: true }).tap();
  await page.getByText('Weld: asked before the first arc').tap();
  await page.getByLabel('Beads').selectOption('correct');
  for (const [label, value] of [
    ['Station of the weld', '280 mm'],
    ['Steel', 'E355'],
    ['Hardness', 'none'],
    ['Coating', 'none'],
  ] as const)
    await page.locator('.part-form').getByLabel(label, { exact: true }).fill(value);
  await page.getByRole('button', { name: 'Put it on the bench' }).tap();
  await page.getByRole('heading', { name: 'Shaft A' }).waitFor();
}

/** Keys values in with the thumb, one tap a key, and gives the number of taps. */
async function keyIn(page: Page, values: readonly string[]): Promise<number> {
  let taps = 0;
  const tap = async (name: string | RegExp): Promise<void> => {
    await page.locator('.keypad').getByRole('button', { name, exact: true }).tap();
    taps += 1;
  };
  for (const value of values) {
    for (const figure of value.replace('-', '').replace(/\.5$/, '½')) await tap(figure === '½' ? 'And a half' : figure);
    if (value.startsWith('-')) await tap('Plus or minus');
    await tap(/^(Next|All)/);
  }
  return taps;
}

const take = (page: Page): Promise<void> => page.getByRole('button', { name: /^Take readings at/ }).tap();

async function measure(page: Page, values: readonly string[]): Promise<number> {
  await take(page);
  const taps = await keyIn(page, values);
  await page.locator('.next-step').waitFor();
  return taps;
}

const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** A part with both seats measured, as another device would have sent it. */
async function seatsMeasured(): Promise<void> {
  const still = STILL.map((value, k) => ({ at: 30 * k, value: Number(value) }));
  const set = (station: string) => ({
    ...{ part: 'shaft-a', station, setup: 'own bearings', unit: 'thou', step: 0.5, sign: 'out', readings: still },
  });
  const weld = {
    ...{ mode: 'correct', station: '280 mm', steel: 'E355', hardness: 'none', coating: 'none' },
    ...{ smallest: '3 mm', largest: '25 mm' },
  };
  const goal = { station: '40 mm', tir: '3 thou' };
  const part = { part: 'shaft-a', name: 'Shaft A', seats: { a: '85 mm', b: '260 mm' }, goal, weld };
  const taken = '2031-05-04T16:20:00Z';
  const entries = [part, set('85 mm'), set('260 mm')].map((body, k) => ({
    ...{ id: `desk.${k + 1}`, kind: k === 0 ? 'true-part' : 'true-set', taken, logged: taken },
    ...{ after: k === 0 ? null : `desk.${k}`, body },
  }));
  const sent = await fetch(`${bench.url()}/api/run-out`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries }),
  });
  expect(await sent.json()).toEqual({ acknowledged: ['desk.1', 'desk.2', 'desk.3'], refused: [] });
}

it('twelve readings by thumb, the next step in words, and a second bench that shows it at once', async () => {
  await seatsMeasured();
  const [phone, desk] = await Promise.all([open(PHONE), open(DESK)]);
  await phone.locator('.next-step .instruction', { hasText: 'Measure the station that matters, at 40 mm.' }).waitFor();
  await take(phone);
  const keys = phone.locator('.keypad .key');
  for (const box of await Promise.all([0, 8, 14].map((k) => keys.nth(k).boundingBox()))) {
    expect(box?.height).toBeGreaterThanOrEqual(60);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(844);
  }
  // Less than one tap a second fills the minute.
  expect(await keyIn(phone, SWING)).toBeLessThan(60);
  await phone.locator('.next-step .instruction', { hasText: /^Weld a bead .* long at \d+:\d\d\./ }).waitFor();
  const numbers = (await phone.locator('.four-numbers').textContent()) ?? '';
  expect(numbers).toMatch(/TIR, as readhighest less lowest30/);
  expect(numbers).toMatch(/Offset.*15/);
  expect(await phone.locator('.true-cautions').textContent()).toContain('never through bearings or the lathe');
  await desk.locator('.next-step .instruction', { hasText: 'Weld a bead' }).waitFor({ timeout: 3000 });
  expect(await desk.locator('.next-step .instruction').textContent()).toBe(
    await phone.locator('.next-step .instruction').textContent(),
  );
  const inMode = async (page: Page, mode: string): Promise<readonly string[]> => {
    await page.evaluate((to) => {
      document.documentElement.dataset.mode = to;
    }, mode);
    return violations(page);
  };
  // The phone begins in shop mode, the desk in its own; then the other way round.
  expect(await Promise.all([violations(phone), violations(desk)])).toEqual([[], []]);
  expect(await Promise.all([inMode(phone, 'desk'), inMode(desk, 'shop')])).toEqual([[], []]);
  await phone.setViewportSize({ width: 360, height: 740 });
  expect(await overflow(phone)).toBe(0);
  // A set is struck out by a later entry: it stays in the file.
  await desk
    .getByRole('button', { name: /^Strike out/ })
    .first()
    .click();
  await phone.locator('.true-entries del').waitFor();
  expect(onDisk().map(({ kind }) => kind)).toEqual(['true-part', 'true-set', 'true-set', 'true-set', 'strike']);
});

it('network cut and host killed in the middle, page loaded again: nothing lost, nothing doubled', async () => {
  const phone = await open(PHONE);
  await newPart(phone);
  await take(phone);
  expect(await violations(phone)).toEqual([]);
  await keyIn(phone, STILL);
  await phone.locator('.next-step').waitFor();
  await expect.poll(() => onDisk().length).toBe(2);
  // What the browser needs to load the page again is kept.
  await phone.evaluate(() => navigator.serviceWorker.ready);
  await phone.context().setOffline(true);
  await measure(phone, STILL);
  await phone.getByText(/1 entry kept on this device, and sent once it returns/).waitFor();
  await take(phone);
  await keyIn(phone, SWING.slice(0, 5));
  await bench.kill();
  await phone.context().setOffline(false);
  await phone.reload();
  // The half of a set is there, and the record with what waits.
  await phone.getByRole('button', { name: '2 o’clock: 15', exact: true }).waitFor();
  await keyIn(phone, SWING.slice(5));
  await phone.locator('.next-step .instruction', { hasText: 'Weld a bead' }).waitFor();
  await phone.getByText(/2 entries kept on this device/).waitFor();
  expect(onDisk()).toHaveLength(2);
  await bench.restart();
  await expect.poll(() => onDisk().length).toBe(4);
  await phone.locator('.true-entries', { hasNotText: 'not sent yet' }).waitFor();
  const lines = onDisk();
  expect(new Set(lines.map(({ id }) => id)).size).toBe(4);
  expect(lines.filter(({ kind }) => kind === 'true-set').every(({ body }) => body.readings?.length === 12)).toBe(true);
  // Another device sees the same, and nothing comes twice.
  const desk = await open(DESK);
  await desk.locator('.next-step .instruction', { hasText: 'Weld a bead' }).waitFor();
  expect(onDisk()).toHaveLength(4);
});
