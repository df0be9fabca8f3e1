/** Reading what an edit changed must find a fault exactly where reading the whole file finds one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../document/json.ts';
import { patchValue } from '../document/patch-value.ts';
import { shareUnchanged } from '../model/cache.ts';
import { pointerKey } from '../schema/describe.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { readBuild, soundBuild } from './read-build.ts';

const before = readBuild(JSON.stringify(SMALL_BUILD));
if (!before.ok) throw new Error(JSON.stringify(before.faults));

/** All addresses below the root. */
function addresses(value: Json, at = ''): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, child]) => {
    const address = `${at}/${pointerKey(key)}`;
    return [address, ...addresses(child, address)];
  });
}

const ALL = addresses(before.build as unknown as Json);

/** Values that fit somewhere, and values that fit nowhere. */
const value: fc.Arbitrary<Json> = fc.constantFrom<Json>(
  ...[
    '12 mm',
    '-3 mm',
    '40 rpm',
    'axle/sprocket',
    'output/sprocket',
    'chain',
    'belt',
    'bearing',
    'sprocket',
    '520',
    '428',
    '',
  ],
  ...[17, 0, -1, 1.5, true, null],
  ...[{}, [], [1, 0, 0], { kind: 'belt' }, { driver: 15, driven: 45 }, ['8', '5', '4']],
);

describe('reading what an edit changed', () => {
  it('finds the file sound or not as reading it whole does', () => {
    let [sound, faulty] = [0, 0];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...ALL), fc.constantFrom('value', 'remove', 'new', 'rename'), value), {
          minLength: 1,
          maxLength: 2,
        }),
        (edits) => {
          let after = before.build as unknown as Json;
          for (const [at, how, put] of edits) {
            const place = how === 'new' ? `${at}/new-one` : how === 'rename' ? `${at}-2` : at;
            const patched = patchValue(after, [
              how === 'remove' ? { op: 'remove', at } : { op: 'set', at: place, value: put },
            ]);
            if (patched.ok) after = patched.value;
          }
          const whole = readBuild(JSON.stringify(after));
          const quick = soundBuild(shareUnchanged(before.build, JSON.parse(JSON.stringify(after))), before.build);
          expect(quick !== null).toBe(whole.ok);
          if (whole.ok) {
            sound += 1;
            expect(quick).toEqual(whole.build);
          } else faulty += 1;
        },
      ),
      { seed: 11, numRuns: 1500 },
    );
    expect(Math.min(sound, faulty)).toBeGreaterThan(100);
  });
});
