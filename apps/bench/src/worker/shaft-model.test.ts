import { expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { createModel } from './model.ts';

const opened = () => {
  const model = createModel();
  const first = model.open(demo, []);
  if (!first.ok) throw new Error(first.faults.map((fault) => `${fault.address}: ${fault.problem}`).join('\n'));
  return model;
};

it('gives every shaft with its seats and pushes, as something that can leave the worker', () => {
  const shafts = opened().shaftLines(null);
  expect(shafts?.map(({ line }) => line.name)).toEqual(['Output', 'Shaft A', 'Shaft B', 'Axle C']);
  expect(structuredClone(shafts)).toEqual(shafts);
  for (const { line, seats, pushes } of shafts ?? []) {
    expect(line.ok).toBe(true);
    expect(seats.some(({ kind }) => kind === 'bearing')).toBe(true);
    expect('missing' in pushes ? [] : pushes.map(({ way }) => way)).toEqual(['start', 'end']);
  }
});

it('gives one load case for all of them, and null for one that is not', () => {
  const model = opened();
  const cases = model.shaftLines('here')?.map(({ line }) => (line.ok ? line.caseId : null));
  expect(cases).toEqual(['here', 'here', 'here', 'here']);
  expect(model.shaftLines('no such case')).toBeNull();
});
