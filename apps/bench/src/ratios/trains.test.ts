import { expect, it } from 'vitest';
import demo from '../../../../examples/marsh-hauler/build.json?raw';
import { createModel } from '../worker/model.ts';
import { moved, readPairs, readTeeth, requestOf, type TrainForm } from './train-form.ts';
import { changeLines, measureText, teethText } from './train-words.ts';

const opened = () => {
  const model = createModel();
  if (!model.open(demo, []).ok) throw new Error('The demo cannot be read.');
  return model;
};
const FORM: TrainForm = { targets: null, stages: {}, order: ['ratio', 'buy'], shelfOnly: false, best: 5 };

it('reads teeth and pairs as they are typed, and nothing else', () => {
  expect(readTeeth('11..30')).toEqual([11, 30]);
  expect(readTeeth(' 17 ')).toEqual([17, 17]);
  for (const wrong of ['', '30..11', '4..9', '9-30', '17.5', '9..400']) expect(readTeeth(wrong)).toBeNull();
  expect(readPairs('14:33, 15 : 34')).toEqual([
    [14, 33],
    [15, 34],
  ]);
  for (const wrong of ['', '14', '14:33,', '3:33']) expect(readPairs(wrong)).toBeNull();
});

it('makes a request of the form, or names all that cannot be read', () => {
  const choices = opened().ratioChoices();
  expect(choices.stages.map(({ stage }) => stage)).toEqual(['chain-1', 'bevel', 'chain-2']);
  expect(requestOf(FORM, choices)).toMatchObject({ ok: true, request: { best: 5, stages: {}, targets: [] } });
  const wrong = { from: 'range', driver: 'few', driven: '9', pairs: '' } as const;
  const pairs = { from: 'pairs', driver: '', driven: '', pairs: '14' } as const;
  const refused = requestOf({ ...FORM, stages: { 'chain-1': wrong, bevel: pairs } }, choices);
  expect(refused.ok ? [] : refused.faults.map(({ stage, key }) => [stage, key])).toEqual([
    ['chain-1', 'driver'],
    ['bevel', 'pairs'],
  ]);
  expect(moved(['ratio', 'buy', 'wear'], 'wear', -1)).toEqual(['ratio', 'wear', 'buy']);
  expect(moved(['ratio', 'buy'], 'ratio', -1)).toEqual(['ratio', 'buy']);
});

it('finds trains in the worker, in words that say what each asks for; all of it can leave the worker', async () => {
  const model = opened();
  const choices = model.ratioChoices();
  const read = requestOf(FORM, choices);
  if (!read.ok) throw new Error('The form cannot be read.');
  const outcome = await model.findTrains(read.request, () => undefined);
  if (!outcome?.ok) throw new Error(outcome?.says ?? 'stopped');
  expect(outcome.answer.trains).toHaveLength(5);
  expect(structuredClone(outcome.answer)).toEqual(outcome.answer);
  const [train] = outcome.answer.trains;
  if (!train) throw new Error('No train.');
  expect(measureText(train, 'ratio', {})).toBe('inside');
  expect(teethText(train.pairs)).toContain('14\u2009:\u200933');
  expect(changeLines(train, {}).join(' ')).toMatch(/Chain 2: \d+ links.*Passes the openings/);
  const compared = await model.compareTrains([[], train.pairs]);
  expect(compared?.ok && compared.answer.map(({ pairs }) => pairs)).toEqual([[], train.pairs]);
});

it('ends a search when it is stopped, when the next one begins, and when the build is left or changed', async () => {
  const model = opened();
  const read = requestOf({ ...FORM, best: 50 }, model.ratioChoices());
  if (!read.ok) throw new Error('The form cannot be read.');
  const search = () => model.findTrains(read.request, () => undefined);
  const stopped = search();
  model.stopTrains();
  expect(await stopped).toBeNull();
  const overtaken = search();
  const changed = search();
  expect(await overtaken).toBeNull();
  model.apply([{ op: 'set', at: '/path/stages/chain-1/teeth/driver', value: 16 }]);
  expect(await changed).toBeNull();
  const left = search();
  model.close();
  expect(await left).toBeNull();
});

it('refuses in words: a stage without teeth, and a price that is not there', async () => {
  const model = opened();
  const swap = await model.swapTable({ stage: 'no stage', end: 'driver', teeth: [9, 12] });
  expect(swap).toMatchObject({ ok: false, says: expect.stringContaining('a stage with teeth is accepted') });
  const read = requestOf({ ...FORM, order: ['price'] }, model.ratioChoices());
  if (!read.ok) throw new Error('The form cannot be read.');
  const outcome = await model.findTrains(read.request, () => undefined);
  expect(outcome).toMatchObject({ ok: false, says: expect.stringContaining('Ranked by price') });
});
