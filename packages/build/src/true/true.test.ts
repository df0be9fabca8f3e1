import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Json } from '../document/json.ts';
import { budgetView, countedSections } from './budget-view.ts';
import { clockAngle, clockText } from './clock.ts';
import { partView } from './part-view.ts';
import { readReadings } from './readings-text.ts';
import { appendTrue, lastOf, nextCounter, readTrue } from './record.ts';
import { otherWays } from './ways.ts';
import { budgetWords, diagnosisWords, nextWords, refusedUse, runoutWords } from './words.ts';

const TAKEN = '2031-05-04T16:20:00Z';
const PART = {
  part: 'jackshaft',
  seats: { a: '0 mm', b: '200 mm' },
  goal: { station: '300 mm', tir: '3 thou' },
  weld: {
    ...{ mode: 'correct', station: '220 mm', steel: 'E355', hardness: 'none', coating: 'none' },
    ...{ smallest: '3 mm', largest: '25 mm' },
  },
};
const MARKS = [0, 45, 90, 135, 180, 225, 270, 315];

const dial = (tir: number, high: number) =>
  MARKS.map((at) => ({ at, value: Math.round(tir * Math.cos(((at - high) * Math.PI) / 180)) / 2 }));
const set = (station: string, tir: number, high = 0, more = {}) => ({
  ...{ part: 'jackshaft', station, setup: 'own bearings', unit: 'thou', step: 0.5, sign: 'out' },
  readings: dial(tir, high),
  ...more,
});
const bead = (clock: string, length: string) => ({ part: 'jackshaft', way: 'bead', bead: { clock, length } });

const kindOf = (body: object) => ('seats' in body ? 'true-part' : 'way' in body ? 'true-round' : 'true-set');
/** Entries of one device, each after the one before it. */
const lines = (bodies: readonly object[], device = 'desk'): Json[] =>
  bodies.map((body, k) => ({
    ...{ id: `${device}.${k + 1}`, kind: kindOf(body), taken: TAKEN, logged: TAKEN },
    ...{ after: k === 0 ? null : `${device}.${k}`, body: body as Json },
  }));
const fileOf = (values: readonly Json[]): string => {
  const added = appendTrue('', values);
  if (!added.ok) throw new Error(JSON.stringify(added.faults));
  return added.text;
};

describe('the record', () => {
  const bodies = [
    PART,
    set('0 mm', 0.5),
    set('200 mm', 0.5),
    set('300 mm', 40),
    bead('6:00', '8 mm'),
    set('300 mm', 30),
  ];

  it('says the same for any order of its lines, and for lines that stand there twice', () => {
    const text = fileOf(lines(bodies));
    const plain = text.trim().split('\n');
    const wanted = JSON.stringify(partView(readTrue(text), 'jackshaft'));
    fc.assert(
      fc.property(fc.shuffledSubarray([...plain, ...plain], { minLength: plain.length * 2 }), (mixed) => {
        expect(JSON.stringify(partView(readTrue(mixed.join('\n')), 'jackshaft'))).toBe(wanted);
      }),
      { numRuns: 30 },
    );
  });

  it('adds each entry once, and nothing at all when one of them is wrong', () => {
    const values = lines(bodies);
    const text = fileOf(values.slice(0, 3));
    const again = appendTrue(text, values);
    expect(again).toMatchObject({
      ok: true,
      added: ['desk.4', 'desk.5', 'desk.6'],
      known: ['desk.1', 'desk.2', 'desk.3'],
    });
    expect(appendTrue(text, lines([{ ...PART, name: 'other' }]))).toMatchObject({
      ok: false,
      faults: [{ code: 'true.clash' }],
    });
    expect(nextCounter(text, 'desk')).toBe(4);
    expect(nextCounter(text, 'phone-1')).toBe(1);
    expect(lastOf(readTrue(text), 'jackshaft')).toBe('desk.3');
  });

  it('stands a torn last line, and writes the next one on a line of its own', () => {
    const text = fileOf(lines(bodies.slice(0, 2)));
    const torn = `${text}{"id":"desk.3","ki`;
    expect(readTrue(torn).bad).toHaveLength(1);
    const more = appendTrue(torn, lines(bodies).slice(2, 3));
    expect(more.ok && readTrue(torn + more.text).sets).toHaveLength(2);
  });

  it('a strike takes a set out, and stays in the file', () => {
    const strike = { id: 'desk.9', kind: 'strike', taken: TAKEN, logged: TAKEN, after: null, body: { of: 'desk.6' } };
    const record = readTrue(fileOf([...lines(bodies), strike]));
    expect(record.struck).toEqual(['desk.6']);
    expect(record.sets).toHaveLength(3);
  });

  it.each([
    [{ ...set('300 mm', 5), station: '300' }, '/0/body/station'],
    [{ ...set('300 mm', 5), setup: 'vice' }, '/0/body/setup'],
    [{ ...set('300 mm', 5), setup: 'V-blocks' }, '/0/body/vAngle'],
    [{ ...set('300 mm', 5), readings: dial(5, 0).slice(0, 3) }, '/0/body/readings'],
    [{ ...set('300 mm', 5), unit: 'kg' }, '/0/body/unit'],
    [{ ...set('300 mm', 5), colour: 'red' }, '/0/body/colour'],
    [bead('6:75', '8 mm'), '/0/body/bead/clock'],
    [{ ...PART, seats: { a: '20 mm', b: '20 mm' } }, '/0/body/seats/b'],
    [{ ...PART, weld: { ...PART.weld, steel: '' } }, '/0/body/weld/steel'],
    [{ ...PART, weld: { ...PART.weld, mode: 'weld-up' } }, '/0/body/weld/owed'],
  ])('wrong entry %#: the place is named', (body, address) => {
    const result = appendTrue('', lines([body]));
    expect(result.ok ? [] : result.faults.map((fault) => fault.address)).toContain(address);
  });
});

describe('readings as text', () => {
  it.each([
    ['mark,dial\n0,1.5\n90,2\n180,-1\n270,0', 90, 2],
    ['0 1.5\n90 2\n180 -1 # here it slipped\n270 0\n', 90, 2],
    ['0;1,5\n90;2,0\n180;-1\n270;0', 0, 1.5],
    ['1.5\n2\n-1\n0', 90, 2],
    ['1.5, 2, -1, 0', 90, 2],
    ['1.5 2 −1 0', 180, -1],
  ])('text %#', (text, at, value) => {
    const read = readReadings(text);
    expect(read.ok && read.readings.find((one) => one.at === at)?.value).toBe(value);
    expect(read.ok && read.readings).toHaveLength(4);
  });

  it('names the line that is wrong', () => {
    expect(readReadings('0,1\n90,x')).toMatchObject({ ok: false, faults: [{ line: 2, read: 'x' }] });
    expect(readReadings('0,1\n90,1,2\n')).toMatchObject({ ok: false, faults: [{ line: 2 }] });
    expect(readReadings('')).toMatchObject({ ok: false });
  });

  it('clock texts and angles go both ways', () => {
    for (const text of ['12:00', '3:00', '6:30', '11:45']) expect(clockText(clockAngle(text) ?? Number.NaN)).toBe(text);
    expect(clockAngle('13:00')).toBeUndefined();
  });
});

describe('a part by its record', () => {
  const view = (bodies: readonly object[]) => {
    const found = partView(readTrue(fileOf(lines(bodies))), 'jackshaft');
    if (!found) throw new Error('the part was expected');
    return found;
  };
  const seats = [PART, set('0 mm', 0), set('200 mm', 0)];

  it('asks for the seats first, then for the station that matters', () => {
    expect(view([PART]).missing).toHaveLength(3);
    expect(view(seats).missing.join(' ')).toContain('300 mm');
  });

  it('states run-out against the seats, whatever the chuck does', () => {
    const chuck = [PART, set('0 mm', 10, 0), set('200 mm', 10, 0), set('300 mm', 50, 0)];
    const { atGoal } = view(chuck);
    expect((atGoal?.tir ?? 0) / 25.4e-6).toBeCloseTo(40, 0);
    expect(atGoal && runoutWords(atGoal, 'thou')).toMatch(/TIR (39\.[5-9]|40)/);
    expect(atGoal && runoutWords(atGoal, 'thou')).toMatch(/offset (19\.[5-9]|20)/);
  });

  it('advises a bead opposite the high spot, in words, learns from it, and waits for a reading after it', () => {
    const first = view([...seats, set('300 mm', 40, 0)]);
    expect(first.advice).toMatchObject({ do: 'bead', trial: true });
    const words =
      first.advice && nextWords(first.advice, first.goal, 'thou', () => ({ judged: false, why: 'no build is open' }));
    expect(words?.say).toMatch(/^Weld a bead \d+.mm long at 6:00\. It is a trial/);
    expect(words?.cautions.join(' ')).toContain('never through bearings');
    const waits = view([...seats, set('300 mm', 40, 0), bead('6:00', '8 mm')]);
    expect(waits.advice).toBeUndefined();
    expect(waits.missing.join(' ')).toContain('after the last bead');
    const after = view([...seats, set('300 mm', 40, 0), bead('6:00', '8 mm'), set('300 mm', 30, 0)]);
    expect(after.state?.laid).toHaveLength(1);
    expect(after.history.map(({ tir }) => Math.round(tir / 25.4e-6))).toEqual([40, 30]);
  });

  it('a warm set waits; a good part stops; another clocking does not count', () => {
    const warm = { warm: { near: '45 °C', far: '30 °C' } };
    const heated = view([...seats, set('300 mm', 40), bead('6:00', '8 mm'), set('300 mm', 30, 0, warm)]);
    expect(heated.advice).toMatchObject({ do: 'wait' });
    const cooled = view([
      ...seats,
      set('300 mm', 40),
      bead('6:00', '8 mm'),
      set('300 mm', 30, 0, warm),
      set('300 mm', 32),
    ]);
    expect(cooled.state?.laid).toHaveLength(1);
    expect(cooled.advice?.do).toBe('bead');
    expect(view([...seats, set('300 mm', 1)]).advice).toMatchObject({ do: 'stop', because: 'good' });
    const turned = view([...seats, set('300 mm', 40), set('300 mm', 20, 0, { clocking: { spline: 2 } })]);
    expect(turned.leftOut.length).toBe(3);
    expect(turned.missing.length).toBeGreaterThan(0);
  });

  it('tells the budget from what is measured and typed, and unknown where the stiffness is missing', () => {
    const serves = {
      sprocket: { rootDiameter: '150 mm', made: 'turned' },
      balance: { mass: '4 kg', topSpeed: '1800 rpm', grade: '16 mm/s' },
      contributors: [{ name: 'bore clearance', tir: '2 thou' }],
    };
    const { part, atGoal } = view([{ ...PART, serves }, set('0 mm', 0), set('200 mm', 0), set('300 mm', 6)]);
    const budget = budgetView(part, atGoal, [], 1e-4);
    expect(budget?.limits.map(({ what }) => what)).toEqual(['sprocket', 'sprocket face', 'balance']);
    expect(budget?.limits[1]).toMatchObject({ tir: expect.closeTo(0.215e-3, 9), verdict: 'holds' });
    expect(budgetView(part, atGoal, [], 3e-4)?.limits[1]?.verdict).toBe('fails either way');
    expect(budgetView(part, atGoal, [], undefined)?.limits[1]?.verdict).toBe('not measured');
    const said = budget ? budgetWords(budget, 'thou').join(' ') : '';
    expect(said).toContain('Worth fixing first: this part, measured');
    expect(said).toContain('unknown; their stiffness is missing');
    expect(
      budgetView({ ...part, serves: { ...part.serves, stiffness: '200 N/mm' } }, atGoal, [], undefined)?.effects.drag,
    ).toBeGreaterThan(1);
    const wrong = appendTrue('', lines([{ ...PART, serves: { ...serves, balance: { mass: '4' } } }]));
    expect(wrong.ok ? 0 : wrong.faults.length).toBe(3);
  });

  it('holds the lean of the axis at its bearings and its spur gear against what they bear', () => {
    const gear = { bevel: false, diameter: '120 mm', module: '3 mm', grade: 8 };
    const body = { ...PART, serves: { bearings: 'deep-groove', gear } };
    // 4 thou TIR, 2 thou off the line, over 100 mm: 0.0508 mm / 100 mm; beyond the seats 8 thou TIR; the dial reads half thou.
    const seen = view([body, set('0 mm', 0), set('100 mm', 4), set('200 mm', 0), set('300 mm', 8)]);
    const budget = budgetView(seen.part, seen.atGoal, countedSections(seen), undefined);
    expect(budget?.leans).toMatchObject([
      { what: 'lean of the bearings', angle: expect.closeTo(1.016e-3, 4), most: 0.001, verdict: 'fails either way' },
      { what: 'lean of the gear', angle: expect.closeTo(1.016e-3, 4), most: 0.0005, verdict: 'fails either way' },
    ]);
    expect(budget ? budgetWords(budget, 'thou').join(' ') : '').toContain('Limit of the lean of the bearings: 0.057°');
    const two = view([body, set('0 mm', 0), set('200 mm', 0)]);
    expect(countedSections(two).length).toBe(2);
    expect(budgetView(seen.part, seen.atGoal, countedSections(two), undefined)?.leans[0]?.verdict).toBe('not measured');
  });

  it('tells a bend, and leaves steering to a licensed shop', () => {
    const stations = ['0 mm', '50 mm', '100 mm', '150 mm', '200 mm', '250 mm', '300 mm'];
    const bent = view([PART, ...stations.map((station, k) => set(station, Math.max(0, k - 2) * 20, 90))]);
    expect(bent.diagnosis && diagnosisWords(bent.diagnosis)).toContain('bent at');
    expect(refusedUse({ ...bent.part, use: 'steering' })).toContain('licensed shop');
    expect(refusedUse(bent.part)).toBeUndefined();
    expect(
      view([{ ...PART, use: 'brake' }, set('0 mm', 0), set('200 mm', 0), set('300 mm', 40)]).advice,
    ).toBeUndefined();
  });

  it('other ways come first: re-clocking once two clockings are measured, a shim, a press', () => {
    const jointed = { ...PART, joints: [{ joint: 'spline', station: '220 mm', positions: 6 }] };
    const at = (mark: number, tir: number, high: number) =>
      [set('0 mm', 0), set('200 mm', 0), set('300 mm', tir, high)].map((one) => ({
        ...one,
        clocking: { spline: mark },
      }));
    const waysOf = (bodies: readonly object[]) => {
      const record = readTrue(fileOf(lines(bodies)));
      const found = partView(record, 'jackshaft');
      return found ? otherWays(record, found, 'thou') : [];
    };
    const one = waysOf([jointed, ...at(0, 20, 0)]);
    expect(one[0]?.say).toContain('1 more clocking tells');
    // Both parts bring 10 thou of TIR: in line they make 20, half a turn apart nothing.
    const two = waysOf([jointed, ...at(0, 20, 0), ...at(1, 2 * 10 * Math.cos(Math.PI / 6), 30)]);
    expect(two[0]?.say).toContain('spline at position 3 of 6');
    const shimmed = waysOf([...seats, set('300 mm', 10), set('320 mm', 6, 90, { face: '80 mm' })]);
    expect(shimmed.find(({ way }) => way === 'shim')?.say).toContain('at 9:00');
    const stations = ['0 mm', '50 mm', '100 mm', '150 mm', '200 mm', '250 mm', '300 mm'];
    const press = { diameter: '25 mm', yield: '350 MPa' };
    const bent = waysOf([
      { ...PART, press },
      ...stations.map((station, k) => set(station, Math.max(0, k - 2) * 20, 90)),
    ]);
    expect(bent.find(({ way }) => way === 'press')?.say).toMatch(/ram at 9:00.*yielding begins/);
  });
});
