import { appendFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { type Host, startHost } from './start.ts';
import { ask, listenTo, send, type TestFolders, testFolders } from './test-host.ts';

let folders: TestFolders;
let host: Host;

beforeEach(async () => {
  folders = testFolders();
  host = await startHost({ folder: folders.folder, benchDir: folders.benchDir, port: 0, log: () => undefined });
});
afterEach(async () => {
  await host.close();
  folders.remove();
});

const TAKEN = '2031-05-04T16:20:00Z';
const part = (id: string, name: string, seat = '0 mm') => ({
  ...{ id, kind: 'true-part', taken: TAKEN, logged: TAKEN, after: null },
  body: { part: 'shaft', name, seats: { a: seat, b: '200 mm' }, goal: { station: '300 mm', tir: '3 thou' } },
});
const file = () => join(folders.folder, 'true.ndjson');
const kept = async (): Promise<string> => JSON.parse((await ask(host.url, '/api/run-out')).text).text;

it('entries are on the disk when they are acknowledged, each once, and every page is told', async () => {
  const events = await listenTo(host.url);
  await events.next('runOut');
  for (let i = 0; i < 2; i += 1)
    expect(await send(host.url, '/api/run-out', { entries: [part('phone.1', 'A')] })).toEqual({
      status: 200,
      json: { acknowledged: ['phone.1'], refused: [] },
    });
  await events.next('runOut');
  expect(readFileSync(file(), 'utf8').trimEnd().split('\n')).toHaveLength(1);
  expect(await kept()).toBe(readFileSync(file(), 'utf8'));
  events.close();
});

it('a wrong entry is told with its place, and the others are kept', async () => {
  const entries = [part('phone.1', 'A', 'twenty'), part('phone.2', 'B')];
  const { status, json } = await send(host.url, '/api/run-out', { entries });
  expect(status).toBe(200);
  expect(json.acknowledged).toEqual(['phone.2']);
  expect(json.refused).toMatchObject([{ address: '/0/body/seats/a', read: '"twenty"' }]);
  expect((await send(host.url, '/api/run-out', {})).status).toBe(400);
});

it('pages are told of what another program adds to the file', async () => {
  const events = await listenTo(host.url);
  await events.next('runOut');
  appendFileSync(file(), `${JSON.stringify(part('desk.1', 'C'))}\n`);
  await events.next('runOut');
  expect(await kept()).toContain('desk.1');
  events.close();
});
