import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { run } from './test-io.ts';
import { textWidth } from './text-width.ts';
import { VERSION } from './version.ts';

describe('oddwheel', () => {
  it('prints its version, the one of the package', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
    expect(VERSION).toBe(version);
    expect(await run(['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
  });

  it.each([[[]], [['new']], [['check']], [['hold']], [['open']], [['reckon']]])(
    '%j --help shows an example',
    async (verb) => {
      const { code, out, err } = await run([...verb, '--help']);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      expect(out).toMatch(/Examples?:\n {2}oddwheel /);
      for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(100);
    },
  );

  it.each([
    [['prove'], "unknown command 'prove'"],
    [['check', '--fast'], "unknown option '--fast'"],
    [['check', 'a', 'b'], 'too many arguments'],
    [['new'], "missing required argument 'folder'"],
    [['reckon', '--list', '--schema'], 'cannot be used with'],
  ])('%j is bad usage: exit code 2, said on standard error', async (argv, says) => {
    const { code, out, err } = await run(argv);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
  });

  it('without a verb shows what there is, as bad usage', async () => {
    const { code, out, err } = await run([]);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('check');
  });
});
