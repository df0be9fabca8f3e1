import { describe, expect, it } from 'vitest';
import type { Json } from '../document/json.ts';
import { appendTrue } from './record.ts';
import { trueSheet } from './sheet.ts';
import type { PartSheet } from './sheet-types.ts';

const PART = {
  ...{ part: 'jackshaft', name: 'Jackshaft', seats: { a: '0 mm', b: '200 mm' } },
  goal: { station: '300 mm', tir: '3 thou' },
  weld: {
    ...{ mode: 'correct', station: '220 mm', steel: 'E355', hardness: 'none', coating: 'none' },
    ...{ smallest: '3 mm', largest: '25 mm' },
  },
};
const dial = (tir: number, high: number, oval = 0) =>
  Array.from({ length: 12 }, (_, k) => {
    const turn = (k * Math.PI) / 6;
    const value = (tir / 2) * Math.cos(turn - (high * Math.PI) / 180) + (oval / 2) * Math.cos(2 * turn);
    return { at: 30 * k, value: Math.round(2 * value) / 2 };
  });
const set = (station: string, tir: number, high = 0, more = {}) => ({
  ...{ part: 'jackshaft', station, setup: 'own bearings', unit: 'thou', step: 0.5, sign: 'out' },
  readings: dial(tir, high),
  ...more,
});
const kindOf = (body: object) =>
  'seats' in body ? 'true-part' : 'way' in body ? 'true-round' : 'of' in body ? 'strike' : 'true-set';

function sheetOf(bodies: readonly object[]): PartSheet {
  const entries: Json[] = bodies.map((body, k) => ({
    ...{ id: `phone.${k + 1}`, kind: kindOf(body), after: k === 0 ? null : `phone.${k}`, body: body as Json },
    ...{ taken: `2031-05-04T16:${10 + k}:00Z`, logged: `2031-05-04T16:${10 + k}:00Z` },
  }));
  const added = appendTrue('', entries);
  if (!added.ok) throw new Error(JSON.stringify(added.faults));
  const sheet = trueSheet(added.text);
  expect(sheet.odd).toEqual([]);
  // It goes from the worker to the page as it is.
  expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet);
  const [part] = sheet.parts;
  if (!part) throw new Error('no part');
  return part;
}

describe('the sheet of a part', () => {
  it('asks for both seats and the station that matters, one after the other', () => {
    const asked = [0, 1, 2].map(
      (count) => sheetOf([PART, ...['0 mm', '200 mm', '300 mm'].slice(0, count).map((at) => set(at, 2))]).next,
    );
    expect(asked.map(({ kind, station }) => [kind, station])).toEqual([
      ['measure', '0 mm'],
      ['measure', '200 mm'],
      ['measure', '300 mm'],
    ]);
  });

  it('then says the bead, where its high spot is, and what to expect, in the unit of the dial', () => {
    const sheet = sheetOf([PART, set('0 mm', 0), set('200 mm', 0), set('300 mm', 30, 60)]);
    expect(sheet.now?.words).toMatch(
      /^At 300\smm: TIR (29|30)\.\d ± 0\.\d\sthou, high spot at 2:00 \(offset (14|15)\.\d\sthou\)\.$/u,
    );
    expect(sheet.next.kind).toBe('bead');
    expect(sheet.next.words.say).toContain(sheet.next.bead?.clock);
    expect(sheet.next.expected?.low).toBeLessThan(sheet.next.expected?.tir ?? 0);
    expect(sheet.drawn?.numbers.map(({ name }) => name)).toEqual(['TIR, as read', 'Offset', 'Oval', 'Left over']);
  });

  it('tells rounds with what was done, a worse one plainly', () => {
    const bead = { part: 'jackshaft', way: 'bead', bead: { clock: '8:00', length: '6 mm' } };
    const sheet = sheetOf([PART, set('0 mm', 0), set('200 mm', 0), set('300 mm', 30), bead, set('300 mm', 34)]);
    expect(sheet.rounds.map(({ label }) => label)).toEqual(['start', '1']);
    expect(sheet.rounds[1]?.did).toMatch(/^bead 6 mm at 8:00: TIR 30.* to 33.*; worse, which it learns from too$/u);
  });

  it('shows what was struck out, lets it not count, and puts it back when the strike is struck', () => {
    const bodies = [PART, set('0 mm', 0), set('200 mm', 0), set('300 mm', 30), { of: 'phone.4' }];
    const struck = sheetOf(bodies);
    expect(struck.entries.find(({ id }) => id === 'phone.4')).toMatchObject({ struckBy: 'phone.5' });
    expect(struck.now).toBeUndefined();
    const back = sheetOf([...bodies, { of: 'phone.5' }]);
    expect(back.entries.find(({ id }) => id === 'phone.4')?.struckBy).toBeUndefined();
    expect(back.now?.tir).toBeCloseTo(30 * 25.4e-6, 5);
  });

  it('tells an oval section from an offset, and what a V-block hides', () => {
    const oval = sheetOf([PART, { ...set('0 mm', 0), readings: dial(2, 0, 8) }]);
    expect(oval.drawn?.numbers[2]).toMatchObject({ value: expect.stringMatching(/^8\.\d ± 0\.\d\sthou/u) });
    const hidden = sheetOf([PART, set('0 mm', 4, 0, { setup: 'V-blocks', vAngle: '60 deg' })]);
    expect(hidden.drawn?.doubts.join(' ')).toMatch(/This V hides forms of/);
  });

  it('gives no advice for a steering part', () => {
    const sheet = sheetOf([{ ...PART, use: 'steering' }, set('0 mm', 0), set('200 mm', 0), set('300 mm', 30)]);
    expect(sheet.next.kind).toBe('refused');
    expect(sheet.ways).toEqual([]);
  });
});
