import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
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
    expect(err).toMatch(/read: {5}moon-buggy\n {4}accepted: hill-trike, marsh-hauler, rail-cart/);
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
});
