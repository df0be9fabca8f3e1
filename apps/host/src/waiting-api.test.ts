import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createApp } from './app.ts';
import { ownHosts } from './guard.ts';
import { createPairing } from './pairing.ts';
import { type Host, startHost } from './start.ts';
import { ask, demoText, send, type TestFolders, testFolders } from './test-host.ts';
import { addWaitingApi } from './waiting-api.ts';

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
  });

  it('begins once: a second page is told so, whenever it asks, and changes nothing', async () => {
    const asked = ['first', 'second'].map((about) =>
      send(host.url, '/api/begin', { text: JSON.stringify({ ...JSON.parse(demoText()), about }) }),
    );
    const both = await Promise.all(asked);
    expect(both.map(({ status }) => status).sort()).toEqual([200, 409]);
    const build = readFileSync(join(folder, 'build.json'), 'utf8');
    const third = await send(host.url, '/api/begin', { text: demoText() });
    expect(third.status).toBe(409);
    expect(third.json.error.accepted).toMatch(/loaded again/);
    expect(readFileSync(join(folder, 'build.json'), 'utf8')).toBe(build);
  });

  it('serves a build that another program puts there meanwhile', async () => {
    mkdirSync(folder);
    writeFileSync(join(folder, 'build.json'), demoText());
    const found = JSON.parse((await ask(host.url, '/api/build')).text);
    expect(found.text).toBe(demoText());
    const edit = { base: found.hash, patches: [{ op: 'set', at: '/about', value: 'found' }], name: 'about' };
    expect((await send(host.url, '/api/edits', edit)).status).toBe(200);
    expect((await send(host.url, '/api/begin', { text: demoText() })).status).toBe(409);
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

describe('a device on the network, before there is a build', () => {
  const LAN = '192.168.7.20';

  it('sees nothing and begins nothing until it is paired', async () => {
    const pairing = createPairing(
      () => 0,
      () => {},
    );
    const texts: string[] = [];
    const app = createApp({
      pairing,
      api: (to) =>
        addWaitingApi(to, {
          begin: async (text) => {
            texts.push(text);
          },
          found: async () => null,
        }),
      benchDir: folders.benchDir,
      port: () => 4717,
      own: () => ownHosts(4717, [LAN]),
      log: () => {},
    });
    const from = async (path: string, init: RequestInit = {}): Promise<Response> =>
      app.request(
        `http://${LAN}:4717${path}`,
        {
          ...init,
          headers: {
            Host: `${LAN}:4717`,
            Origin: `http://${LAN}:4717`,
            'Content-Type': 'application/json',
            ...init.headers,
          },
        },
        { incoming: { socket: { remoteAddress: '192.168.7.31' } } },
      );
    const begin = { method: 'POST', body: JSON.stringify({ text: demoText() }) };
    expect((await from('/api/begin', begin)).status).toBe(401);
    expect((await from('/api/build')).status).toBe(401);
    expect(texts).toEqual([]);
    const body = JSON.stringify({ code: pairing.code(), device: 'phone' });
    const paired = await from('/api/pair', { method: 'POST', body });
    const Cookie = (paired.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
    expect((await from('/api/begin', { ...begin, headers: { Cookie } })).status).toBe(200);
    expect(texts).toEqual([demoText()]);
  });
});
