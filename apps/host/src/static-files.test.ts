import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readStatic } from './static-files.ts';

let parent: string;
let folder: string;

beforeAll(() => {
  parent = mkdtempSync(join(tmpdir(), 'oddwheel-static-'));
  folder = join(parent, 'page');
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(parent, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<p>bench</p>');
  writeFileSync(join(folder, 'assets', 'a b.js'), '1');
  writeFileSync(join(folder, '.inputs'), 'hidden');
  writeFileSync(join(folder, 'notes.md'), 'no type');
  symlinkSync(join(parent, 'secret.txt'), join(folder, 'out.txt'));
  symlinkSync(parent, join(folder, 'up'));
  symlinkSync(join(folder, 'index.html'), join(folder, 'inside.html'));
});
afterAll(() => rmSync(parent, { recursive: true, force: true }));

describe('files of the page', () => {
  it.each([
    ['/', 'text/html; charset=utf-8', false],
    ['/index.html', 'text/html; charset=utf-8', false],
    ['/inside.html', 'text/html; charset=utf-8', false],
    ['/assets/a%20b.js', 'text/javascript; charset=utf-8', true],
  ])('%s is served', async (path, type, keep) => expect(await readStatic(folder, path)).toMatchObject({ type, keep }));

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets/../../secret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/index.html%00.js',
    '/%00',
    '/%',
    '/%ff',
    '/.inputs',
    '/notes.md',
    '/out.txt',
    '/up/secret.txt',
    '/c:secret.txt',
    '/assets',
    '/nothing.html',
  ])('%s is not', async (path) => expect(await readStatic(folder, path)).toBeNull());
});
