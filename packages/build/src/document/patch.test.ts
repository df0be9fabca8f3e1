/** Editing the text of a build file in place. The referees: JSON.parse, and a second, value-level way to apply patches. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isJsonArray, isJsonObject, type Json } from './json.ts';
import { applyPatches, type Patch } from './patch.ts';
import { parsePatches } from './patch-shape.ts';
import { patchValue } from './patch-value.ts';
import { addressOf } from './pointer.ts';
import { printFile } from './print.ts';

function apply(text: string, ...patches: Patch[]): { text: string; inverse: Patch[] } {
  const result = applyPatches(text, patches);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result;
}

/** Lines of `b` that are not in `a` and the other way, as a line diff would show them. */
function changedLines(a: string, b: string): { gone: string[]; come: string[] } {
  const [from, to] = [a.split('\n'), b.split('\n')];
  return { gone: from.filter((line) => !to.includes(line)), come: to.filter((line) => !from.includes(line)) };
}

const HAND = `{
    "format" : 1,

    "stages": {
        "chain-1": { "teeth": 17,   "pitch": "1/2 in" },
        "chain-2": {
            "teeth": 1.50,
            "rows":   [ [1,2],
                        [3,4] ]
        }
    },
    "notes": []
}
`;

describe('a file formatted by hand', () => {
  it('setting one value changes that value only', () => {
    const { text } = apply(HAND, { op: 'set', at: '/stages/chain-1/teeth', value: 19 });
    expect(text).toBe(HAND.replace('"teeth": 17', '"teeth": 19'));
  });

  it('setting a value it has already changes nothing, not even 1.50', () => {
    expect(apply(HAND, { op: 'set', at: '/stages/chain-2/teeth', value: 1.5 })).toEqual({
      ok: true,
      text: HAND,
      inverse: [],
    });
  });

  it('a new key goes on its own line, indented as its neighbours', () => {
    const { text } = apply(HAND, { op: 'set', at: '/stages/chain-3', value: { teeth: 12 } });
    expect(text).toBe(
      HAND.replace(
        '[3,4] ]\n        }\n',
        '[3,4] ]\n        },\n        "chain-3": {\n            "teeth": 12\n        }\n',
      ),
    );
  });

  it('a new key in an object on one line stays on that line', () => {
    const { text } = apply(HAND, { op: 'set', at: '/stages/chain-1/strands', value: 2 });
    expect(text).toContain('{ "teeth": 17,   "pitch": "1/2 in",   "strands": 2 }');
  });

  it('a new key can go before another', () => {
    const { text } = apply(HAND, { op: 'set', at: '/brief', value: {}, before: 'stages' });
    expect(text).toContain('"format" : 1,\n\n    "brief" : {},\n    "stages": {');
  });

  it('taking a key away takes its comma along', () => {
    expect(apply(HAND, { op: 'remove', at: '/notes' }).text).toBe(HAND.replace(',\n    "notes": []', ''));
    expect(apply(HAND, { op: 'remove', at: '/stages/chain-1/teeth' }).text).toContain(
      '"chain-1": { "pitch": "1/2 in" }',
    );
  });

  it('a row set over rows changes that row only', () => {
    const { text } = apply(HAND, {
      op: 'set',
      at: '/stages/chain-2/rows',
      value: [
        [1, 2],
        [9, 9],
        [3, 4],
      ],
    });
    expect(text).toContain('[ [1,2],\n                        [9, 9],\n                        [3,4] ]');
  });

  it.each<[string, Patch]>([
    ['a number spelled its own way', { op: 'set', at: '/stages/chain-2/teeth', value: 3 }],
    ['a first key', { op: 'remove', at: '/format' }],
    ['a middle key', { op: 'remove', at: '/stages' }],
    ['a last key', { op: 'remove', at: '/stages/chain-2/rows' }],
    ['a row', { op: 'remove', at: '/stages/chain-2/rows/0' }],
    ['a whole object replaced by a number', { op: 'set', at: '/stages', value: 0 }],
    ['the whole file', { op: 'set', at: '', value: { other: true } }],
  ])('the inverse brings back %s, byte for byte', (_name, patch) => {
    const { text, inverse } = apply(HAND, patch);
    expect(text).not.toBe(HAND);
    expect(apply(text, ...inverse).text).toBe(HAND);
  });

  it('CRLF stays CRLF, and the byte order mark stays', () => {
    const crlf = `\ufeff${HAND.replaceAll('\n', '\r\n')}`;
    const { text, inverse } = apply(crlf, { op: 'set', at: '/stages/chain-3', value: { a: [{ b: 1 }] } });
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    expect(text.startsWith('\ufeff{')).toBe(true);
    expect(apply(text, ...inverse).text).toBe(crlf);
  });
});

describe('a file in our own layout', () => {
  const own = printFile({ format: 1, path: { a: { teeth: 17, rows: [['2000 rpm', '30 N.m']] } }, notes: {} });

  it('is printed with two spaces, and short lists without objects on one line', () => {
    expect(own).toBe(
      '{\n  "format": 1,\n  "path": {\n    "a": {\n      "teeth": 17,\n      "rows": [["2000 rpm", "30 N.m"]]\n    }\n  },\n  "notes": {}\n}\n',
    );
    expect(printFile([{ a: 1 }])).toBe('[\n  {\n    "a": 1\n  }\n]\n');
    const flat = 'x'.repeat(96);
    expect(printFile([flat])).toBe(`["${flat}"]\n`);
    expect(printFile([`${flat}x`])).toBe(`[\n  "${flat}x"\n]\n`);
  });

  it('one value set is one line in a diff', () => {
    const { text } = apply(own, { op: 'set', at: '/path/a/teeth', value: 19 });
    expect(changedLines(own, text)).toEqual({ gone: ['      "teeth": 17,'], come: ['      "teeth": 19,'] });
  });

  it('an added part can be taken back without a trace, also out of an empty object', () => {
    const { text, inverse } = apply(own, { op: 'set', at: '/notes/n1', value: 'press fit' });
    expect(text).toContain('"notes": {\n    "n1": "press fit"\n  }\n');
    expect(inverse).toEqual([{ op: 'remove', at: '/notes/n1' }]);
    expect(apply(text, ...inverse).text).toBe(own);
  });

  it('the inverse of a removal says where the key stood, and needs no written form', () => {
    const { text, inverse } = apply(own, { op: 'remove', at: '/path/a/teeth' });
    expect(inverse).toEqual([{ op: 'set', at: '/path/a/teeth', value: 17, before: 'rows' }]);
    expect(apply(text, ...inverse).text).toBe(own);
  });

  it('array items are set, inserted, appended and removed by index', () => {
    const list = '{"a": [1, 2]}';
    expect(apply(list, { op: 'set', at: '/a/0', value: 9 }).text).toBe('{"a": [9, 2]}');
    expect(apply(list, { op: 'set', at: '/a/0', value: 9, before: '0' }).text).toBe('{"a": [9, 1, 2]}');
    expect(apply(list, { op: 'set', at: '/a/2', value: 9 }).text).toBe('{"a": [1, 2, 9]}');
    expect(apply(list, { op: 'set', at: '/a/-', value: 9 }).text).toBe('{"a": [1, 2, 9]}');
    expect(apply(list, { op: 'remove', at: '/a/0' }).text).toBe('{"a": [2]}');
  });

  it('patches in one list build on each other', () => {
    const { text, inverse } = apply(
      own,
      { op: 'set', at: '/path/b', value: {} },
      { op: 'set', at: '/path/b/teeth', value: 40 },
      { op: 'remove', at: '/path/a' },
    );
    expect(JSON.parse(text).path).toEqual({ b: { teeth: 40 } });
    expect(apply(text, ...inverse).text).toBe(own);
  });
});

describe('patches that cannot be applied', () => {
  const text = '{"path": {"a": {"teeth": 17}, "b": 2}, "rows": [1, 2]}';
  it.each<[string, Patch, string, RegExp]>([
    ['no pointer', { op: 'remove', at: 'path' }, 'patch.address', /JSON Pointer/],
    ['a bad escape', { op: 'remove', at: '/a~2' }, 'patch.address', /JSON Pointer/],
    ['the whole file away', { op: 'remove', at: '' }, 'patch.address', /below the whole file/],
    ['a parent that is not there', { op: 'set', at: '/path/c/teeth', value: 1 }, 'patch.place', /"a", "b"/],
    ['a key that is not there', { op: 'remove', at: '/path/c' }, 'patch.place', /A key of "\/path": "a", "b"/],
    ['below a number', { op: 'set', at: '/path/b/teeth', value: 1 }, 'patch.place', /ends at "\/path\/b"/],
    ['an index too far', { op: 'set', at: '/rows/3', value: 1 }, 'patch.place', /2 items/],
    ['an index that is none', { op: 'set', at: '/rows/01', value: 1 }, 'patch.place', /2 items/],
    ['the end removed', { op: 'remove', at: '/rows/-' }, 'patch.place', /2 items/],
    [
      'a key that reaches into the program',
      { op: 'set', at: '/__proto__/x', value: 1 },
      'json.unsafe-key',
      /other key/,
    ],
    ['a number that is none', { op: 'set', at: '/path/b', value: Number.NaN }, 'json.not-finite', /finite/],
    [
      'a written form that lies',
      { op: 'set', at: '/path/b', value: 3, source: { text: '4' } },
      'patch.source',
      /reads as/,
    ],
    [
      'gaps with more than space',
      { op: 'set', at: '/x', value: 3, source: { text: '3', gaps: [',', ''] } },
      'patch.source',
      /reads as/,
    ],
    [
      'a head for another key',
      { op: 'set', at: '/x', value: 3, source: { text: '3', head: '"y": ' } },
      'patch.source',
      /reads as/,
    ],
  ])('%s', (_name, patch, code, accepted) => {
    const result = applyPatches(text, [{ op: 'set', at: '/path/b', value: 5 }, patch]);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.faults).toHaveLength(1);
    expect(result.faults[0]).toMatchObject({ code });
    expect(result.faults[0]?.address).toBe(code === 'json.unsafe-key' ? '/__proto__/x' : patch.at);
    expect(result.faults[0]?.accepted).toMatch(accepted);
    if (code === 'patch.address' || code === 'patch.place') {
      const byValue = patchValue(JSON.parse(text), [patch]);
      expect(byValue.ok).toBe(false);
    }
  });

  it('a text that is no JSON', () => {
    expect(applyPatches('{', [])).toMatchObject({ ok: false, faults: [{ code: 'json.syntax' }] });
  });
});

describe('patches from outside', () => {
  it('are taken when they have the shape of patches', () => {
    const patches = [
      { op: 'remove', at: '/a' },
      { op: 'set', at: '/b', value: null, before: null, source: { text: 'null', head: '"b":', gaps: ['', ' '] } },
    ];
    expect(parsePatches(patches)).toEqual({ ok: true, patches });
  });

  it.each<[string, Json]>([
    ['no list', {}],
    ['no object', ['/a']],
    ['no address', [{ op: 'remove' }]],
    ['another deed', [{ op: 'move', at: '/a' }]],
    ['no value', [{ op: 'set', at: '/a' }]],
    ['a key too many', [{ op: 'remove', at: '/a', value: 1 }]],
    ['a place that is none', [{ op: 'set', at: '/a', value: 1, before: 2 }]],
    ['a written form that is none', [{ op: 'set', at: '/a', value: 1, source: { text: '1', gaps: [''] } }]],
  ])('are refused: %s', (_name, value) => {
    const parsed = parsePatches(value);
    expect(parsed.ok ? [] : parsed.faults).toMatchObject([
      { code: 'patch.shape', address: isJsonArray(value) ? '/0' : '' },
    ]);
  });
});

describe('on random files and random patches', () => {
  const key = fc.constantFrom('a', 'b', 'c', 'k/1', '~', '7', 'é', 'constructor', '"q"');
  const scalar = fc.oneof(
    fc.integer(),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.string(),
    fc.boolean(),
    fc.constant(null),
  );
  const { json } = fc.letrec<{ json: Json }>((tie) => ({
    json: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      scalar,
      fc.array(tie('json'), { maxLength: 4 }),
      fc.dictionary(key, tie('json'), { maxKeys: 4, noNullPrototype: true }),
    ),
  }));
  const space = fc.constantFrom('', '', ' ', '\n', '\n  ', '\r\n\t', '\n\n    ', '  ');

  /** Writes a value with white space drawn at random between all signs. */
  function written(value: Json, next: () => string): string {
    const around = (text: string) => next() + text + next();
    if (isJsonArray(value))
      return `[${value.length === 0 ? next() : value.map((item) => around(written(item, next))).join(',')}]`;
    if (!isJsonObject(value)) return Object.is(value, -0) ? '-0' : JSON.stringify(value);
    const members = Object.entries(value).map(([k, v]) =>
      around(`${JSON.stringify(k)}${next()}:${next()}${written(v, next)}`),
    );
    return `{${members.length === 0 ? next() : members.join(',')}}`;
  }

  const text = fc.oneof(
    json.map(printFile),
    json.map((value) => JSON.stringify(value, null, 4)),
    json.map((value) => JSON.stringify(value)),
    fc.tuple(json, fc.array(space, { minLength: 1, maxLength: 9 })).map(([value, spaces]) => {
      let i = 0;
      return written(value, () => spaces[i++ % spaces.length] as string);
    }),
  );

  /** Every address of a value, and one new place in each container. */
  function places(value: Json, keys: string[] = []): { at: string[]; exists: boolean; inArray: boolean }[] {
    if (isJsonArray(value)) {
      const items = value.flatMap((item, i) => [
        { at: [...keys, String(i)], exists: true, inArray: true },
        ...places(item, [...keys, String(i)]),
      ]);
      return [...items, { at: [...keys, String(value.length)], exists: false, inArray: true }];
    }
    if (!isJsonObject(value)) return [];
    const items = Object.entries(value).flatMap(([k, item]) => [
      { at: [...keys, k], exists: true, inArray: false },
      ...places(item, [...keys, k]),
    ]);
    return [...items, { at: [...keys, 'new'], exists: false, inArray: false }];
  }

  const choice = fc.record({
    pick: fc.nat(),
    remove: fc.boolean(),
    value: json,
    before: fc.option(key, { nil: undefined }),
  });

  function draw(
    value: Json,
    choices: { pick: number; remove: boolean; value: Json; before: string | undefined }[],
  ): Patch[] {
    const patches: Patch[] = [];
    let now = value;
    for (const { pick, remove, value: put, before } of choices) {
      const all = [{ at: [], exists: false, inArray: false }, ...places(now)];
      const place = all[pick % all.length] as (typeof all)[number];
      const at = addressOf(place.at);
      const patch: Patch =
        remove && place.exists
          ? { op: 'remove', at }
          : { op: 'set', at, value: put, ...(before === undefined ? {} : { before }) };
      patches.push(patch);
      const next = patchValue(now, [patch]);
      if (!next.ok) throw new Error(JSON.stringify(next.faults));
      now = next.value;
    }
    return patches;
  }

  it('the text then reads as the patched value, and the inverse restores it byte for byte', () => {
    fc.assert(
      fc.property(text, fc.array(choice, { maxLength: 5 }), (before, choices) => {
        const value = JSON.parse(before) as Json;
        const patches = draw(value, choices);
        const after = apply(before, ...patches);
        const byValue = patchValue(value, patches);
        expect(JSON.parse(after.text)).toEqual(byValue.ok && byValue.value);
        expect(apply(after.text, ...after.inverse).text).toBe(before);
        // Patches travel as JSON; nothing may hang on undefined or on object identity.
        const travelled = JSON.parse(JSON.stringify(after.inverse)) as Patch[];
        expect(apply(after.text, ...travelled).text).toBe(before);
      }),
      { seed: 4, numRuns: 3000 },
    );
  });

  it('an edit that goes on from the last one does what it does on the text read anew', () => {
    fc.assert(
      fc.property(
        text,
        fc.array(choice, { maxLength: 3 }),
        fc.array(choice, { maxLength: 3 }),
        (before, some, more) => {
          const first = apply(before, ...draw(JSON.parse(before) as Json, some));
          const next = draw(JSON.parse(first.text) as Json, more);
          const goingOn = applyPatches(first.text, next);
          // Another text in between, so that this one is read again.
          apply('[]', { op: 'set', at: '/0', value: 1 });
          expect(applyPatches(first.text, next)).toEqual(goingOn);
        },
      ),
      { seed: 6, numRuns: 1000 },
    );
  });

  it('forward, back and forward again gives the same text', () => {
    fc.assert(
      fc.property(text, fc.array(choice, { maxLength: 3 }), (before, choices) => {
        const patches = draw(JSON.parse(before) as Json, choices);
        const once = apply(before, ...patches);
        const back = apply(once.text, ...once.inverse);
        expect(apply(back.text, ...patches).text).toBe(once.text);
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});
