import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../test-io.ts';

let home = '';
let folder = '';

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'oddwheel-true-'));
  folder = join(home, 'hauler');
  expect((await run(['new', folder])).code).toBe(0);
});
afterAll(() => rm(home, { recursive: true, force: true }));

const PART = {
  ...{ part: 'jackshaft', seats: { a: '0 mm', b: '200 mm' }, goal: { station: '300 mm', tir: '3 thou' } },
  weld: {
    ...{ mode: 'correct', station: '220 mm', steel: 'E355', hardness: 'none', coating: 'none' },
    ...{ smallest: '3 mm', largest: '25 mm' },
  },
};
const SET = { part: 'jackshaft', setup: 'own bearings', unit: 'thou', step: 0.5, sign: 'out' };
const add = (body: object, ...more: string[]) => run(['true', 'add', folder, '--body', JSON.stringify(body), ...more]);

describe('true', () => {
  it('takes a part and sets in, from a file and from the body, and tells the next bead', async () => {
    expect((await add(PART)).out).toBe('Kept as desk.1.\n');
    const dial = join(home, 'dial.csv');
    await writeFile(dial, 'mark,dial\n0,0\n90,0\n180,0\n270,0\n');
    for (const station of ['0 mm', '200 mm']) expect((await add({ ...SET, station }, '--readings', dial)).code).toBe(0);
    const early = await run(['true', 'next', folder]);
    expect(early.out).toContain('Missing: Measure the station that matters, at 300 mm.');
    await writeFile(dial, '0 20\n90 0\n180 -20\n270 0\n');
    expect((await add({ ...SET, station: '300 mm' }, '--readings', dial)).code).toBe(0);
    const show = await run(['true', 'show', folder]);
    expect(show.out).toContain('TIR 40');
    expect(show.out).toContain('high spot at 12:00');
    const next = await run(['true', 'next', folder]);
    expect(next.out).toMatch(/Weld a bead \d+.mm long at 6:00/);
    expect(next.out).toContain('never through bearings');
    const json = JSON.parse((await run(['true', 'next', folder, '--json'])).out);
    expect(json.parts[0].advice.bead.clock).toBeCloseTo(Math.PI, 9);
  });

  it('strikes out, and the line stays in the file', async () => {
    expect((await run(['true', 'add', folder, '--strike', 'desk.4'])).code).toBe(0);
    expect((await run(['true', 'next', folder])).out).toContain('Missing: Measure the station that matters');
    expect(await readFile(join(folder, 'true.ndjson'), 'utf8')).toContain('"id":"desk.4"');
  });

  it('names what is wrong and adds nothing', async () => {
    const before = await readFile(join(folder, 'true.ndjson'), 'utf8');
    const wrong = await add({ ...SET, station: '300', readings: [] });
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('/station');
    expect(wrong.err).toContain('4 to 72 readings');
    expect((await run(['true', 'add', folder, '--body', 'not json'])).code).toBe(2);
    const dial = join(home, 'bad.csv');
    await writeFile(dial, '0 1\n90 x\n');
    const line = await add({ ...SET, station: '300 mm' }, '--readings', dial);
    expect(line.err).toContain('(2:1)');
    expect((await add(SET, '--readings', join(home, 'none.csv'))).err).toContain('cannot be read');
    expect(await readFile(join(folder, 'true.ndjson'), 'utf8')).toBe(before);
  });

  it('says which parts there are, which units, and where a build is missing', async () => {
    expect((await run(['true', 'show', folder, '--part', 'axle'])).err).toContain('jackshaft');
    expect((await run(['true', 'show', folder, '--unit', 'feet'])).err).toContain('thou, mm, µm');
    expect((await run(['true', 'show', home])).code).toBe(2);
    expect((await run(['true', 'show', folder, '--unit', 'mm', '--json'])).code).toBe(0);
  });
});
