import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOME, run } from './test-io.ts';

let cwd: string;
beforeAll(() => {
  cwd = mkdtempSync(join(tmpdir(), 'oddwheel-open-'));
  cpSync(join(HOME, 'examples/marsh-hauler'), join(cwd, 'hauler'), { recursive: true });
});
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

/** Runs `open` until it has printed its address, asks it for the build, and tells it to stop. */
async function opened(argv: readonly string[], folder = 'hauler') {
  const stop = new AbortController();
  let hash = '';
  let out = '';
  const stdout = {
    write: (text: string) => {
      out += text;
      const url = /http:\/\/127\.0\.0\.1:\d+\//.exec(text)?.[0];
      if (url)
        fetch(new URL('api/build', url))
          .then(async (answer) => {
            hash = (await answer.json()).hash;
          })
          .finally(() => stop.abort());
    },
  };
  const ran = await run(['open', folder, '--port', '0', '--no-browser', ...argv], { cwd, stdout, stop: stop.signal });
  return { ...ran, out, hash };
}

describe('oddwheel open', () => {
  it('serves the build at the address that it prints, and ends when it is told to', async () => {
    expect(existsSync(join(HOME, 'apps/bench/dist/index.html')), 'the page must be built: npm run build').toBe(true);
    const { code, out, err, hash } = await opened([]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('The bench for hauler is at http://127.0.0.1:');
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it('with --json prints the address as one line of JSON and the rest on standard error', async () => {
    const { out, err } = await opened(['--json', '--lan']);
    expect(JSON.parse(out)).toEqual({ format: 1, url: expect.stringMatching(/^http:/) });
    expect(err).toMatch(/Pairing code: \d{6}/);
  });

  it('on a folder that is not there yet says that a build can begin, and makes nothing', async () => {
    const { code, out, err, hash } = await opened([], 'new-one');
    expect({ code, err, hash }).toEqual({ code: 0, err: '', hash: undefined });
    expect(out).toMatch(
      /^There is no build in new-one yet: begin one at http:\/\/127\.0\.0\.1:\d+\/ \(Ctrl\+C ends it\)\.$/m,
    );
    expect(existsSync(join(cwd, 'new-one'))).toBe(false);
  });

  it.each([
    [['open', '.'], 'There is no build here.'],
    [['open', '.'], 'or one that is empty or not there yet'],
    [['open', 'hauler', '--port', '99999'], 'This is not a port.'],
    [['open', 'hauler', '--port', 'x'], 'This is not a port.'],
  ])('%j is bad input', async (argv, says) => {
    const { code, out, err } = await run(argv, { cwd });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });
});
