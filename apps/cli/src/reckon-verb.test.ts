import { listMethods } from '@oddwheel/build/reckon';
import { describe, expect, it } from 'vitest';
import { run } from './test-io.ts';

describe('oddwheel reckon', () => {
  it('names every method with what it gives', async () => {
    const { code, out } = await run(['reckon', '--list']);
    expect(code).toBe(0);
    for (const { id } of listMethods()) expect(out).toMatch(new RegExp(`^${id.replaceAll('.', '\\.')} `, 'm'));
    const json = JSON.parse((await run(['reckon', '--list', '--json'])).out);
    expect(json).toEqual({ format: 1, methods: listMethods() });
  });

  it('prints the JSON Schemas of every method', async () => {
    for (const { id } of listMethods()) {
      const { code, out } = await run(['reckon', id, '--schema']);
      expect(code).toBe(0);
      expect(Object.keys(JSON.parse(out))).toEqual(['input', 'output']);
    }
  });

  it('names everything that a method wants when it gets nothing', async () => {
    const { code, out, err } = await run(['reckon', 'chain.length']);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^chain\.length \w+: /m);
    expect(err).toMatch(/accepted: /);
  });

  it('refuses input that is no JSON', async () => {
    const { code, err } = await run(['reckon', 'chain.length'], { stdin: '{"pitch": ' });
    expect(code).toBe(2);
    expect(err).toContain('Standard input is not JSON');
  });

  it('names the nearest methods when there is none of that name', async () => {
    const { code, err } = await run(['reckon', 'chain.lenght']);
    expect(code).toBe(2);
    expect(err).toContain('chain.length');
    expect((await run(['reckon'])).code).toBe(2);
  });
});
