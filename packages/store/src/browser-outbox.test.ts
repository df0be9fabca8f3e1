import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openOutbox, type Waiting } from './browser-outbox.ts';

const waiting = (id: string, value = 1): Waiting => ({ id, build: 'Hauler', entry: { id, value } });
const { open } = indexedDB;

beforeEach(async () => {
  for (const { name = '' } of await indexedDB.databases()) indexedDB.deleteDatabase(name);
});
afterEach(() => {
  indexedDB.open = open;
});

describe.each([
  ['in the browser', true],
  ['in the page, where the browser keeps nothing', false],
])('an outbox %s', (_, lasting) => {
  const opened = async () => {
    if (!lasting)
      indexedDB.open = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError');
      };
    return openOutbox();
  };

  it('keeps entries in the order they were put, one an id, until they are removed', async () => {
    const box = await opened();
    expect(box.lasting).toBe(lasting);
    await box.put([waiting('b.1'), waiting('a.2')]);
    await box.put([waiting('b.1', 2), waiting('a.3')]);
    expect(await box.all()).toEqual([waiting('b.1', 2), waiting('a.2'), waiting('a.3')]);
    await box.remove(['a.2', 'unknown.1']);
    expect((await box.all()).map(({ id }) => id)).toEqual(['b.1', 'a.3']);
  });

  it('gives no number twice, and none below what is asked', async () => {
    const box = await opened();
    expect(await Promise.all([box.nextNumber(1), box.nextNumber(1), box.nextNumber(1)])).toEqual([1, 2, 3]);
    expect(await box.nextNumber(10)).toBe(10);
    expect(await box.nextNumber(4)).toBe(11);
  });

  it('keeps a note under its name', async () => {
    const box = await opened();
    expect(await box.noted('draft')).toBeUndefined();
    await box.note('draft', { values: ['1', '2'] });
    await box.note('draft', { values: ['1'] });
    expect(await box.noted('draft')).toEqual({ values: ['1'] });
  });
});

it('what one page put, the next one finds, and two pages give different numbers', async () => {
  const [one, two] = [await openOutbox(), await openOutbox()];
  await one.put([waiting('a.1')]);
  await one.note('build', 'text');
  expect(await two.all()).toEqual([waiting('a.1')]);
  expect(await two.noted('build')).toBe('text');
  const numbers = await Promise.all([one.nextNumber(1), two.nextNumber(1), one.nextNumber(1), two.nextNumber(1)]);
  expect(new Set(numbers).size).toBe(4);
});
