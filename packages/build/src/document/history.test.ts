/** Undo and redo, with a plain stack of values as the referee; crashes and foreign edits in between. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hashBytes, hashText } from './hash.ts';
import { catchUp, FOREIGN_NAME, foldHistory, type HistoryEntry, parseHistory, replay } from './history.ts';
import { applyPatches, type Patch } from './patch.ts';
import { printFile } from './print.ts';

/** A builder at work on one file. `disk` is build.json, `entries` the history. */
class Desk {
  entries: HistoryEntry[] = [];
  disk: string;
  private count = 0;

  constructor(text: string) {
    this.disk = text;
    this.notice();
  }

  get fold() {
    return foldHistory(this.entries, hashText(this.disk));
  }

  notice(): HistoryEntry | undefined {
    const entry = catchUp(this.entries, this.disk, 't', `n${++this.count}`);
    if (entry) this.entries.push(entry);
    return entry;
  }

  write(kind: 'edit' | 'undo' | 'redo', patches: readonly Patch[], of?: string, crash = false): void {
    const result = applyPatches(this.disk, patches);
    if (!result.ok) throw new Error(JSON.stringify(result.faults));
    if (result.text === this.disk) return;
    this.entries.push({
      v: 1,
      id: `e${++this.count}`,
      kind,
      name: kind,
      at: 't',
      before: hashText(this.disk),
      after: hashText(result.text),
      patches,
      inverse: result.inverse,
      ...(of === undefined ? {} : { of }),
    });
    if (!crash) this.disk = result.text;
  }

  set(at: string, value: number, crash = false): void {
    this.write('edit', [{ op: 'set', at, value }], undefined, crash);
  }

  undo(crash = false): boolean {
    const last = this.fold.undo.at(-1);
    if (last) this.write('undo', last.inverse, last.id, crash);
    return last !== undefined;
  }

  redo(crash = false): boolean {
    const next = this.fold.redo.at(-1);
    if (next) this.write('redo', next.patches, next.id, crash);
    return next !== undefined;
  }
}

const START = printFile({ a: 0, b: 0 });

describe('hashes', () => {
  it('are SHA-256: the message "abc" of FIPS 180-4, example SHA-256 one-block', () => {
    const abc = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';
    expect(hashText('abc')).toBe(abc);
    expect(hashBytes(new Uint8Array([97, 98, 99]))).toBe(abc);
  });
});

describe('undo and redo', () => {
  it('go back and forth, byte for byte, and a new edit clears the redo list', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    const one = desk.disk;
    desk.set('/b', 2);
    const two = desk.disk;
    desk.undo();
    expect(desk.disk).toBe(one);
    desk.undo();
    expect(desk.disk).toBe(START);
    expect(desk.undo()).toBe(false);
    desk.redo();
    desk.redo();
    expect(desk.disk).toBe(two);
    expect(desk.redo()).toBe(false);
    desk.undo();
    desk.set('/a', 7);
    expect(desk.fold.redo).toEqual([]);
    expect(desk.fold.undo.map(({ patches }) => patches[0]?.at)).toEqual(['/a', '/a']);
  });

  it('undo, redo and undo again take the same step each time', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    for (let i = 0; i < 4; i += 1) {
      desk.undo();
      expect(JSON.parse(desk.disk)).toEqual({ a: 0, b: 0 });
      desk.redo();
      expect(JSON.parse(desk.disk)).toEqual({ a: 1, b: 0 });
    }
    expect(desk.fold.undo).toHaveLength(1);
  });
});

describe('entries whose result never reached the disk', () => {
  it('the last one is void when the disk still has the text before it', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    desk.set('/a', 2, true);
    expect(desk.fold).toMatchObject({ void: [desk.entries.at(-1)?.id], unknown: false });
    expect(desk.fold.undo).toHaveLength(1);
    desk.set('/b', 3);
    expect(desk.fold.void).toHaveLength(1);
    desk.undo();
    expect(JSON.parse(desk.disk)).toEqual({ a: 1, b: 0 });
  });

  it('a lost undo leaves its edit to be undone, a lost redo leaves it to be redone', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    desk.undo(true);
    expect(desk.fold.undo).toHaveLength(1);
    desk.undo();
    desk.redo(true);
    expect(desk.fold.redo).toHaveLength(1);
  });
});

describe('changes made in another program', () => {
  it('become a named entry, found by replaying the history, and can be undone', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    const before = desk.disk;
    desk.disk = before.replace('"b": 0', '"b": 5');
    expect(desk.fold.unknown).toBe(true);
    expect(desk.notice()).toMatchObject({
      kind: 'foreign',
      name: FOREIGN_NAME,
      patches: [{ op: 'set', at: '/b', value: 5 }],
    });
    expect(desk.fold.unknown).toBe(false);
    desk.undo();
    expect(desk.disk).toBe(before);
    desk.undo();
    expect(desk.disk).toBe(START);
    desk.redo();
    desk.redo();
    expect(JSON.parse(desk.disk)).toEqual({ a: 1, b: 5 });
  });

  it('keep the whole text when they changed the layout, so that later steps can be replayed', () => {
    const desk = new Desk(START);
    desk.disk = '{"a":0,\n"b":  7}';
    expect(desk.notice()).toMatchObject({ kind: 'foreign', text: desk.disk });
    desk.set('/a', 4);
    expect(replay(desk.entries)).toBe('{"a":4,\n"b":  7}');
    desk.undo();
    desk.undo();
    expect(JSON.parse(desk.disk)).toEqual({ a: 0, b: 0 });
  });

  it('of the layout alone are no step to undo and keep the redo list', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    desk.undo();
    desk.disk = '{"a":0,"b":0}';
    expect(desk.notice()).toMatchObject({ kind: 'foreign', patches: [] });
    expect(desk.fold).toMatchObject({ undo: [], unknown: false });
    desk.redo();
    expect(desk.disk).toBe('{"a":1,"b":0}');
  });

  it('after a lost save start from the text that was on the disk', () => {
    const desk = new Desk(START);
    desk.set('/a', 1, true);
    desk.disk = START.replace('"b": 0', '"b": 5');
    expect(desk.notice()).toMatchObject({ before: hashText(START), patches: [{ at: '/b' }] });
    expect(desk.fold.undo).toHaveLength(1);
    expect(desk.fold.void).toHaveLength(1);
  });

  it('that take the last step back exactly are told from a lost step by whoever saw that step on the disk', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    const reached = hashText(desk.disk);
    desk.disk = START;
    expect(desk.fold).toMatchObject({ undo: [], unknown: false });
    expect(foldHistory(desk.entries, hashText(START), reached)).toMatchObject({ void: [], unknown: true });
    const entry = catchUp(desk.entries, START, 't', 'x', reached);
    expect(entry).toMatchObject({ kind: 'foreign', before: reached });
    if (entry) desk.entries.push(entry);
    expect(desk.fold.undo).toHaveLength(2);
    desk.undo();
    expect(hashText(desk.disk)).toBe(reached);
  });

  it('are not noted while the file is no JSON', () => {
    const desk = new Desk(START);
    desk.disk = '{"a": ';
    expect(desk.notice()).toBeUndefined();
  });
});

describe('a damaged history', () => {
  it('deleted: undo starts afresh with a base', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    desk.entries = [];
    expect(desk.notice()).toMatchObject({ kind: 'base', text: desk.disk, patches: [] });
    expect(desk.fold).toMatchObject({ undo: [], unknown: false });
  });

  it('a line missing in the middle: steps before it are gone, steps after it stay', () => {
    const desk = new Desk(START);
    for (const value of [1, 2, 3]) desk.set('/a', value);
    desk.entries.splice(2, 1);
    expect(desk.fold.undo.map(({ patches }) => patches)).toEqual([[{ op: 'set', at: '/a', value: 3 }]]);
    expect(replay(desk.entries)).toBeUndefined();
    desk.disk = START;
    expect(desk.notice()).toMatchObject({ kind: 'base' });
  });

  it('lines that are no entries are passed over and reported', () => {
    const desk = new Desk(START);
    desk.set('/a', 1);
    const [base, edit] = desk.entries.map((entry) => JSON.stringify(entry));
    const { entries, bad } = parseHistory(`${base}\n{"v":2}\n{"v":1,\n${edit}\n{"v":1,"id":`);
    expect(entries).toEqual(desk.entries);
    expect(bad.map(({ line }) => line).sort()).toEqual([2, 3, 5]);
  });
});

describe('replaying', () => {
  it('gives every text of the way, exactly, also when a step changes the layout of the whole file', () => {
    const desk = new Desk('{"a": 0}');
    const texts = [desk.disk];
    for (const patch of [
      { op: 'set', at: '', value: { a: { b: [1, { c: 2 }] } } },
      { op: 'set', at: '/d', value: { e: {} } },
      { op: 'remove', at: '/a' },
      { op: 'remove', at: '/d' },
      { op: 'set', at: '/x', value: { y: 1 } },
    ] as const) {
      desk.write('edit', [patch]);
      texts.push(desk.disk);
    }
    for (const text of texts) expect(replay(desk.entries, hashText(text))).toBe(text);
    expect(replay(desk.entries)).toBe(desk.disk);
    expect(replay(desk.entries, hashText('other'))).toBeUndefined();
    expect(replay([])).toBeUndefined();
  });
});

describe('on random days at the desk', () => {
  const act = fc.oneof(
    {
      weight: 4,
      arbitrary: fc.record({ do: fc.constant('set' as const), at: fc.constantFrom('/a', '/b'), value: fc.nat(99) }),
    },
    { weight: 3, arbitrary: fc.record({ do: fc.constantFrom('undo' as const, 'redo' as const) }) },
    {
      weight: 2,
      arbitrary: fc.record({
        do: fc.constantFrom('set lost' as const, 'undo lost' as const, 'redo lost' as const),
        value: fc.nat(99),
      }),
    },
    { weight: 1, arbitrary: fc.record({ do: fc.constant('foreign' as const), value: fc.nat(99) }) },
  );

  it('the lists agree with a stack of texts', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
        const desk = new Desk(printFile({ a: 0, b: 0, f: 0 }));
        const past: string[] = [];
        let future: string[] = [];
        let fresh = 1000;
        const done = (before: string) => {
          if (desk.disk === before) return;
          past.push(before);
          future = [];
        };
        for (const step of acts) {
          const before = desk.disk;
          if (step.do === 'set') {
            desk.set(step.at, step.value);
            done(before);
          } else if (step.do === 'foreign') {
            // A value never seen, at an address of its own: where the other program wrote over the very value that a lost
            // step had set, nothing on the disk tells whether that step was lost.
            desk.disk = desk.disk.replace(/"f": \d+/, `"f": ${++fresh}`);
            desk.notice();
            done(before);
          } else if (step.do === 'undo' && desk.undo()) {
            future.push(before);
            expect(desk.disk).toBe(past.pop());
          } else if (step.do === 'redo' && desk.redo()) {
            past.push(before);
            expect(desk.disk).toBe(future.pop());
          } else if (step.do === 'set lost') desk.set('/a', 100 + step.value, true);
          else if (step.do === 'undo lost') desk.undo(true);
          else if (step.do === 'redo lost') desk.redo(true);
          expect(desk.fold.unknown).toBe(false);
          expect(desk.fold.undo).toHaveLength(past.length);
          expect(desk.fold.redo).toHaveLength(future.length);
          const written = desk.entries.map((entry) => `${JSON.stringify(entry)}\n`).join('');
          expect(parseHistory(written).entries).toEqual(desk.entries);
        }
        expect(replay(desk.entries, hashText(desk.disk))).toBe(desk.disk);
      }),
      { seed: 21, numRuns: 500 },
    );
  });
});
