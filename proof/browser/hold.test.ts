/** What would make a finding hold, found and made in a real browser. */
import { openSession } from '@oddwheel/build/session';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

const SEAT = '/path/shafts/shaft-a/seats/bearing-front';
const FINDING = `bearing.static:${SEAT}`;

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
  expect(errors).toEqual([]);
});

/** Opens a finding, with the panel that looks for changes. */
async function open(finding = FINDING, options: BrowserContextOptions = {}): Promise<void> {
  ({ page, errors } = await openPage(browser, bench, options));
  const element = finding.slice(finding.indexOf(':') + 1).replace(/\/seats\/.*/, '');
  await page.evaluate(
    ([at, id]) => {
      window.location.hash = `strength${at}?finding=${encodeURIComponent(id ?? '')}`;
    },
    [element, finding],
  );
  await panel().waitFor();
}

const panel = () => page.getByRole('region', { name: 'Make it hold' });
const look = () => panel().getByRole('button', { name: 'Find the smallest changes that do' });
const first = () =>
  panel()
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { level: 4 }) })
    .first();

/** Severity of the finding in the file on the disk. */
function onDisk(): string | undefined {
  const opened = openSession(bench.text());
  return opened.ok ? opened.session.assessment.findings.find(({ id }) => id === FINDING)?.severity : 'faulty';
}

describe('make it hold', () => {
  it('finds changes, makes the first one as one edit, and undoes it', async () => {
    await open();
    const before = bench.text();
    await look().click();
    await first().waitFor();
    expect(await first().getByRole('heading', { level: 4 }).textContent()).toContain('6210');
    expect(await first().locator('.outcome').textContent()).toContain('holds');
    expect(await violations(page)).toEqual([]);
    await first()
      .getByRole('button', { name: /^Make this change/ })
      .click();
    await expect.poll(() => bench.text()).toContain('"6210"');
    expect(onDisk()).toBe('holds');
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await expect.poll(() => bench.text()).toBe(before);
  });

  it('can be stopped, and works by keys on a phone without a sideways scroll', async () => {
    await open('bevel.moves:/path/stages/bevel', { viewport: { width: 360, height: 740 } });
    await look().focus();
    await page.keyboard.press('Enter');
    const stop = panel().getByRole('button', { name: 'Stop looking' });
    await stop.waitFor();
    await stop.focus();
    await page.keyboard.press('Enter');
    await look().waitFor();
    expect(await panel().textContent()).toContain('Stopped.');
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth)).toBe(true);
  });
});
