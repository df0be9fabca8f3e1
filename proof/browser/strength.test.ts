/** What goes on along a shaft, on the Strength step, played in a real browser. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ShaftLine } from '@oddwheel/build/assess/strength/shaft-lines';
import { thrustPaths } from '@oddwheel/build/assess/strength/thrust-path';
import { openSession, shaftDiagrams } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { violations } from './accessibility.ts';
import { type Bench, openBrowser, openPage, startBench } from './bench.ts';

const PHONE: BrowserContextOptions = { viewport: { width: 390, height: 840 }, hasTouch: true, isMobile: true };
const DRAWN = ['Bending', 'Torque', 'Shear', 'Deflection', 'Slope', 'Twist', 'Reserve'];

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

async function open(options: BrowserContextOptions = {}): Promise<void> {
  ({ page, errors } = await openPage(browser, bench, options));
  await page.evaluate(() => {
    window.location.hash = 'strength';
  });
  await sheet().waitFor();
}

const panel = () => page.getByRole('region', { name: 'Along a shaft', exact: true });
const sheet = () => panel().locator('.shaft-sheet svg');
const plain = (text: string | null): string => (text ?? '').replaceAll(/\s+/g, ' ').trim();
const number = (text: string): number => Number(text.replaceAll(/\s/g, '').replace('−', '-'));
const cellsOf = async (table: string): Promise<string[][]> =>
  panel()
    .locator(`${table} tbody tr`)
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));

/** The build as the worker holds it. */
function session(): Session {
  const opened = openSession(bench.text());
  if (!opened.ok) throw new Error('The demo cannot be read.');
  return opened.session;
}

function shaftNamed(name: string, caseId: string | null = null): Extract<ShaftLine, { ok: true }> {
  const line = shaftDiagrams(session(), caseId ?? undefined)?.find((one) => one.name === name);
  if (!line?.ok) throw new Error(`${name} is not known.`);
  return line;
}

const closeTo = (read: number, worker: number): void => {
  expect(Math.abs(read - worker)).toBeLessThanOrEqual(Math.max(6e-3 * Math.abs(worker), 1e-4));
};

describe('along a shaft', () => {
  it('draws every plot over one scale of stations, with the governing section through all of them', async () => {
    await open();
    for (const name of DRAWN) expect(await sheet().locator('.row-name', { hasText: name }).count()).toBe(1);
    const section = await sheet().locator('.plot-cursor').boundingBox();
    const whole = await sheet().boundingBox();
    expect(section && whole && section.height / whole.height).toBeGreaterThan(0.9);
    expect(await sheet().locator('.outline-bearing').count()).toBe(2);
    const marked = await sheet().locator('.outline-name').allTextContents();
    expect(marked.some((name) => name.includes('bearing'))).toBe(true);
  });

  it('shows in its tables what the worker says, for the case that governs and for another', async () => {
    await open();
    await panel().getByLabel('Shaft', { exact: true }).selectOption({ label: 'Shaft B' });
    await expect.poll(() => sheet().getAttribute('aria-label')).toContain('Shaft B');
    const line = shaftNamed('Shaft B');
    const places = await cellsOf('.places');
    expect(places).toHaveLength(line.places.length);
    line.places.forEach((place, k) => {
      const [name = '', station = '', , yields = '', tires = '', least = ''] = places[k] ?? [];
      expect(name).toContain(place.name);
      closeTo(number(station), place.station * 1000);
      if (place.yieldReserve === null) expect(yields).toBe('no load');
      else if (place.yieldReserve < 999) expect(number(yields)).toBeCloseTo(place.yieldReserve, 1);
      if (place.fatigueReserve !== null && place.fatigueReserve < 999)
        expect(number(tires)).toBeCloseTo(place.fatigueReserve, 1);
      if (place.least !== null) expect(number(least)).toBeCloseTo(place.least * 1000, 0);
    });
    await panel().getByText('All curves as a table').first().click();
    const other = (await panel().getByLabel('Load case').locator('option').nth(2).getAttribute('value')) ?? '';
    for (const caseId of [null, other]) {
      await panel()
        .getByLabel('Load case')
        .selectOption(caseId ?? '');
      const asked = shaftNamed('Shaft B', caseId);
      await expect.poll(() => sheet().getAttribute('aria-label')).toContain(asked.caseName);
      const rows = await cellsOf('.along');
      expect(rows.length).toBeGreaterThanOrEqual(asked.places.length);
      let compared = 0;
      for (const [at = '', , , both = '', torque = '', , , , , slope = '', twist = ''] of rows) {
        const station = number(at.split(' ')[0] ?? '') / 1000;
        const points = asked.points.filter((point) => Math.abs(point.station - station) < 1e-7);
        if (points.length === 0) continue;
        const same = (text: string, value: (point: (typeof points)[number]) => number): void => {
          for (const part of text.split(' to '))
            expect(
              points.some((point) => Math.abs(number(part) - value(point)) <= 6e-3 * Math.abs(value(point)) + 1e-3),
            ).toBe(true);
          compared++;
        };
        same(both, (point) => point.bendingBoth);
        same(torque, (point) => point.torque);
        same(slope, (point) => (point.slope * 180) / Math.PI);
        same(twist, (point) => (point.twist * 180) / Math.PI);
      }
      expect(compared).toBeGreaterThan(20);
    }
  });

  it('is read by keyboard and by pointer at any station', async () => {
    await open();
    const scale = panel().getByRole('slider');
    const before = await scale.getAttribute('aria-valuetext');
    await scale.focus();
    await page.keyboard.press('End');
    await expect.poll(() => scale.getAttribute('aria-valuetext')).not.toBe(before);
    await expect.poll(() => sheet().locator('.shaft-reading').count()).toBe(1);
    const reading = async (): Promise<string> => plain(await panel().locator('.station-reading').textContent());
    const atEnd = await reading();
    await expect
      .poll(async () => {
        const box = await sheet().boundingBox();
        if (box) await sheet().click({ position: { x: box.width * 0.4, y: box.height * 0.5 } });
        return reading();
      })
      .not.toBe(atEnd);
  });

  it('follows the element that is chosen, and an edit', async () => {
    await open();
    await page.locator('.path-table').getByRole('button', { name: 'Shaft B', exact: true }).click();
    await expect.poll(() => panel().getByLabel('Shaft', { exact: true }).inputValue()).toContain('shaft-b');
    await expect.poll(() => sheet().getAttribute('aria-label')).toContain('Shaft B');
    const curve = async () => sheet().locator('.plot-curve').first().getAttribute('d');
    // The drawing takes the width that the inspector beside it leaves, once that is there.
    await page.locator('.inspector').getByRole('heading', { name: 'Shaft B', exact: true }).waitFor();
    let before = await curve();
    await expect
      .poll(async () => {
        const last = before;
        before = await curve();
        return before === last;
      })
      .toBe(true);
    await page.locator('.path-table').getByRole('button', { name: 'Chain 2', exact: true }).click();
    const field = page.locator('.inspector').getByLabel('Driver teeth', { exact: true });
    await panel().getByLabel('Shaft', { exact: true }).selectOption({ label: 'Shaft B' });
    await expect.poll(curve).toBe(before);
    await field.fill('13');
    await field.press('Enter');
    await expect.poll(curve).not.toBe(before);
  });

  it('draws on request how thin it could be, and says it at the place that asks most', async () => {
    await open();
    expect(await sheet().locator('.outline-thin').count()).toBe(0);
    await panel().getByRole('button', { name: 'How thin could it be' }).press('Enter');
    expect(await sheet().locator('.outline-thin').count()).toBe(1);
    const name = await panel().getByLabel('Shaft', { exact: true }).locator('option:checked').textContent();
    const most = Math.max(...shaftNamed(name ?? '').places.map(({ least }) => least ?? 0)) * 1000;
    const said = await sheet().locator('.plot-word', { hasText: 'would just do' }).textContent();
    expect(number((said ?? '').replace(/^Ø([\d.]+).*$/, '$1'))).toBeCloseTo(most, 0);
  });

  it.each([
    ['a desk', {}],
    ['a phone', PHONE],
  ] as const)('words on the sheet do not cover each other on %s', async (_, options) => {
    await open(options);
    const shafts = await panel().getByLabel('Shaft', { exact: true }).locator('option').allTextContents();
    expect(shafts.length).toBe(session().assessment.shafts.length);
    for (const label of shafts) {
      await panel().getByLabel('Shaft', { exact: true }).selectOption({ label });
      await expect.poll(() => sheet().getAttribute('aria-label')).toContain(label);
      const shaft = session().assessment.shafts.find(({ name }) => name === label);
      expect(await sheet().locator('.outline-name').count()).toBe(shaft?.seats.length);
      const boxes = await sheet()
        .locator('.outline-name, .plot-word')
        .evaluateAll((words) =>
          words.map((word) => {
            const { left, right, top, bottom } = word.getBoundingClientRect();
            return { text: word.textContent, left, right, top: top + 4, bottom: bottom - 4 };
          }),
        );
      boxes.forEach((a, i) => {
        for (const b of boxes.slice(i + 1))
          expect(
            a.right <= b.left + 1 || b.right <= a.left + 1 || a.bottom <= b.top || b.bottom <= a.top,
            `${label}: “${a.text}” and “${b.text}”`,
          ).toBe(true);
      });
    }
  });

  it('without a torque curve it says what is missing and leads there', async () => {
    const build = JSON.parse(bench.text()) as { brief: { engine: Record<string, object> } };
    delete build.brief.engine.curve;
    writeFileSync(join(bench.folder, 'build.json'), JSON.stringify(build, null, 2));
    ({ page, errors } = await openPage(browser, bench));
    await page.evaluate(() => {
      window.location.hash = 'strength';
    });
    await panel()
      .getByRole('button', { name: /^Go there\s*: the torque curve/ })
      .first()
      .click();
    expect(await sheet().count()).toBe(0);
    await expect.poll(() => page.evaluate(() => window.location.hash)).toContain('/brief/engine');
  });

  it('opens the finding of a bearing, and traces the push part by part', async () => {
    await open();
    await panel().getByLabel('Shaft', { exact: true }).selectOption({ label: 'Shaft B' });
    await expect.poll(() => sheet().getAttribute('aria-label')).toContain('Shaft B');
    const { scene } = session().evaluation.middle;
    const paths = thrustPaths(
      scene,
      scene.strength.shafts.findIndex(({ shaft }) => shaft.name === 'Shaft B'),
    );
    if ('missing' in paths) throw new Error('The pushes of Shaft B are not known.');
    const parts = paths.flatMap(({ links }) => links.map(({ name }) => name));
    expect(parts.length).toBeGreaterThan(6);
    const told = await panel().locator('.hold-ways li').allTextContents();
    expect(told.map((text, k) => text.startsWith(parts[k] ?? '?'))).toEqual(parts.map(() => true));
    await panel().locator('.bearings tbody button').first().click();
    await expect.poll(() => page.evaluate(() => decodeURIComponent(window.location.hash))).toContain('bearing.life');
  });

  it.each([
    ['a desk', {}],
    ['a phone', PHONE],
  ] as const)('has no fault that a checker finds, and keeps to the width of %s', async (_, options) => {
    await open(options);
    await panel().getByText('All curves as a table').first().click();
    expect(await violations(page)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(options === PHONE ? 390 : 1440);
  });
});
