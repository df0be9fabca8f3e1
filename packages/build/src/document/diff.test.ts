/** Differences by address, and merging by address. The referee for a difference is `patchValue`. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffJson, mergePatches, overlaps } from './diff.ts';
import { equalJson, type Json } from './json.ts';
import { applyPatches } from './patch.ts';
import { patchValue } from './patch-value.ts';

const key = fc.constantFrom('a', 'b', 'c', 'd/e');
const { json } = fc.letrec<{ json: Json }>((tie) => ({
  json: fc.oneof(
    { maxDepth: 4 },
    fc.integer({ min: 0, max: 3 }),
    fc.array(tie('json'), { maxLength: 3 }),
    fc.dictionary(key, tie('json'), { maxKeys: 3, noNullPrototype: true }),
  ),
}));

describe('differences', () => {
  const before = { path: { c1: { teeth: 17, rows: [1, 2] }, c2: {} } };

  it.each<[string, Json, ReturnType<typeof diffJson>]>([
    ['nothing', before, []],
    [
      'one value',
      { path: { c1: { teeth: 19, rows: [1, 2] }, c2: {} } },
      [{ op: 'set', at: '/path/c1/teeth', value: 19 }],
    ],
    [
      'a row of as many',
      { path: { c1: { teeth: 17, rows: [1, 3] }, c2: {} } },
      [{ op: 'set', at: '/path/c1/rows/1', value: 3 }],
    ],
    [
      'a row more',
      { path: { c1: { teeth: 17, rows: [1, 2, 3] }, c2: {} } },
      [{ op: 'set', at: '/path/c1/rows', value: [1, 2, 3] }],
    ],
    ['a part away', { path: { c1: { teeth: 17, rows: [1, 2] } } }, [{ op: 'remove', at: '/path/c2' }]],
    [
      'parts between and after, each with its place',
      { path: { c1: { teeth: 17, rows: [1, 2] }, x: 1, y: 2, c2: {}, z: 3 } },
      [
        { op: 'set', at: '/path/x', value: 1, before: 'c2' },
        { op: 'set', at: '/path/y', value: 2, before: 'c2' },
        { op: 'set', at: '/path/z', value: 3 },
      ],
    ],
    ['another kind of thing', 5, [{ op: 'set', at: '', value: 5 }]],
  ])('%s', (_name, after, patches) => {
    expect(diffJson(before, after)).toEqual(patches);
  });

  it('turn any value into any other, in the text too, and equal values have none', () => {
    fc.assert(
      fc.property(json, json, (a, b) => {
        const patches = diffJson(a, b);
        expect(patchValue(a, patches)).toEqual({ ok: true, value: b });
        const text = applyPatches(JSON.stringify(a, null, 2), patches);
        expect(text.ok && JSON.parse(text.text)).toEqual(b);
        expect(patches.length === 0).toBe(equalJson(a, b));
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe('addresses that meet', () => {
  it.each<[string, string, boolean]>([
    ['/a/b', '/a/b', true],
    ['/a', '/a/b', true],
    ['/a/b', '/a', true],
    ['', '/a', true],
    ['/a/b', '/a/bc', false],
    ['/a/b', '/a/c', false],
  ])('"%s" and "%s": %s', (a, b, meet) => {
    expect(overlaps(a, b)).toBe(meet);
  });
});

describe('merging', () => {
  const base = { c1: { teeth: 17, pitch: '1/2 in' }, c2: { teeth: 40 }, rows: [1, 2, 3] };

  it('keeps both sides when they changed different addresses', () => {
    expect(
      mergePatches(
        base,
        [{ op: 'set', at: '/c1/teeth', value: 19 }],
        [
          { op: 'set', at: '/c1/pitch', value: '5/8 in' },
          { op: 'remove', at: '/c2' },
        ],
      ),
    ).toEqual({ ok: true, clean: [{ op: 'set', at: '/c1/teeth', value: 19 }], conflicts: [] });
  });

  it('names each address that both changed, with all three values', () => {
    expect(
      mergePatches(
        base,
        [
          { op: 'set', at: '/c1/teeth', value: 19 },
          { op: 'set', at: '/rows/0', value: 9 },
        ],
        [{ op: 'set', at: '/c1/teeth', value: 21 }],
      ),
    ).toEqual({
      ok: true,
      clean: [{ op: 'set', at: '/rows/0', value: 9 }],
      conflicts: [{ address: '/c1/teeth', mine: 19, theirs: 21, base: 17 }],
    });
  });

  it('a change inside a part that the other removed is a conflict at the part', () => {
    expect(
      mergePatches(
        base,
        [
          { op: 'set', at: '/c1/teeth', value: 19 },
          { op: 'set', at: '/c1/pitch', value: '5/8 in' },
        ],
        [{ op: 'remove', at: '/c1' }],
      ),
    ).toEqual({
      ok: true,
      clean: [],
      conflicts: [{ address: '/c1', mine: { teeth: 19, pitch: '5/8 in' }, base: base.c1 }],
    });
  });

  it('the same change on both sides is no conflict and nothing to do', () => {
    const same = [{ op: 'set', at: '/c2/teeth', value: 42 }] as const;
    expect(mergePatches(base, same, same)).toEqual({ ok: true, clean: [], conflicts: [] });
  });

  it('a row put in on one side and a row changed on the other is a conflict: the index means another row', () => {
    const merged = mergePatches(
      base,
      [{ op: 'set', at: '/rows/0', value: 0, before: '0' }],
      [{ op: 'set', at: '/rows/2', value: 9 }],
    );
    expect(merged.ok && merged.conflicts.map(({ address }) => address)).toEqual(['/rows']);
  });

  it('two new groups stand beside each other; where they meet within, all of it is a conflict', () => {
    const add = (value: Json) => [{ op: 'set', at: '/pictures', value }] as const;
    const mine = add({ phone: { name: 'left' }, both: { of: 'engine' } });
    expect(mergePatches(base, mine, add({ desk: { name: 'right' }, both: { name: 'rear' } }))).toEqual({
      ok: true,
      clean: [
        { op: 'set', at: '/pictures/phone', value: { name: 'left' } },
        { op: 'set', at: '/pictures/both/of', value: 'engine' },
      ],
      conflicts: [],
    });
    const met = mergePatches(base, mine, add({ desk: 1, both: { of: 'wheel' } }));
    expect(met.ok && [met.clean, met.conflicts.map(({ address }) => address)]).toEqual([[], ['/pictures']]);
  });

  it('patches that do not fit the base are faults', () => {
    expect(mergePatches(base, [{ op: 'remove', at: '/c9' }], [])).toMatchObject({
      ok: false,
      faults: [{ address: '/c9' }],
    });
    expect(mergePatches(base, [], [{ op: 'remove', at: '/c9' }])).toMatchObject({
      ok: false,
      faults: [{ address: '/c9' }],
    });
  });

  it('without conflicts it does not matter whose changes come first', () => {
    let merges = 0;
    fc.assert(
      fc.property(json, json, json, (start, mine, theirs) => {
        const ab = mergePatches(start, diffJson(start, mine), diffJson(start, theirs));
        const ba = mergePatches(start, diffJson(start, theirs), diffJson(start, mine));
        if (!ab.ok || !ba.ok) throw new Error('the differences must fit');
        expect(ab.conflicts.length).toBe(ba.conflicts.length);
        if (ab.conflicts.length > 0) return;
        merges += 1;
        const onTheirs = patchValue(theirs, ab.clean);
        const onMine = patchValue(mine, ba.clean);
        expect(onTheirs).toEqual(onMine);
      }),
      { seed: 12, numRuns: 3000 },
    );
    expect(merges).toBeGreaterThan(300);
  });
});
