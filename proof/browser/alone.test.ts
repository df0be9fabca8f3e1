/** The page as one HTML file from the disk, without a network, in a real browser; and as a plain folder. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { validateText } from '@oddwheel/build/session';
import { packArchive, readArchive } from '@oddwheel/store/archive';
import { openDiskStore } from '@oddwheel/store/disk';
import type { BuildContent } from '@oddwheel/store/store';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBrowser } from './bench.ts';

const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const FILE = pathToFileURL(fromRoot('apps/bench/dist-alone/oddwheel.html')).href;
const TEETH = 'Chain 1, driver teeth 17 → 16';

let browser: Browser;
let folder: string;
let context: BrowserContext;
let errors: string[];
let requests: string[];

beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(async () => {
  await browser?.close();
});
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'oddwheel-alone-'));
  errors = [];
  requests = [];
  context = await newContext();
});
afterEach(async () => {
  await context.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A browser of its own, cut off from every network. */
async function newContext(): Promise<BrowserContext> {
  return browser.newContext({ viewport: { width: 1440, height: 1000 }, locale: 'en-GB', offline: true });
}

/**
 * Opens a page.
 * @param inWorker a script that its worker runs first; the single file makes its worker out of itself
 */
async function open(of: BrowserContext, url = FILE, inWorker = ''): Promise<Page> {
  const page = await of.newPage();
  await page.addInitScript((first) => {
    const { Blob: Plain } = window;
    const Changed = class extends Plain {
      constructor(parts: BlobPart[] = [], options: BlobPropertyBag = {}) {
        super(/javascript/.test(options.type ?? '') ? [first, ...parts] : parts, options);
      }
    };
    if (first !== '') Object.defineProperty(window, 'Blob', { value: Changed });
  }, inWorker);
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('request', (request) => requests.push(request.url()));
  await page.goto(url);
  return page;
}

const ready = (page: Page) => page.locator('.path-table').waitFor();
const saved = (page: Page) => page.locator('.saved', { hasText: /^saved \d\d:\d\d$/ }).waitFor();
const ratio = (page: Page, text: string) => page.locator('.path-table', { hasText: text }).waitFor();

/** Begins a build from the demo, on the empty sheet. */
async function beginDemo(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /marsh.hauler/i })
    .first()
    .click();
  await ready(page);
}

async function typeField(page: Page, element: string, address: string, value: string): Promise<void> {
  await page.locator('.path-table').getByRole('button', { name: element, exact: true }).click();
  const field = page.locator(`[id="field:${address}"]`);
  await field.fill(value);
  await field.press('Enter');
}

const typeTeeth = (page: Page, teeth: string) => typeField(page, 'Chain 1', '/path/stages/chain-1/teeth/driver', teeth);

/** Saves the build as one file through the page, and gives its path. */
async function saveFile(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'Build', exact: true }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('dialog').getByRole('button', { name: 'Save as one file' }).click();
  const file = await download;
  const path = join(folder, file.suggestedFilename());
  await file.saveAs(path);
  await page.keyboard.press('Escape');
  return path;
}

function contentOf(path: string): BuildContent {
  const read = readArchive(new Uint8Array(readFileSync(path)), validateText);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.content;
}

describe('one HTML file from the disk, with the network cut', () => {
  it('begins from a demo, keeps every edit over a reload, and takes it back after that', async () => {
    const page = await open(context);
    await beginDemo(page);
    await page.locator('.saved', { hasText: 'kept in this browser' }).waitFor();
    await typeTeeth(page, '16');
    await saved(page);
    await page.reload();
    await ratio(page, '16 : 30');
    await page
      .locator('.head')
      .getByRole('button', { name: `Undo ${TEETH}` })
      .click();
    await ratio(page, '17 : 30');
    await page
      .locator('.head')
      .getByRole('button', { name: `Redo ${TEETH}` })
      .click();
    await ratio(page, '16 : 30');
    await page.locator('.finding-button').first().click();
    await page.locator('.working math').first().waitFor();
    // Nothing but the file itself is ever asked for, and its own parts out of itself.
    expect(requests.filter((url) => !url.startsWith(FILE) && !/^(blob|data):/.test(url))).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('goes as one file into another browser, and into a folder of the host and back, with the same bytes', async () => {
    const page = await open(context);
    await beginDemo(page);
    await typeTeeth(page, '16');
    await saved(page);
    const path = await saveFile(page);
    expect(path).toMatch(/[\w-]+\.oddwheel\.zip$/);
    const content = contentOf(path);
    expect(JSON.parse(content.build).path.stages['chain-1'].teeth.driver).toBe(16);
    expect(content.history).toContain(TEETH);

    // Another browser that knows nothing of it.
    const elsewhere = await newContext();
    const other = await open(elsewhere);
    await other.getByLabel('Open a saved file').setInputFiles(path);
    await ratio(other, '16 : 30');
    const again = await saveFile(other);
    expect(readFileSync(again)).toEqual(readFileSync(path));
    await other
      .locator('.head')
      .getByRole('button', { name: `Undo ${TEETH}` })
      .click();
    await ratio(other, '17 : 30');
    await elsewhere.close();

    // A folder of the host, which adds a reading and a picture, and back into the page.
    const command = fromRoot('apps/cli/dist/oddwheel.mjs');
    execFileSync(process.execPath, [command, 'new', 'hauler', '--like', path], { cwd: folder });
    const build = join(folder, 'hauler');
    expect(readFileSync(join(build, 'build.json'), 'utf8')).toBe(content.build);
    expect(readFileSync(join(build, 'history.ndjson'), 'utf8')).toBe(content.history);
    const store = await openDiskStore(build, { validate: validateText, now: () => '2031-05-04T10:00:00Z' });
    const reading = { id: 'a.1', kind: 'reading', taken: '2031-05-04T09:00:00Z', logged: '2031-05-04T09:00:01Z' };
    await store.append([{ ...reading, after: null, body: { tir: '4 thou' } }]);
    await store.putPicture(new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]));
    const onDisk = await store.content();
    await store.close();
    const fromHost = join(folder, 'from-host.oddwheel.zip');
    writeFileSync(fromHost, packArchive(onDisk));

    await page.getByRole('button', { name: 'Build', exact: true }).click();
    await page.getByLabel('Open a saved file').setInputFiles(fromHost);
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await ratio(page, '16 : 30');
    const back = contentOf(await saveFile(page));
    // Node reads files into a kind of array of its own; the bytes are what counts.
    const plain = new Map([...onDisk.pictures].map(([hash, bytes]) => [hash, new Uint8Array(bytes)]));
    expect(back).toEqual({ ...onDisk, pictures: plain });
    expect(back.log).toBe(readFileSync(join(build, 'log.ndjson'), 'utf8'));
    expect([...back.pictures.keys()]).toEqual(readdirSync(join(build, 'pictures')));
    expect(errors).toEqual([]);
  });

  it('in two tabs on one build: one follows the other, and only a field that both changed is asked about', async () => {
    const one = await open(context);
    await beginDemo(one);
    const two = await open(context);
    // This one hears of no other tab, as one does that the browser has put to sleep.
    const deaf = await open(
      context,
      FILE,
      'self.BroadcastChannel = class extends EventTarget { postMessage() {} close() {} };',
    );
    await ratio(deaf, '17 : 30');
    await ratio(two, '17 : 30');
    await typeTeeth(one, '16');
    await ratio(two, '16 : 30');

    await typeField(deaf, 'Chain 2', '/path/stages/chain-2/links', '88');
    // What stood saved before is no sign that this is.
    await deaf
      .locator('.head')
      .getByRole('button', { name: /^Undo .*links/ })
      .waitFor();
    await saved(deaf);
    await ratio(deaf, '16 : 30');
    expect(await deaf.locator('.conflicts').count()).toBe(0);

    await typeTeeth(one, '15');
    await ratio(one, '15 : 30');
    await saved(one);
    await typeTeeth(deaf, '19');
    const row = deaf.locator('.conflicts tbody tr');
    await row.waitFor();
    expect(await row.count()).toBe(1);
    expect(await row.textContent()).toMatch(/driver teeth.*16.*19.*15/i);
    await ratio(deaf, '15 : 30');
    await row.getByRole('button', { name: /^Keep mine/ }).click();
    await ratio(deaf, '19 : 30');
    await saved(deaf);
    await one.reload();
    await ratio(one, '19 : 30');
    expect(errors).toEqual([]);
  });

  it('keeps several builds: the same name gets a number, and one deleted can be put back until the page closes', async () => {
    const page = await open(context);
    await beginDemo(page);
    await typeTeeth(page, '16');
    await saved(page);
    const dialog = page.getByRole('dialog', { name: 'Build' });
    const menu = () => page.getByRole('button', { name: 'Build', exact: true }).click();
    await menu();
    await dialog.getByRole('button', { name: 'New', exact: true }).click();
    await dialog.waitFor({ state: 'detached' });
    await beginDemo(page);
    await ratio(page, '17 : 30');
    await menu();
    const names = () => dialog.locator('.kept-name').allTextContents();
    await expect.poll(names).toHaveLength(2);
    const [first = '', second] = await names();
    expect(second).toBe(`${first} (2)`);
    await dialog.getByRole('button', { name: `Open ${first}`, exact: true }).click();
    await ratio(page, '16 : 30');

    await menu();
    await dialog.getByRole('button', { name: `Delete ${first}`, exact: true }).click();
    await dialog.getByRole('button', { name: 'Keep it' }).click();
    await dialog.getByRole('button', { name: `Delete ${first}`, exact: true }).click();
    await dialog.getByRole('button', { name: 'Delete it' }).click();
    await dialog.getByText('gone when this page closes').waitFor();
    await dialog.getByRole('button', { name: `Put back ${first}`, exact: true }).click();
    // Until it is back, the other one goes by this name.
    await expect.poll(names).toEqual([first, `${first} (2)`]);
    await dialog.getByRole('button', { name: `Open ${first}`, exact: true }).click();
    await ratio(page, '16 : 30');
    await page
      .locator('.head')
      .getByRole('button', { name: `Undo ${TEETH}` })
      .waitFor();
    expect(errors).toEqual([]);
  });

  it('says why a file cannot be opened, and leaves everything as it was', async () => {
    const page = await open(context);
    await beginDemo(page);
    await page.getByRole('button', { name: 'Build', exact: true }).click();
    const newer = packArchive({ build: '{"format": 99}', history: '', log: '', runOut: '', pictures: new Map() });
    for (const [name, bytes, says] of [
      ['notes.zip', new TextEncoder().encode('not a zip'), 'no whole saved file of a build'],
      ['newer.zip', newer, '/format'],
    ] as const) {
      writeFileSync(join(folder, name), bytes);
      await page.getByLabel('Open a saved file').setInputFiles(join(folder, name));
      await page.getByRole('alert').getByText(`${name} was not opened.`).waitFor();
      expect(await page.getByRole('alert').textContent()).toContain(says);
    }
    await page.keyboard.press('Escape');
    await ratio(page, '17 : 30');
    expect(errors).toEqual([]);
  });

  it('where the browser keeps nothing, says so for as long as the page is open, and saves as one file', async () => {
    // What some browsers do for a page from the disk.
    const none = 'Object.defineProperty(self, "indexedDB", { value: undefined });';
    const page = await open(context, FILE, none);
    await beginDemo(page);
    await page.getByText('This browser keeps nothing for this page').waitFor();
    await typeTeeth(page, '16');
    await page
      .locator('.head')
      .getByRole('button', { name: `Undo ${TEETH}` })
      .waitFor();
    const content = contentOf(await saveFile(page));
    expect(JSON.parse(content.build).path.stages['chain-1'].teeth.driver).toBe(16);
    await page.reload();
    await page.getByLabel('Open a saved file').waitFor();
    expect(errors).toEqual([]);
  });
});

describe('the same page as a folder on a plain server, below any path', () => {
  const TYPES: Readonly<Record<string, string>> = {
    ...{ '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css' },
    ...{ '.svg': 'image/svg+xml', '.woff2': 'font/woff2' },
  };
  let server: Server;
  beforeAll(async () => {
    server = createServer((request, response) => {
      const path = /^\/some\/where\/([\w./-]*)$/.exec(request.url ?? '')?.[1];
      try {
        if (path === undefined) throw new Error('elsewhere');
        const name = path === '' ? 'index.html' : path;
        const bytes = readFileSync(join(fromRoot('apps/bench/dist'), name));
        response.writeHead(200, { 'Content-Type': TYPES[extname(name)] ?? 'application/octet-stream' }).end(bytes);
      } catch {
        response.writeHead(404).end('none');
      }
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  });
  afterAll(() => new Promise((resolve) => server.close(resolve)));

  it('keeps its builds in the browser too', async () => {
    await context.setOffline(false);
    const { port } = server.address() as AddressInfo;
    const page = await open(context, `http://127.0.0.1:${port}/some/where/`);
    await beginDemo(page);
    await typeTeeth(page, '16');
    await saved(page);
    await page.reload();
    await ratio(page, '16 : 30');
    // That there is no host here is found out by asking for one.
    expect(errors.filter((error) => !error.includes('404'))).toEqual([]);
  });
});
