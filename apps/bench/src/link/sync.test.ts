import { applyPatches, type Patch } from '@oddwheel/build/document/patch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as sync from './sync.ts';

const saved = (text: string, undo: string | null = null, redo: string | null = null): sync.Saved => ({
  text,
  hash: `hash of ${text}`,
  undo,
  redo,
});
const set = (at: string, value: string | number): Patch => ({ op: 'set', at, value });
const edit = (name: string, ...patches: Patch[]): sync.Edit => ({ name, patches });

/** The build on the page: what the host holds with what is pending. */
const onThePage = (state: sync.Sync): unknown =>
  JSON.parse(
    state.pending.reduce((text, one) => {
      const next = applyPatches(text, one.patches);
      return next.ok ? next.text : text;
    }, state.saved.text),
  );

/** What the page does for Keep mine. */
const keepMine = (state: sync.Sync, address: string): sync.Sync => {
  const kept = sync.keptEdit(state, address);
  const settled = sync.takeTheirs(state, address);
  return kept ? sync.edited(settled, kept) : settled;
};

describe('an edit on its way to the disk', () => {
  const start = sync.startSync(saved('{"teeth":17}', 'links 84 → 86'));
  const made = sync.edited(start, edit('teeth 17 → 16', set('/teeth', 16)));

  it('shows at once, and counts as saved only after the answer of the host', () => {
    expect(sync.savedWords(start, 'host')).toBe('as on the disk');
    expect(onThePage(made)).toEqual({ teeth: 16 });
    expect(sync.savedWords(made, 'host')).toBe('saving');
    const done = sync.accepted(sync.sendingStarted(made), saved('{"teeth":16}', 'teeth 17 → 16'), '14:07');
    expect(sync.savedWords(done, 'host')).toBe('saved 14:07');
    expect(sync.undoName(done)).toBe('teeth 17 → 16');
    expect(onThePage(done)).toEqual({ teeth: 16 });
  });

  it('is sent one at a time, in order', () => {
    const two = sync.edited(made, edit('teeth 16 → 15', set('/teeth', 15)));
    expect(sync.nextToSend(two)?.name).toBe('teeth 17 → 16');
    expect(sync.nextToSend(sync.sendingStarted(two))).toBeNull();
    const one = sync.accepted(sync.sendingStarted(two), saved('{"teeth":16}'), '14:07');
    expect(sync.nextToSend(one)?.name).toBe('teeth 16 → 15');
  });

  it('stays when the connection goes, and is sent when it is back', () => {
    const off = sync.disconnected(sync.sendingStarted(made));
    expect(sync.savedWords(off, 'host')).toBe('1 edit not saved');
    expect(sync.nextToSend(off)).toBeNull();
    const back = sync.refreshed(off, start.saved);
    expect(sync.nextToSend(back)?.name).toBe('teeth 17 → 16');
  });

  it('is taken back here while it is not on its way, and through the host after that', () => {
    expect(sync.undoName(made)).toBe('teeth 17 → 16');
    expect(sync.cancelLast(made)?.sync.pending).toEqual([]);
    expect(sync.cancelLast(sync.sendingStarted(made))).toBeNull();
    expect(sync.undoName(sync.sendingStarted(made))).toBe('teeth 17 → 16');
    expect(sync.undoName(start)).toBe('links 84 → 86');
  });
});

describe('a change made here and elsewhere at once', () => {
  const start = sync.startSync(saved('{"teeth":17,"links":84}'));
  const both = sync.sendingStarted(
    sync.edited(start, edit('teeth 17 → 16 and links 84 → 86', set('/teeth', 16), set('/links', 86))),
  );
  const theirs = saved('{"teeth":19,"links":84}');
  const met = sync.collided(both, theirs, [{ address: '/teeth', mine: 16, theirs: 19, base: 17 }]);

  it('keeps what does not collide, and holds the rest with theirs in force', () => {
    expect(onThePage(met)).toEqual({ teeth: 19, links: 86 });
    expect(met.held).toEqual([
      { address: '/teeth', mine: 16, theirs: 19, base: 17, name: 'teeth 17 → 16 and links 84 → 86' },
    ]);
  });

  it('mine becomes an edit on top of theirs; theirs needs none', () => {
    const mine = keepMine(met, '/teeth');
    expect(onThePage(mine)).toEqual({ teeth: 16, links: 86 });
    expect(mine.held).toEqual([]);
    const taken = sync.takeTheirs(met, '/teeth');
    expect(onThePage(taken)).toEqual({ teeth: 19, links: 86 });
    expect(taken.held).toEqual([]);
    expect(sync.keptEdit(met, '/links')).toBeNull();
  });

  it('a value blanked here against one changed there is kept blank', () => {
    const blanked = sync.sendingStarted(sync.edited(start, edit('links blank', { op: 'remove', at: '/links' })));
    const held = sync.collided(blanked, saved('{"teeth":17,"links":90}'), [
      { address: '/links', theirs: 90, base: 84 },
    ]);
    expect(onThePage(held)).toEqual({ teeth: 17, links: 90 });
    expect(onThePage(keepMine(held, '/links'))).toEqual({ teeth: 17 });
  });

  it('an edit that holds only together waits whole, and is made whole or not at all', () => {
    const made = { ...edit('add a chain', set('/from', 'a'), set('/stage', 'new')), whole: true };
    const start = sync.startSync(saved('{"from":"x"}'));
    const met = sync.collided(sync.sendingStarted(sync.edited(start, made)), saved('{"from":"b"}'), [
      { address: '/from', mine: 'a', theirs: 'b', base: 'x' },
    ]);
    expect(met.pending).toEqual([]);
    expect(onThePage(met)).toEqual({ from: 'b' });
    expect(onThePage(keepMine(met, '/from'))).toEqual({ from: 'a', stage: 'new' });
    expect(onThePage(sync.takeTheirs(met, '/from'))).toEqual({ from: 'b' });
    expect(sync.takeTheirs(met, '/from').held).toEqual([]);
  });

  it('loses no edit: every field ends as mine or theirs, whichever was chosen (seeded)', () => {
    const keys = ['a', 'b', 'c', 'd'];
    const values = fc.record(Object.fromEntries(keys.map((key) => [key, fc.integer({ min: 0, max: 3 })])));
    fc.assert(
      fc.property(
        values,
        values,
        values,
        fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
        (base, mine, other, picks) => {
          const changed = keys.filter((key) => mine[key] !== base[key]);
          if (changed.length === 0) return;
          const patches = changed.map((key) => set(`/${key}`, mine[key] ?? 0));
          const sent = sync.sendingStarted(
            sync.edited(sync.startSync(saved(JSON.stringify(base))), edit('changes', ...patches)),
          );
          const conflicts = changed
            .filter((key) => other[key] !== base[key] && other[key] !== mine[key])
            .map((key) => ({
              address: `/${key}`,
              mine: mine[key] ?? 0,
              theirs: other[key] ?? 0,
              base: base[key] ?? 0,
            }));
          let state = sync.collided(sent, saved(JSON.stringify(other)), conflicts);
          const wanted: Record<string, number | undefined> = { ...other };
          for (const key of changed) wanted[key] = mine[key];
          for (const [index, conflict] of conflicts.entries()) {
            const choice = picks[index] ? keepMine : sync.takeTheirs;
            state = choice(state, conflict.address);
            if (!picks[index]) wanted[conflict.address.slice(1)] = conflict.theirs;
          }
          expect(onThePage(state)).toEqual(wanted);
          expect(state.held).toEqual([]);
        },
      ),
      { seed: 20261125, numRuns: 300 },
    );
  });
});
