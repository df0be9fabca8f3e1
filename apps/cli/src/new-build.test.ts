import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { hashBytes } from '@oddwheel/build/document/hash';
import { packArchive } from '@oddwheel/store/archive';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOME, run } from './test-io.ts';

let cwd: string;
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'oddwheel-new-'));
});
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

describe('oddwheel new', () => {
  it('copies a demo build, byte for byte, into a folder that it makes', async () => {
    const { code, out, err } = await run(['new', 'shed/hauler', '--like', 'marsh-hauler'], { cwd });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('oddwheel check shed/hauler');
    expect(readFileSync(join(cwd, 'shed/hauler/build.json'))).toEqual(
      readFileSync(join(HOME, 'examples/marsh-hauler/build.json')),
    );
  });

  it('takes an empty folder, and says as JSON what it made', async () => {
    mkdirSync(join(cwd, 'empty'));
    const { code, out } = await run(['new', 'empty', '--json'], { cwd });
    expect(code).toBe(0);
    expect(JSON.parse(out)).toEqual({ format: 1, folder: 'empty', like: 'marsh-hauler' });
  });

  it('names the demo builds that there are when the name is wrong', async () => {
    const { code, out, err } = await run(['new', 'x', '--like', 'moon-buggy'], { cwd });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/read: {5}moon-buggy\n {4}accepted: hill-trike, marsh-hauler, rail-cart, or a file/);
  });

  it('touches no folder with files, and no file', async () => {
    mkdirSync(join(cwd, 'full'));
    writeFileSync(join(cwd, 'full', 'build.json'), 'mine');
    writeFileSync(join(cwd, 'plain'), 'mine');
    for (const folder of ['full', 'plain']) {
      const { code, err } = await run(['new', folder], { cwd });
      expect(code).toBe(2);
      expect(err).toContain('A new build goes into a folder of its own.');
    }
    expect(readFileSync(join(cwd, 'full', 'build.json'), 'utf8')).toBe('mine');
    expect(readFileSync(join(cwd, 'plain'), 'utf8')).toBe('mine');
  });

  it('takes a build that was saved as one file, byte for byte, with its log, history and pictures', async () => {
    const demo = readFileSync(join(HOME, 'examples/marsh-hauler/build.json'), 'utf8');
    const picture = new Uint8Array([0xff, 0xd8, 0xff, 0xe0]);
    const hash = hashBytes(picture);
    const lines = { log: '{"id":"a.1"}\n', history: '{"v":1}\n', runOut: '{"id":"phone.1"}\n' };
    const content = { build: demo, ...lines, pictures: new Map([[hash, picture]]) };
    writeFileSync(join(cwd, 'saved.oddwheel.zip'), packArchive(content));
    const { code, err, out } = await run(['new', 'from-file', '--like', 'saved.oddwheel.zip'], { cwd });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('Made from-file from saved.oddwheel.zip.');
    const file = (name: string) => readFileSync(join(cwd, 'from-file', name), 'utf8');
    expect(file('build.json')).toBe(demo);
    expect(file('log.ndjson')).toBe(content.log);
    expect(file('history.ndjson')).toBe(content.history);
    expect(file('true.ndjson')).toBe(content.runOut);
    expect(new Uint8Array(readFileSync(join(cwd, 'from-file/pictures', hash)))).toEqual(picture);
  });

  it('makes no folder from a file that is missing, or is no saved build', async () => {
    const missing = await run(['new', 'none', '--like', 'missing.zip'], { cwd });
    expect(missing.code).toBe(2);
    expect(missing.err).toContain('There is no such file');
    writeFileSync(join(cwd, 'wrong.zip'), 'no zip');
    const wrong = await run(['new', 'none', '--like', 'wrong.zip'], { cwd });
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/wrong\.zip: This is no whole saved file of a build\.\n {4}read: {5}6 bytes/);
    const torn = { build: '{"format": 99}', log: '', history: '', runOut: '', pictures: new Map() };
    writeFileSync(join(cwd, 'newer.zip'), packArchive(torn));
    expect((await run(['new', 'none', '--like', 'newer.zip'], { cwd })).err).toContain('newer.zip /format');
    expect(existsSync(join(cwd, 'none'))).toBe(false);
  });
});
