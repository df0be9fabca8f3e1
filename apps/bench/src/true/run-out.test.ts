import type { Json } from '@oddwheel/build/document/json';
import { appendTrue, readTrue } from '@oddwheel/build/true/record';
import type { Outbox, Waiting } from '@oddwheel/store/browser-outbox';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { RunOutClient } from '../link/host-client.ts';
import { newDraft } from './draft.ts';
import { createRunOut, type RunOut } from './run-out.ts';

const PART = { part: 'shaft', seats: { a: '0 mm', b: '200 mm' }, goal: { station: '300 mm', tir: '3 thou' } };
const bead = (clock: string) => ({ part: 'shaft', way: 'bead', bead: { clock, length: '8 mm' } });

/** A host with a record, whose answers can be cut off before or after it has kept what it was sent. */
function host() {
  const state = { text: '', up: true, answers: true };
  let told: () => void = () => undefined;
  let connection: (up: boolean) => void = () => undefined;
  const client: RunOutClient = {
    read: async () => (state.up ? state.text : null),
    add: async (entries) => {
      if (!state.up) return null;
      const acknowledged: string[] = [];
      const refused = [];
      for (const [k, entry] of entries.entries()) {
        const one = appendTrue(state.text, [entry]);
        if (one.ok) {
          state.text += one.text;
          acknowledged.push(...one.added, ...one.known);
        } else
          refused.push(...one.faults.map((fault) => ({ ...fault, address: fault.address.replace(/^\/0/, `/${k}`) })));
      }
      return state.answers ? { acknowledged, refused } : null;
    },
    listen: (changed, up) => {
      told = changed;
      connection = up;
    },
  };
  const back = (): void => {
    Object.assign(state, { up: true, answers: true });
    connection(true);
  };
  return { state, client, back, tell: () => told() };
}

/** What the browser keeps over a reload. */
function browser() {
  const entries = new Map<string, Waiting>();
  const notes = new Map<string, Json>();
  let number = 0;
  const outbox: Outbox = {
    lasting: true,
    put: async (waiting) => {
      for (const one of waiting) entries.set(one.id, one);
    },
    all: async () => [...entries.values()],
    remove: async (ids) => {
      for (const id of ids) entries.delete(id);
    },
    nextNumber: async (least) => {
      number = Math.max(least, number + 1);
      return number;
    },
    note: async (name, value) => void notes.set(name, value),
    noted: async (name) => notes.get(name),
  };
  return {
    outbox,
    entries,
    lose: () => {
      number = 0;
    },
  };
}

const page = async (client: RunOutClient, outbox: Outbox, build = 'Hauler', device = 'phone'): Promise<RunOut> => {
  const runOut = createRunOut({ client, outbox, device, now: () => '2031-05-04T16:20:00Z' });
  await runOut.turnTo(build);
  return runOut;
};
const settled = () => vi.advanceTimersByTimeAsync(5000);
const lines = (text: string) => text.split('\n').filter((line) => line !== '');

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('the record of run-out on the page', () => {
  it('sends each entry once, in a sequence that hangs together', async () => {
    const { state, client } = host();
    const runOut = await page(client, browser().outbox);
    expect(await runOut.add('true-part', PART)).toEqual([]);
    await runOut.add('true-round', bead('6:00'));
    await runOut.add('true-round', bead('7:00'));
    await settled();
    expect(lines(state.text).map((line) => JSON.parse(line).after)).toEqual([null, 'phone.1', 'phone.2']);
    expect(runOut.store.getState()).toMatchObject({ waiting: [], online: true, text: state.text });
  });

  it('keeps entries without a connection, over a reload, and doubles nothing when an answer was lost', async () => {
    const { state, client, back } = host();
    const { outbox } = browser();
    const first = await page(client, outbox);
    await first.add('true-part', PART);
    await settled();
    state.up = false;
    await first.add('true-round', bead('6:00'));
    await settled();
    expect(first.store.getState()).toMatchObject({ online: false, waiting: ['phone.2'] });
    // Loaded again without a connection: the record as last seen, and what waits.
    const second = await page(client, outbox);
    expect(readTrue(second.store.getState().text).rounds).toHaveLength(1);
    expect(readTrue(second.store.getState().text).parts.size).toBe(1);
    await second.add('true-round', bead('7:00'));
    // The host takes them, and dies before it says so.
    Object.assign(state, { up: true, answers: false });
    await settled();
    expect(lines(state.text)).toHaveLength(3);
    expect(second.store.getState().waiting).toHaveLength(2);
    back();
    await settled();
    expect(lines(state.text)).toHaveLength(3);
    expect(second.store.getState()).toMatchObject({ waiting: [], online: true });
    expect(await outbox.all()).toEqual([]);
  });

  it('gives a new number to an entry whose own another one has, and what comes after it follows', async () => {
    const { state, client, back } = host();
    const { outbox, lose } = browser();
    const first = await page(client, outbox);
    await first.add('true-part', PART);
    await settled();
    // The browser lost its numbers, and the record is out of reach.
    lose();
    state.up = false;
    const kept = browser();
    const second = await page(client, kept.outbox);
    await second.add('true-part', { ...PART, part: 'other' });
    await second.add('true-round', { ...bead('6:00'), part: 'other' });
    back();
    await settled();
    const ids = lines(state.text).map((line) => JSON.parse(line).id);
    expect(new Set(ids).size).toBe(3);
    const record = readTrue(state.text);
    expect([...record.parts.keys()].sort()).toEqual(['other', 'shaft']);
    expect(record.rounds).toHaveLength(1);
    expect(second.store.getState().waiting).toEqual([]);
  });

  it('does not send what was made for another build, until it is told to', async () => {
    const one = host();
    const { outbox } = browser();
    one.state.up = false;
    const hauler = await page(one.client, outbox, 'Hauler');
    await hauler.add('true-part', PART);
    const other = host();
    const trike = await page(other.client, outbox, 'Trike');
    await settled();
    expect(other.state.text).toBe('');
    expect(trike.store.getState().elsewhere).toEqual([{ build: 'Hauler', count: 1 }]);
    await trike.adopt('Hauler');
    await settled();
    expect(lines(other.state.text)).toHaveLength(1);
    expect(trike.store.getState()).toMatchObject({ elsewhere: [], waiting: [] });
  });

  it('refuses a wrong entry before it is kept, keeps the draft over a reload, and follows what others add', async () => {
    const { state, client, tell } = host();
    const { outbox, entries } = browser();
    const runOut = await page(client, outbox);
    expect((await runOut.add('true-set', { part: 'shaft' })).map(({ address }) => address)).toContain('/station');
    expect(entries.size).toBe(0);
    const draft = { ...newDraft('shaft', '20 mm'), values: ['1', '2'] };
    runOut.setDraft(draft);
    await settled();
    expect((await page(client, outbox)).store.getState().draft).toEqual(draft);
    const elsewhere = await page(client, browser().outbox, 'Hauler', 'desk');
    await elsewhere.add('true-part', PART);
    await settled();
    tell();
    await settled();
    expect(lines(state.text)).toHaveLength(1);
    expect(elsewhere.store.getState().text).toBe(state.text);
  });
});
