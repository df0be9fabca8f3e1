import { readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { validateText } from '@oddwheel/build/session';
import { readArchive } from '@oddwheel/store/archive';
import { memoryBuild, openMemoryStore } from '@oddwheel/store/memory';
import { PICTURE_LIMIT } from '@oddwheel/store/picture';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EDIT_LIMIT } from './request-body.ts';
import { type Host, startHost } from './start.ts';
import { ask, demoText, listenTo, send, type TestFolders, testFolders } from './test-host.ts';

const TEETH = '/path/stages/chain-1/teeth/driver';
const NOTE = '/notes';
const set = (at: string, value: unknown) => ({ op: 'set', at, value });
const silent = (): void => {};

let folders: TestFolders;
let host: Host;
let port: string;

beforeAll(async () => {
  folders = testFolders();
  host = await startHost({ ...folders, port: 0, log: silent });
  port = new URL(host.url).port;
});
afterAll(async () => {
  await host.close();
  folders.remove();
});

const onDisk = (): string => readFileSync(join(folders.folder, 'build.json'), 'utf8');
const build = async () => JSON.parse((await ask(host.url, '/api/build')).text);

describe('whom the host answers', () => {
  it.each(['evil.example', 'evil.example:80', '127.0.0.1', 'localhost:1', '[::1]'])('not Host %s', async (name) => {
    for (const path of ['/', '/api/build']) {
      const { status, text } = await ask(host.url, path, { headers: { Host: name } });
      expect(status).toBe(403);
      expect(JSON.parse(text).error.read).toBe(`Host: ${name}`);
    }
  });

  it('its own names', async () => {
    for (const name of ['127.0.0.1', 'localhost', '[::1]'])
      expect((await ask(host.url, '/', { headers: { Host: `${name}:${port}` } })).status).toBe(200);
  });

  it('no page of another origin: not to change anything, not to listen, not to read', async () => {
    const before = onDisk();
    for (const headers of [{ Origin: 'http://evil.example' }, { Origin: 'null' }, { 'Sec-Fetch-Site': 'cross-site' }]) {
      const { hash } = await build();
      const edit = { base: hash, patches: [set(TEETH, 16)], name: 'foreign' };
      expect((await send(host.url, '/api/edits', edit, headers)).status).toBe(403);
      expect((await send(host.url, '/api/undo', { base: hash }, headers)).status).toBe(403);
      expect((await send(host.url, '/api/log', { entries: [] }, headers)).status).toBe(403);
      expect((await ask(host.url, '/api/events', { headers })).status).toBe(403);
      expect((await ask(host.url, '/api/build', { headers })).status).toBe(403);
      expect((await ask(host.url, '/api/pictures', { method: 'OPTIONS', headers })).status).toBe(403);
    }
    expect(onDisk()).toBe(before);
  });

  it('no body that a form of a foreign page could send', async () => {
    const { hash } = await build();
    const body = JSON.stringify({ base: hash, patches: [set(TEETH, 16)], name: 'form' });
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x']) {
      const { status } = await ask(host.url, '/api/edits', { method: 'POST', headers: { 'Content-Type': type }, body });
      expect(status).toBe(415);
    }
    expect((await ask(host.url, '/api/edits', { method: 'POST', body })).status).toBe(415);
  });
});

describe('files of the page', () => {
  it('carry type and policy', async () => {
    const { status, headers, text } = await ask(host.url, '/');
    expect({ status, text }).toEqual({ status: 200, text: '<title>bench</title>' });
    expect(headers['content-type']).toBe('text/html; charset=utf-8');
    expect(headers['content-security-policy']).toMatch(
      /default-src 'none'.*script-src 'self';.*frame-ancestors 'none'/,
    );
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['access-control-allow-origin']).toBeUndefined();
    const script = await ask(host.url, '/assets/page.js');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(script.headers['cache-control']).toContain('immutable');
  });

  it('are all inside the folder', async () => {
    symlinkSync(join(folders.benchDir, '../secret.txt'), join(folders.benchDir, 'link.txt'));
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/%2e%2e%2fsecret.txt',
      '/assets/%2e%2e/%2e%2e/secret.txt',
      '/assets/..%5c..%5csecret.txt',
      '/index.html%00',
      '/link.txt',
      '//secret.txt',
    ]) {
      const { status, text } = await ask(host.url, path);
      expect(status, path).toBe(404);
      expect(text).not.toContain('secret"');
    }
  });
});

describe('edits', () => {
  it('are on the disk when they are answered, and are undone and redone by name', async () => {
    const before = await build();
    expect(before).toMatchObject({ text: onDisk(), undo: null, redo: null, faults: [], readOnly: false });
    const name = 'Chain 1, driver teeth 17 → 16';
    const saved = await send(host.url, '/api/edits', {
      base: before.hash,
      patches: [set(TEETH, 16)],
      name,
      device: 'phone-1',
    });
    expect(saved.status).toBe(200);
    expect(saved.json).toMatchObject({ text: onDisk(), undo: name, redo: null });
    expect(JSON.parse(onDisk()).path.stages['chain-1'].teeth.driver).toBe(16);
    expect(readFileSync(join(folders.folder, 'history.ndjson'), 'utf8')).toContain('"who":"phone-1"');

    const undone = await send(host.url, '/api/undo', { base: saved.json.hash });
    expect(undone).toMatchObject({ status: 200, json: { text: before.text, hash: before.hash, redo: name } });
    expect(onDisk()).toBe(before.text);
    const redone = await send(host.url, '/api/redo', { base: undone.json.hash });
    expect(redone.json.hash).toBe(saved.json.hash);
    expect((await send(host.url, '/api/undo', { base: redone.json.hash })).status).toBe(200);
  });

  it('from an older text are merged by address, and both values of a collision are given', async () => {
    const { hash } = await build();
    const first = await send(host.url, '/api/edits', { base: hash, patches: [set(TEETH, 16)], name: 'one' });
    expect(first.status).toBe(200);
    const beside = await send(host.url, '/api/edits', { base: hash, patches: [set('/about', 'beside')], name: 'two' });
    expect(beside.status).toBe(200);
    expect(JSON.parse(beside.json.text)).toMatchObject({ about: 'beside' });
    const against = await send(host.url, '/api/edits', { base: hash, patches: [set(TEETH, 19)], name: 'three' });
    expect(against.status).toBe(409);
    expect(against.json.conflicts).toEqual([{ address: TEETH, mine: 19, theirs: 16, base: 17 }]);
    expect(against.json).toMatchObject({ text: onDisk(), error: { read: TEETH } });
  });

  it('that would make the build faulty are refused with every fault', async () => {
    const { hash, text } = await build();
    const patches = [set('/brief/engine/idle', '1300'), set(TEETH, 2)];
    const { status, json } = await send(host.url, '/api/edits', { base: hash, patches, name: 'bad' });
    expect(status).toBe(422);
    expect(json.faults.map((fault: { address: string }) => fault.address).toSorted()).toEqual([
      '/brief/engine/idle',
      TEETH,
    ]);
    expect(json.error.problem).not.toBe('');
    expect(onDisk()).toBe(text);
  });

  it.each([
    ['[]', 'The body is not a JSON object.'],
    ['{', 'The body is not JSON.'],
    ['{}', '"base"'],
    [JSON.stringify({ base: 'x', patches: [], name: 'x' }), '"base"'],
    [JSON.stringify({ base: '0'.repeat(64), patches: [], name: 'x' }), '"patches"'],
    [JSON.stringify({ base: '0'.repeat(64), patches: [{ op: 'move', at: '/a' }], name: 'x' }), 'no patch'],
    [JSON.stringify({ base: '0'.repeat(64), patches: [set(NOTE, {})], name: ' ' }), '"name"'],
    [JSON.stringify({ base: '0'.repeat(64), patches: [set(NOTE, {})], name: 'x', device: '\n' }), '"device"'],
    [JSON.stringify({ base: '0'.repeat(64), patches: [set(NOTE, {})], name: 'x', force: true }), '"force"'],
  ])('of a wrong shape are refused: %s', async (body, says) => {
    const answer = await ask(host.url, '/api/edits', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body,
    });
    expect(answer.status).toBe(400);
    const { error } = JSON.parse(answer.text);
    expect(error.problem).toContain(says);
    expect(Object.keys(error)).toEqual(['problem', 'read', 'accepted']);
  });

  it('above 1 MiB are refused, whether they tell their length or not', async () => {
    const body = JSON.stringify({ name: 'x'.repeat(EDIT_LIMIT) });
    const headers = { 'Content-Type': 'application/json' };
    const told = await ask(host.url, '/api/edits', {
      method: 'POST',
      headers: { ...headers, 'Content-Length': String(Buffer.byteLength(body)) },
      body,
    });
    expect(told.status).toBe(413);
    expect(JSON.parse(told.text).error.accepted).toBe('at most 1 MiB');
    const untold = await ask(host.url, '/api/edits', {
      method: 'POST',
      headers: { ...headers, 'Transfer-Encoding': 'chunked' },
      body,
    });
    expect(untold.status).toBe(413);
  });
});

describe('events', () => {
  it('begin with how things stand, and follow an edit here and an edit by another program', async () => {
    const events = await listenTo(host.url);
    const start = await events.next('build');
    expect(start).toMatchObject({ hash: (await build()).hash, by: null });
    await events.next('log');

    await send(host.url, '/api/edits', {
      base: start.hash,
      patches: [set('/name', 'by-page')],
      name: 'name',
      device: 'phone-2',
    });
    const ours = await events.next('build');
    expect(ours).toMatchObject({ undo: 'name', by: 'phone-2' });
    expect(JSON.parse(ours.text).name).toBe('by-page');

    const foreign = onDisk().replace('"by-page"', '"by-editor"');
    writeFileSync(join(folders.folder, 'build.json'), foreign);
    const theirs = await events.next('build', (data) => data.text === foreign);
    expect(theirs.by).toBeNull();
    const after = await build();
    expect(after).toMatchObject({ text: foreign, hash: theirs.hash });
    const back = await send(host.url, '/api/undo', { base: after.hash });
    expect(JSON.parse(back.json.text).name).toBe('by-page');
    events.close();
  });

  it('tell of a file that another program made faulty, which is then read only', async () => {
    const good = onDisk();
    const events = await listenTo(host.url);
    await events.next('build');
    writeFileSync(join(folders.folder, 'build.json'), good.replace(/"format": \d+/, '"format": 99'));
    const told = await events.next('build', (data) => data.text.includes('"format": 99'));
    const now = await build();
    expect(now.readOnly).toBe(true);
    expect(now.faults[0].address).toBe('/format');
    const edit = await send(host.url, '/api/edits', { base: told.hash, patches: [set('/name', 'x')], name: 'x' });
    expect(edit.status).toBe(422);
    expect(onDisk()).toContain('"format": 99');
    writeFileSync(join(folders.folder, 'build.json'), good);
    await events.next('build', (data) => data.text === good);
    events.close();
  });
});

describe('log and pictures', () => {
  const entry = (id: string, value: string) => ({
    ...{ id, kind: 'reading', taken: '2031-05-04T16:20:00Z', logged: '2031-05-04T16:21:00Z', after: null },
    body: { value },
  });

  it('an entry is acknowledged once it is on the disk, and again when it comes twice', async () => {
    const events = await listenTo(host.url);
    await events.next('log');
    for (let time = 0; time < 2; time += 1)
      expect(await send(host.url, '/api/log', { entries: [entry('phone-1.1', '3 thou')] })).toEqual({
        status: 200,
        json: { acknowledged: ['phone-1.1'] },
      });
    expect(await events.next('log')).toEqual({ entries: [entry('phone-1.1', '3 thou')] });
    expect(JSON.parse((await ask(host.url, '/api/log')).text)).toEqual({
      entries: [entry('phone-1.1', '3 thou')],
      setAside: [],
    });
    expect(readFileSync(join(folders.folder, 'log.ndjson'), 'utf8').trim().split('\n')).toHaveLength(1);
    events.close();
  });

  it('what is no entry is refused, and the good ones beside it are kept', async () => {
    const { status, json } = await send(host.url, '/api/log', { entries: [entry('phone-1.2', '4 thou'), { id: 'x' }] });
    expect(status).toBe(422);
    expect(json.acknowledged).toEqual(['phone-1.2']);
    expect(json.faults.every((fault: { address: string }) => fault.address.startsWith('/1/'))).toBe(true);
    expect((await send(host.url, '/api/log', {})).status).toBe(400);
  });

  it('a picture comes back as it was sent, under the hash of its bytes', async () => {
    const png = Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex');
    const put = await ask(host.url, '/api/pictures', {
      method: 'PUT',
      headers: { 'Content-Type': 'image/png' },
      body: png,
    });
    expect(put.status).toBe(201);
    const { hash } = JSON.parse(put.text);
    const got = await fetch(new URL(`/api/pictures/${hash}`, host.url));
    expect(got.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await got.arrayBuffer())).toEqual(png);
  });

  it('no other bytes are kept, none above 25 MiB, and no path is a name', async () => {
    const put = (body: Uint8Array, type = 'image/png') =>
      ask(host.url, '/api/pictures', { method: 'PUT', headers: { 'Content-Type': type }, body });
    expect((await put(Buffer.from('<svg onload="x"/>'))).status).toBe(415);
    expect((await put(Buffer.from('89504e470d0a1a0a', 'hex'), 'text/plain')).status).toBe(415);
    expect((await put(new Uint8Array(PICTURE_LIMIT + 1))).status).toBe(413);
    for (const name of ['..%2f..%2fbuild.json', 'build.json', '0'.repeat(64), `${'0'.repeat(63)}g`])
      expect((await ask(host.url, `/api/pictures/${name}`)).status).toBe(404);
  });
});

describe('the build as one file', () => {
  it('holds the very bytes of the folder, and is named after the build', async () => {
    const answer = await fetch(new URL('/api/archive', host.url));
    expect(answer.headers.get('content-type')).toBe('application/zip');
    expect(answer.headers.get('content-disposition')).toMatch(/^attachment; filename\*=UTF-8''[\w-]+\.oddwheel\.zip$/);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    const read = readArchive(new Uint8Array(await answer.arrayBuffer()), validateText);
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const onDisk = (name: string) => readFileSync(join(folders.folder, name), 'utf8');
    expect(read.content.build).toBe(onDisk('build.json'));
    expect(read.content.log).toBe(onDisk('log.ndjson'));
    expect(read.content.history).toBe(onDisk('history.ndjson'));
    const pictures = readdirSync(join(folders.folder, 'pictures'));
    expect(pictures.length).toBeGreaterThan(0);
    expect([...read.content.pictures.keys()]).toEqual(pictures);
  });

  it('is not made while a picture in the folder is damaged', async () => {
    const [name = ''] = readdirSync(join(folders.folder, 'pictures'));
    const file = join(folders.folder, 'pictures', name);
    const before = readFileSync(file);
    writeFileSync(file, 'torn');
    const { status, text } = await ask(host.url, '/api/archive');
    writeFileSync(file, before);
    expect(status).toBe(422);
    expect(JSON.parse(text).error.problem).toContain(name);
  });
});

describe('addresses', () => {
  it('that there are none of are refused', async () => {
    expect((await ask(host.url, '/api/nothing')).status).toBe(404);
    expect((await send(host.url, '/index.html', {})).status).toBe(405);
  });

  it('a port that is taken is told', async () => {
    await expect(startHost({ ...folders, port: Number(port), log: silent })).rejects.toThrow(`Port ${port} is taken`);
  });

  it('without a built page the host does not start', async () => {
    await expect(startHost({ ...folders, benchDir: folders.folder, port: 0, log: silent })).rejects.toThrow(
      'npm run build',
    );
  });
});

describe('a store in memory', () => {
  it('is served the same way', async () => {
    const store = await openMemoryStore(memoryBuild(demoText()), {
      validate: validateText,
      now: () => '2031-05-04T16:20:00Z',
    });
    const other = await startHost({ store, benchDir: folders.benchDir, port: 0, log: silent });
    const { hash } = JSON.parse((await ask(other.url, '/api/build')).text);
    const saved = await send(other.url, '/api/edits', { base: hash, patches: [set(TEETH, 16)], name: 'teeth' });
    expect(saved).toMatchObject({ status: 200, json: { undo: 'teeth' } });
    await other.close();
    expect((await store.read()).hash).toBe(saved.json.hash);
    await store.close();
  });
});
