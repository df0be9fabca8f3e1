import { describe, expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import type { AssessmentChange } from './changes.ts';
import { createModel } from './model.ts';

const opened = () => {
  const model = createModel();
  const first = model.open(demo, []);
  if (!first.ok) throw new Error(first.faults.map((fault) => `${fault.address}: ${fault.problem}`).join('\n'));
  return { model, first };
};
const TEETH = '/path/stages/chain-1/teeth/driver';

describe('the model behind the page, on the marsh-hauler demo', () => {
  it('sends the whole assessment first, then only what an edit changed', () => {
    const { model, first } = opened();
    expect(first.change.path?.[0]?.kind).toBe('engine');
    const typed = model.typeField(TEETH, '16');
    expect(typed.ok && typed.name).toBe('Chain 1, driver teeth 17 → 16');
    const edited = model.apply(typed.ok ? typed.patches : []);
    if (!edited.ok) throw new Error('refused');
    expect(edited.change).toHaveProperty('path');
    expect(edited.change).not.toHaveProperty('name');
    expect(edited.change).not.toHaveProperty('units');
    expect(edited.hash).not.toBe(first.hash);
  });

  it('a move of the slider sends no list that only hangs on the build', () => {
    const { model } = opened();
    const change = model.moveHere({ gear: '2', roadSpeed: 4 });
    expect(change.here?.gear).toBe('2');
    expect(change).not.toHaveProperty('assumed');
    expect(change).not.toHaveProperty('parts');
  });

  it('the ends of ranges come after the numbers at their middle, once, and not for a build that was edited meanwhile', async () => {
    const { model, first } = opened();
    expect(first.change.ends).toBe('not yet');
    const ranged = await model.ranges();
    expect(ranged?.ends).toBe('tried');
    expect(ranged?.findings?.some(({ reserve }) => reserve !== null && reserve.lo < reserve.hi)).toBe(true);
    expect(await model.ranges()).toBeNull();
    const typed = model.typeField(TEETH, '16');
    model.apply(typed.ok ? typed.patches : []);
    const overtaken = model.ranges();
    model.moveHere({ gear: '2', roadSpeed: 4 });
    const back = model.typeField(TEETH, '17');
    model.apply(back.ok ? back.patches : []);
    expect(await overtaken).toBeNull();
    expect((await model.ranges())?.ends).toBe('tried');
  });

  it('edits that are not saved yet are made again on another text, and one that no longer fits is told', () => {
    const { model } = opened();
    const again = model.open(demo.replace('"links": 84', '"links": 86'), [
      [{ op: 'set', at: TEETH, value: 16 }],
      [{ op: 'set', at: '/path/stages/no-such/teeth/driver', value: 16 }],
    ]);
    if (!again.ok) throw new Error('refused');
    expect(again.refused[0]).toBeNull();
    expect(again.refused[1]).not.toBeNull();
    expect(model.fields('/path/stages/chain-1').find((field) => field.address === TEETH)?.text).toBe('16');
    expect(model.fields('/path/stages/chain-2').find((field) => field.name === 'Links')?.text).toBe('86');
  });

  it('a text at fault leaves the last good build where it was', () => {
    const { model } = opened();
    expect(model.open('{', []).ok).toBe(false);
    expect(model.fields('/path/stages/chain-1').length).toBeGreaterThan(0);
  });

  it('every part of the brief and the units has its fields, and every finding its working', () => {
    const { model, first } = opened();
    const columns = first.change.path?.map((element) => element.address) ?? [];
    expect(first.parts.map((part) => part.address)).toContain('/brief/vehicle');
    for (const part of first.parts) if (part.present) expect(model.fields(part.address), part.address).not.toEqual([]);
    for (const address of columns) expect(model.fields(address), address).not.toEqual([]);
    for (const finding of first.change.findings ?? [])
      expect(model.explain(finding.id, null), finding.id).not.toBeNull();
  });

  it('takes the beads of the record into its findings, once, and keeps them over an edit', () => {
    const { model } = opened();
    const stamp = { taken: '2031-05-04T16:20:00Z', logged: '2031-05-04T16:20:00Z' };
    const part = { part: 'a', shaft: 'shaft-a', seats: { a: '85 mm', b: '10 1/4 in' } };
    const goal = { station: '40 mm', tir: '3 thou' };
    const round = { part: 'a', way: 'bead', bead: { clock: '6:00', length: '6 mm', station: '70 mm' } };
    const record = [
      { id: 'desk.1', kind: 'true-part', ...stamp, after: null, body: { ...part, goal } },
      { id: 'desk.2', kind: 'true-round', ...stamp, after: 'desk.1', body: round },
    ]
      .map((entry) => `${JSON.stringify(entry)}\n`)
      .join('');
    // The sheet stands on its own record, also before the findings do.
    expect(model.runOutSheet(record).parts[0]?.uncounted).toBeUndefined();
    const fatigue = (change: AssessmentChange | null) =>
      change?.findings?.find(({ id }) => id === 'shaft.fatigue:/path/shafts/shaft-a')?.says;
    expect(fatigue(model.layBeads(record))).toContain('the bead of round 1 at 70\u2009mm');
    expect(model.layBeads(record)).toBeNull();
    const typed = model.typeField(TEETH, '16');
    const edited = model.apply(typed.ok ? typed.patches : []);
    expect(edited.ok && fatigue(edited.change)).toContain('the bead of round 1');
    expect(fatigue(model.layBeads(''))).not.toContain('bead of');
  });
});
