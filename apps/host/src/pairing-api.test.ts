import { validateText } from '@oddwheel/build/session';
import { memoryBuild, openMemoryStore } from '@oddwheel/store/memory';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createApp } from './app.ts';
import { addBuildApi } from './build-api.ts';
import { addEventsApi } from './events-api.ts';
import { ownHosts } from './guard.ts';
import { createHub } from './hub.ts';
import { follow } from './live.ts';
import { createPairing, type Pairing, TRIES } from './pairing.ts';
import { startHost } from './start.ts';
import { ask, demoText, type TestFolders, testFolders } from './test-host.ts';

const LAN = '192.168.7.20';
const PHONE = '192.168.7.31';

let folders: TestFolders;
beforeAll(() => {
  folders = testFolders();
});
afterAll(() => folders.remove());

describe('a device on the network', () => {
  let pairing: Pairing;
  /** Asks as a device with this address would. */
  let from: (remoteAddress: string, path: string, init?: RequestInit) => Promise<Response>;

  beforeEach(async () => {
    const store = await openMemoryStore(memoryBuild(demoText()), {
      validate: validateText,
      now: () => '2031-05-04T16:20:00Z',
    });
    const hub = createHub();
    const live = follow(store, validateText, hub, () => {});
    pairing = createPairing(
      () => 0,
      () => {},
    );
    const app = createApp({
      pairing,
      api: (app) => {
        addBuildApi(app, store, live);
        addEventsApi(app, hub, live);
      },
      benchDir: folders.benchDir,
      port: () => 4717,
      own: () => ownHosts(4717, [LAN]),
      log: () => {},
    });
    from = async (remoteAddress, path, init = {}) =>
      app.request(
        `http://${LAN}:4717${path}`,
        { ...init, headers: { Host: `${LAN}:4717`, ...init.headers } },
        {
          incoming: { socket: { remoteAddress } },
        },
      );
  });

  const pair = (code: string, device = 'phone') =>
    from(PHONE, '/api/pair', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Origin: `http://${LAN}:4717` },
      body: JSON.stringify({ code, device }),
    });

  const wrongCode = () => String((Number(pairing.code()) + 1) % 1_000_000).padStart(6, '0');

  it('sees the pairing page and nothing else', async () => {
    const page = await from(PHONE, '/');
    expect(page.status).toBe(401);
    expect(await page.text()).toContain('Pair this device');
    expect(page.headers.get('Content-Security-Policy')).toMatch(/script-src 'sha256-/);
    for (const path of ['/index.html', '/assets/page.js', '/api/build', '/api/log', '/api/events', '/api/pictures/x'])
      expect((await from(PHONE, path)).status, path).toBe(401);
    expect((await from(PHONE, '/api/edits', { method: 'POST' })).status).toBe(401);
    expect((await from(PHONE, '/api/pictures', { method: 'PUT' })).status).toBe(401);
  });

  it('gets a cookie for the right code, and is let in with it', async () => {
    const paired = await pair(pairing.code());
    expect(paired.status).toBe(200);
    const cookie = paired.headers.get('Set-Cookie') ?? '';
    expect(cookie).toMatch(/^oddwheel-4717=[\w-]{43}; .*HttpOnly.*SameSite=Strict/);
    const Cookie = cookie.split(';')[0] ?? '';
    expect((await from(PHONE, '/api/build', { headers: { Cookie } })).status).toBe(200);
    expect(await (await from(PHONE, '/', { headers: { Cookie } })).text()).toBe('<title>bench</title>');
    const made = { Cookie: `${Cookie.slice(0, -1)}${Cookie.endsWith('A') ? 'B' : 'A'}` };
    expect((await from(PHONE, '/api/build', { headers: made })).status).toBe(401);
  });

  it('is told how many tries are left, then must wait for a new code', async () => {
    const old = pairing.code();
    for (let left = TRIES - 1; left > 0; left -= 1) {
      const answer = await pair(wrongCode());
      expect(answer.status).toBe(401);
      expect((await answer.json()).error.problem).toContain(`${left} `);
    }
    const last = await pair(wrongCode());
    expect(last.status).toBe(429);
    expect(last.headers.get('Retry-After')).toBe('30');
    expect((await pair(old)).status).toBe(429);
    expect((await pair(pairing.code())).status).toBe(429);
  });

  it('must say who it is, and come from the page of this host', async () => {
    expect((await pair(pairing.code(), '')).status).toBe(400);
    const foreign = await from(PHONE, '/api/pair', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', Origin: 'http://evil.example' },
      body: JSON.stringify({ code: pairing.code(), device: 'phone' }),
    });
    expect(foreign.status).toBe(403);
  });

  it('is not asked on this machine itself', async () => {
    expect((await from('127.0.0.1', '/api/build')).status).toBe(200);
    expect((await from('::ffff:127.0.0.1', '/api/build')).status).toBe(200);
  });
});

describe('a host on the network', () => {
  it('prints a code, the address and a warning, and answers this machine unpaired', async () => {
    const lines: string[] = [];
    const host = await startHost({ ...folders, port: 0, lan: true, log: (line) => lines.push(line) });
    expect(lines.join('\n')).toMatch(/Pairing code: \d{6}/);
    expect(lines.join('\n')).toContain('Others on this network can read along');
    expect((await ask(host.url, '/api/build')).status).toBe(200);
    expect(
      (await ask(host.url, '/api/build', { headers: { Host: `10.255.255.1:${new URL(host.url).port}` } })).status,
    ).toBe(403);
    await host.close();
  });

  it('has no pairing where only this machine is served', async () => {
    const host = await startHost({ ...folders, port: 0, log: () => {} });
    const headers = { 'Content-Type': 'application/json' };
    expect((await ask(host.url, '/api/pair', { method: 'POST', headers, body: '{}' })).status).toBe(404);
    await host.close();
  });
});
