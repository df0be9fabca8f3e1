import { describe, expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { createModel } from './model.ts';

const SHAFT = '/path/shafts/shaft-b';
const to = (z: string) => [{ op: 'set', at: `${SHAFT}/origin/z`, value: z } as const];

const opened = () => {
  const model = createModel();
  const first = model.open(demo, []);
  if (!first.ok) throw new Error(first.faults.map((fault) => `${fault.address}: ${fault.problem}`).join('\n'));
  return { model, first };
};

describe('what a move comes to, on the marsh-hauler demo', () => {
  it('tells the chains, clearances and checks that it changes, and draws those chains anew in every view', () => {
    const { model } = opened();
    const moved = model.preview(to('483.5 mm'), false);
    if (!moved.ok) throw new Error(moved.fault.problem);
    expect(moved.chains.map(({ address }) => address)).toEqual(['/path/stages/chain-2']);
    // √(440² + 483.5²), by hand.
    expect(moved.chains[0]?.centres).toMatch(/^653\.7\smm$/);
    expect(moved.chains[0]?.links).toMatch(/^84 fitted, 84\.\d\d asked for$/);
    expect(moved.checks.some(({ id }) => id === 'chain.slack:/path/stages/chain-2')).toBe(true);
    expect(moved.clearances.every(({ text }) => !text.includes('Chain 1 to'))).toBe(true);
    expect(moved.loops.filter(({ parts }) => parts.length > 0).length).toBeGreaterThan(3);
    expect(moved.loops.flatMap(({ parts }) => parts.map(({ of }) => of))).not.toContain('/path/stages/chain-1');
  });

  it('gives the parts in space, and while something moves the chains on it alone', () => {
    const { model } = opened();
    const parts = model.inSpace(0);
    expect(new Set(parts.map(({ of }) => of)).has(SHAFT)).toBe(true);
    expect(parts.filter(({ name }) => /^Chain/.test(name)).length).toBe(2);
    const moved = model.preview(to('483.5 mm'), true);
    if (!moved.ok) throw new Error(moved.fault.problem);
    expect(moved.inSpace.map(({ of }) => of)).toEqual(['/path/stages/chain-2']);
    const before = parts.find(({ of }) => of === '/path/stages/chain-2');
    expect(moved.inSpace[0]?.edges).not.toEqual(before?.edges);
  });

  it('makes no edit: the build and what it says stay as they are, and no move changes nothing', () => {
    const { model, first } = opened();
    model.preview(to('500 mm'), false);
    const after = model.apply([]);
    expect(after.ok && after.hash).toBe(first.hash);
    const still = model.preview([], false);
    expect(still.ok && [still.chains, still.clearances, still.checks]).toEqual([[], [], []]);
  });

  it('says why a place cannot be', () => {
    const { model } = opened();
    const refused = model.preview(to('high'), false);
    expect(!refused.ok && refused.fault.address).toBe(`${SHAFT}/origin/z`);
  });

  it('has the places and the circles of what can be moved, and the drawing as a file', () => {
    const { model } = opened();
    expect(model.placing().placed.map(({ address }) => address)).toContain(SHAFT);
    const aids = model.moveAids(SHAFT);
    expect(aids.circles.map(({ count }) => count)).toContain('84 links');
    expect(model.drawingFile(0, 'first angle')).toMatch(/^<svg .*viewBox/);
  });
});
