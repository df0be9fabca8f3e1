import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Host, startHost } from './start.ts';
import { ask, demoText, send, type TestFolders, testFolders } from './test-host.ts';

let folders: TestFolders;
let folder: string;
let host: Host;

beforeEach(async () => {
  folders = testFolders();
  folder = join(folders.folder, '..', 'new-build');
  host = await startHost({ folder, benchDir: folders.benchDir, port: 0, log: () => {} });
});
afterEach(async () => {
  await host.close();
  folders.remove();
});

describe('a folder without a build', () => {
  it('serves the page, says that there is no build, and makes nothing by itself', async () => {
    expect((await ask(host.url, '/')).status).toBe(200);
    const { status, text } = await ask(host.url, '/api/build');
    expect(status).toBe(404);
    expect(JSON.parse(text).error.read).toBe('store.no-build');
    expect(existsSync(folder)).toBe(false);
  });

  it('begins a build from its text, and serves it from then on', async () => {
    const begun = await send(host.url, '/api/begin', { text: demoText() });
    expect(begun.status).toBe(200);
    expect(readFileSync(join(folder, 'build.json'), 'utf8')).toBe(demoText());
    const build = JSON.parse((await ask(host.url, '/api/build')).text);
    expect(build.text).toBe(demoText());
    const edit = { base: build.hash, patches: [{ op: 'set', at: '/about', value: 'begun here' }], name: 'about' };
    expect((await send(host.url, '/api/edits', edit)).status).toBe(200);
    // Begun once: the address is gone with the need for it.
    expect((await send(host.url, '/api/begin', { text: demoText() })).status).toBe(404);
  });

  it('refuses a text with faults, naming them, and one from another page', async () => {
    const faulty = await send(host.url, '/api/begin', { text: '{"format": 1}' });
    expect(faulty.status).toBe(422);
    expect(faulty.json.faults.length).toBeGreaterThan(0);
    expect((await send(host.url, '/api/begin', { text: 5 })).status).toBe(400);
    const foreign = await send(host.url, '/api/begin', { text: demoText() }, { Origin: 'http://evil.example' });
    expect(foreign.status).toBe(403);
    expect(existsSync(folder)).toBe(false);
  });

  it('does not begin where another program has put files meanwhile', async () => {
    mkdirSync(folder);
    writeFileSync(join(folder, 'notes.txt'), 'mine');
    expect((await send(host.url, '/api/begin', { text: demoText() })).status).toBe(409);
    expect(readFileSync(join(folder, 'notes.txt'), 'utf8')).toBe('mine');
    rmSync(folder, { recursive: true });
  });
});
