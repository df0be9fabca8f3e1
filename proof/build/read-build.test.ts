import { readdirSync, readFileSync } from 'node:fs';
import { applyPatches } from '@oddwheel/build/document/patch';
import { type Migration, migrate } from '@oddwheel/build/read/migrate';
import { readBuild } from '@oddwheel/build/read/read-build';
import { describe, expect, test } from 'vitest';

const fixtures = new URL('../../packages/build/fixtures/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, fixtures), 'utf8');

const faultsOf = (text: string) => {
  const result = readBuild(text);
  return result.ok ? [] : result.faults;
};

describe('a file with ten different faults', () => {
  const faults = faultsOf(read('ten-faults.json'));

  test('lists all ten with address and line, in the order of the file', () => {
    expect(faults.map((f) => `${f.code} ${f.address}`)).toEqual([
      'quantity.unit-missing /brief/engine/idle',
      'quantity.too-small /brief/engine/gears/2',
      'quantity.unit-wrong-kind /brief/engine/output/origin/y',
      'geometry.direction /brief/engine/output/direction',
      'shape.choice /brief/engine/output/sense',
      'quantity.comma-ambiguous /brief/vehicle/mass',
      'shape.unknown-key /brief/vehicle/colour',
      'tyre.size /brief/wheel/tyre',
      'reference.seat /path/stages/chain-1/from',
      'reference.row /path/stages/chain-1/chain',
    ]);
    expect(faults.every((f) => f.line !== undefined && f.column !== undefined)).toBe(true);
  });

  test('each says what was read and what is accepted', () => {
    for (const fault of faults) {
      expect(fault.problem).toMatch(/\.$/);
      expect(fault.read).not.toBe('');
      expect(fault.accepted).not.toBe('');
    }
    expect(faults.find((f) => f.address.endsWith('/from'))?.accepted).toContain('output/sprocket');
    expect(faults.find((f) => f.address.endsWith('/chain'))?.accepted).toContain('12B');
  });
});

describe('formats', () => {
  const kept = ['format-1', 'format-2', 'format-3', 'format-4'].flatMap((folder) =>
    readdirSync(new URL(`${folder}/`, fixtures)).map((name) => `${folder}/${name}`),
  );
  test.each(kept)('fixture %s still reads', (name) => {
    expect(faultsOf(read(name))).toEqual([]);
  });

  test('a build of format 1 reads as the same build of format 4', () => {
    const text = read('format-1/marsh-hauler.json');
    const old = readBuild(text);
    expect(old.ok && old.from).toBe(1);
    expect(old.ok && old.build).toEqual({ ...JSON.parse(text), format: 4 });
  });

  test('a newer format is refused by name and left alone', () => {
    const newer = read('format-4/marsh-hauler.json').replace('"format": 4', '"format": 7');
    expect(faultsOf(newer)).toMatchObject([{ code: 'format.newer', address: '/format', line: 2, read: '7' }]);
  });

  test.each([
    ['', 'empty'],
    ['[]', 'shape.type'],
    ['{}', 'format.missing'],
    ['{ "format": 0.5 }', 'format.bad'],
    ['{ "format": 1, }', 'json'],
  ])('%j is one clear fault', (text, code) => {
    const faults = faultsOf(text);
    expect(faults.length).toBe(1);
    expect(faults[0]?.code).toContain(code);
  });

  test('migrations are applied one after the other', () => {
    const steps: Migration[] = [
      { from: 1, lift: (b) => ({ ...b, renamed: b.old, old: undefined }) },
      { from: 2, lift: (b) => ({ ...b, doubled: Number(b.renamed) * 2 }) },
    ];
    const lifted = migrate({ format: 1, old: 21 }, steps, 3);
    expect(lifted).toMatchObject({ ok: true, from: 1, value: { format: 3, renamed: 21, doubled: 42 } });
    expect(migrate({ format: 1 }, steps.slice(1), 3)).toMatchObject({ ok: false, faults: [{ code: 'format.no-way' }] });
  });
});

describe('the path must lead from the engine to the wheel', () => {
  const text = read('format-2/marsh-hauler.json');
  const broken = (at: string, value: string | number | null) => {
    const patched = applyPatches(text, [value === null ? { op: 'remove', at } : { op: 'set', at, value }]);
    if (!patched.ok) throw new Error(at);
    return faultsOf(patched.text).map((f) => f.code);
  };

  test.each([
    ['/path/stages/bevel', null, ['reference.open-path']],
    ['/path/stages/chain-2/to', 'shaft-a/sprocket', ['reference.seat-taken']],
    ['/path/stages/chain-2/from', 'shaft-b/gear', ['reference.seat-kind', 'reference.seat-taken']],
    ['/path/shafts/axle-c/seats/wheel', null, ['reference.wheel']],
    ['/path/shafts/shaft-a/stock', 'no-such-bar', ['reference.entry']],
    ['/brief/engine/idle', '9000 rpm', ['geometry.idle']],
    ['/brief/engine/curve/rows/2/0', 1500, ['geometry.curve-order']],
    // Rows that were typed in turns a minute, read in radians a second.
    ['/brief/engine/curve/units/speed', 'rad/s', ['geometry.curve-redline']],
    ['/brief/engine/redline', '1300 rpm', ['geometry.curve-redline']],
    ['/path/stages/chain-1/teeth/driven', '40', ['shape.type']],
  ])('%s = %j', (at, value, codes) => {
    const found = broken(at, value);
    for (const code of codes) expect(found).toContain(code);
  });
});
