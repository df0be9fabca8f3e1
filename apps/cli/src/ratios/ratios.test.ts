import { describe, expect, it } from 'vitest';
import { run } from '../test-io.ts';

const ratios = (...argv: readonly string[]) => run(['ratios', ...argv]);

describe('oddwheel ratios', () => {
  it('lists the best trains, as a table and as JSON', async () => {
    const { code, out } = await ratios('examples/hill-trike', '--best', '3');
    expect(code).toBe(0);
    expect(out).toContain('Looked for: 5.333 to 6.611.');
    expect(out).toContain('18:42 17:45');
    expect(out).toContain('licensed practice decide');
    expect(out).toContain('Lowest reserve against breaking');
    expect(out).toContain('Ask for hardened teeth');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const json = JSON.parse((await ratios('examples/hill-trike', '--best', '3', '--json')).out);
    expect(json.trains).toHaveLength(3);
    expect(json.trains[0].path).toBeCloseTo((42 / 18) * (45 / 17), 12);
  });

  it.each(['marsh-hauler', 'rail-cart'])('keeps its lines within 100 columns: %s', async (name) => {
    const { out } = await ratios(`examples/${name}`);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });

  it('prints what other teeth would do', async () => {
    const { code, out } = await ratios('examples/hill-trike', '--swap', 'chain/driver', '--teeth', '16..18');
    expect(code).toBe(0);
    expect(out).toMatch(/17 drawn \(1\)/);
    expect(out).not.toContain('Chain, driven');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
    const rows = JSON.parse(
      (await ratios('examples/hill-trike', '--swap', 'chain/driver', '--teeth', '16..18', '--json')).out,
    );
    expect(rows.map(({ teeth }: { teeth: number }) => teeth)).toEqual([16, 17, 18]);
  });

  it('names what it cannot read, all at once', async () => {
    const { code, err } = await ratios(
      'examples/hill-trike',
      '--best',
      'many',
      '--order',
      'ratio,ratio',
      '--teeth',
      '9',
      '--speed',
      'fast',
    );
    expect(code).toBe(2);
    for (const at of ['--best', '--order', '--teeth', '--speed']) expect(err).toContain(at);
    const other = await ratios('examples/hill-trike', '--swap', 'nothing');
    expect(other.code).toBe(2);
    expect(other.err).toContain('a stage with teeth is accepted: spur, chain');
  });
});
