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
  const sheet = trueSheet(added.text, null);
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

  describe('an oval section', () => {
    const seats = [PART, set('0 mm', 0), set('200 mm', 0)];
    const oval = (tir: number, out: number) =>
      sheetOf([...seats, { ...set('300 mm', 0), readings: dial(tir, 0, out) }]);

    it('is told by the whole swing and by its axis, and beads are planned for what the axis may make', () => {
      const sheet = oval(30, 2);
      expect(sheet.swing).toMatch(
        /^Swing the dial will show: 30\.\d\sthou; from the axis alone (29|30)\.\d\sthou, from the section out of round 2\.\d\sthou\.$/u,
      );
      expect(sheet.next.kind).toBe('bead');
      expect(sheet.next.words.expect).toContain('TIR from the axis alone');
      expect(sheet.next.words.stopWhen).toMatch(/when the dial swings by 3\sthou or less/);
      expect(sheetOf([...seats, set('300 mm', 30)]).swing).toBeUndefined();
    });

    it('beyond the goal by its form alone gets no bead but the other way, however true its axis runs', () => {
      for (const tir of [30, 0]) {
        const { next } = oval(tir, 6);
        expect(next.kind).toBe('other way');
        expect(next.words.say).toContain('Turn this section true');
        expect(next.words.why).toMatch(/alone swings the dial by [56]\.?\d*\sthou, and 3\sthou is wanted/);
      }
    });

    it('is good by the whole swing only', () => {
      expect(oval(0, 2).next).toMatchObject({ kind: 'stop', words: { say: expect.stringContaining('is good') } });
      // Its axis makes 2.5 thou, less than the 3 wanted, but the dial shows more.
      expect(oval(2.5, 2.5).next.kind).not.toBe('stop');
    });
  });

  it('gives no advice for a steering part', () => {
    const sheet = sheetOf([{ ...PART, use: 'steering' }, set('0 mm', 0), set('200 mm', 0), set('300 mm', 30)]);
    expect(sheet.next.kind).toBe('refused');
    expect(sheet.ways).toEqual([]);
  });

  it('tells the chuck from the part by half a turn, and leaves the turned set out of the rest', () => {
    const chuck = { setup: 'chuck' };
    // The part makes 20 thou at 12:00, the chuck 8 at 3:00; after half a turn the chuck's stand at 9:00.
    const both = (sign: number) =>
      dial(20, 0).map(({ at, value }) => ({ at, value: value + sign * 4 * Math.sin((at * Math.PI) / 180) }));
    const first = { ...set('300 mm', 0, 0, chuck), readings: both(1) };
    const turned = { ...set('300 mm', 0, 0, chuck), readings: both(-1), turned: true };
    const before = sheetOf([PART, first]);
    expect(before.repeatable).toEqual(['turned']);
    const sheet = sheetOf([PART, first, turned]);
    expect(sheet.repeats[0]).toMatch(
      /^At 300\smm: the part itself makes TIR (19\.[89]|20\.[01]) ± \d\.\d\sthou, high spot at 12:00; the chuck and its spindle make (7\.9|8\.0)\sthou\.$/u,
    );
    expect(sheet.entries.at(-1)?.why).toContain('half a turn');
  });

  it('learns the spread of putting a joint together from three refits in one position', () => {
    const jointed = { ...PART, joints: [{ joint: 'spline', station: '220 mm', positions: 6 }] };
    const bodies = [jointed, set('0 mm', 0), set('200 mm', 0), set('300 mm', 20)];
    const refit = { refit: true };
    expect(sheetOf(bodies).repeatable).toEqual(['refit']);
    expect(sheetOf([...bodies, set('300 mm', 24, 0, refit)]).repeats).toEqual([expect.stringContaining('once more')]);
    const again = sheetOf([...bodies, set('300 mm', 24, 0, refit)]).rounds.at(-1);
    expect([again?.label, again?.did]).toEqual(['again', expect.stringMatching(/^put together again: TIR/)]);
    const three = [...bodies, set('300 mm', 24, 0, refit), set('300 mm', 22, 0, refit)];
    // Offsets 10, 12 and 11 thou in one direction: 1/√2 in either component, four of it in TIR, as far as a dial of half a thou tells.
    expect(sheetOf(three).repeats[0]).toMatch(/Put together 3 times .* ± (2\.[6-9]|3\.[01])\d?\sthou/u);
    // Read again without a refit, it is the same fit.
    expect(sheetOf([...bodies, set('300 mm', 24), set('300 mm', 22)]).repeats).toEqual([]);
    const bead = { part: 'jackshaft', way: 'bead', bead: { clock: '8:00', length: '6 mm' } };
    expect(sheetOf([...three, bead, set('300 mm', 10)]).repeats).toEqual([]);
  });
});
