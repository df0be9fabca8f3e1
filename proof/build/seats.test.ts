import { readFileSync } from 'node:fs';
import type { Finding } from '@oddwheel/build/assess/types';
import { explainFinding, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');
const SEAT = '/path/shafts/shaft-a/seats/bearing-front';
const FREE = '/path/shafts/shaft-a/seats/bearing-rear';

type Change = Readonly<Record<string, string | number>>;
interface Changes {
  readonly front?: Change;
  readonly frontSeating?: Change;
  readonly rearSeating?: Change;
  readonly plate?: Change;
  readonly rearPlate?: Change;
  readonly loads?: Change;
  /** Keys of the front plates that are left blank. */
  readonly blank?: readonly string[];
}

/** The demo with its front bearing, the plates around it and the temperatures changed. */
function changed(changes: Changes): Session {
  const build = JSON.parse(DEMO);
  // What only the road asks for takes its time and changes nothing here.
  for (const key of ['targets', 'reference', 'suspension']) delete build.brief[key];
  const { seats } = build.path.shafts['shaft-a'];
  const { plates } = build.path;
  Object.assign(seats['bearing-front'], changes.front);
  if (changes.frontSeating) seats['bearing-front'].seating = changes.frontSeating;
  if (changes.rearSeating) seats['bearing-rear'].seating = changes.rearSeating;
  Object.assign(plates['plate-front'], changes.plate);
  Object.assign(plates['plate-rear'], changes.rearPlate);
  Object.assign(build.brief.loads, changes.loads);
  for (const key of changes.blank ?? []) delete plates['plate-front'][key];
  const opened = openSession(JSON.stringify(build), { ends: 'not yet' });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

const all = (changes: Changes): readonly Finding[] => changed(changes).assessment.findings;
const one = (check: string, changes: Changes, seat = SEAT): Finding | undefined =>
  all(changes).find(({ id }) => id === `${check}:${seat}`);
const reserve = (check: string, changes: Changes): number => one(check, changes)?.reserve?.value ?? Number.NaN;

describe('a 47 mm bearing in a plate 2 in wide and 6.35 mm thick', () => {
  const narrow: Changes = {
    front: { row: '6204', opening: '47 mm' },
    plate: { width: '2 in', thickness: '6.35 mm', sheets: 1 },
    blank: ['cut'],
  };

  test('is under the rule for plasma and for laser, with both offers', () => {
    const found = one('plate.cut', narrow);
    expect(found?.severity).toBe('thin');
    const says = found?.says.replaceAll('\u2009', ' ') ?? '';
    expect(says).toContain('is 1.9 mm in 6.35 mm plate');
    expect(says).toContain('under the published rule for plasma, 9.525 mm and for laser, 6.35 mm');
    expect(says).toContain('A shop may still laser it.');
    expect(says).toContain('at least 2 3/8 in wide');
    expect(says).toContain('or the hole smaller than the bearing, up to 38 mm');
    expect(says).toContain('the plate is its shoulder, and rings welded or bolted on are its seat');
  });

  test('each offer cures it', () => {
    expect(one('plate.cut', { ...narrow, plate: { ...narrow.plate, width: '2 3/8 in' } })?.severity).toBe('holds');
    expect(one('plate.cut', { ...narrow, plate: { ...narrow.plate, width: '2 1/4 in' } })?.severity).toBe('thin');
    expect(one('plate.cut', { ...narrow, front: { row: '6204', opening: '38 mm' } })?.severity).toBe('holds');
  });

  test('plasma is not offered where it is asked for, and no plate at all is said', () => {
    const says = one('plate.cut', { ...narrow, blank: [] })?.says ?? '';
    expect(says).not.toContain('laser');
    const gone = one('plate.cut', { ...narrow, plate: { ...narrow.plate, width: '46 mm' } });
    expect(gone?.severity).toBe('thin');
    expect(gone?.says).toContain('leaves nothing');
  });

  test('sheets are cut one by one', () => {
    const two = { ...narrow, plate: { ...narrow.plate, width: '60 mm', thickness: '12.7 mm', sheets: 2 } };
    expect(one('plate.cut', two)?.severity).toBe('holds');
    expect(one('plate.cut', { ...two, plate: { ...two.plate, sheets: 1 } })?.severity).toBe('thin');
  });
});

describe('how a seat is made', () => {
  const made = (frontSeating: Change) =>
    all({ frontSeating }).filter(({ id }) => id.startsWith('seat.made') && id.endsWith(SEAT));

  test.each([
    [{ made: 'bored' }, 'seat.made', 'holds'],
    [{ made: 'laser cut' }, 'seat.made', 'thin'],
    [{ made: 'waterjet cut' }, 'seat.made', 'thin'],
    [{ made: 'laser cut', turns: 'outer ring' }, 'seat.made-turning', 'fails'],
    [{ made: 'plasma cut', turns: 'both' }, 'seat.made-turning', 'fails'],
    [{ made: 'bored', turns: 'outer ring' }, 'seat.made-turning', 'holds'],
    [{ turns: 'inner ring' }, 'seat.made', 'unknown'],
    [{ sitsIn: 'a split ring, clamped', made: 'laser cut' }, 'seat.made', 'holds'],
  ] as const)('%j: %s %s', (seating, check, severity) => {
    expect(made(seating).map((found) => [found.check, found.severity])).toEqual([[check, severity]]);
  });
});

describe('a bearing in aluminium', () => {
  const light = (seating: Change = {}, loads: Change = {}): Changes => ({
    plate: { material: 'aluminium' },
    frontSeating: { made: 'bored', plate: 'H7', ...seating },
    loads,
  });
  const hot = (seating: Change = {}, loads: Change = {}) => one('seat.hot', light(seating, loads));

  test('comes loose when hot, and the cures are named', () => {
    const found = hot();
    expect(found?.severity).toBe('thin');
    for (const cure of ['steel ring', 'split ring that is clamped', 'retaining compound', 'pin or screw'])
      expect(found?.says).toContain(cure);
    expect(found?.assumed).toContain('/brief/loads/hot');
  });

  test('each cure is taken', () => {
    expect(hot({ sitsIn: 'a steel ring' })).toBeUndefined();
    expect(hot({ sitsIn: 'a split ring, clamped' })).toBeUndefined();
    expect(hot({ keptBy: 'retaining compound' })?.severity).toBe('holds');
    expect(hot({ keptBy: 'a pin or screw' })?.severity).toBe('holds');
    expect(hot({ plate: 'N7' })?.severity).toBe('holds');
    expect(one('seat.hot', { frontSeating: { made: 'bored' } })).toBeUndefined();
  });

  test('the hotter, the looser', () => {
    const at = (temperature: string) => reserve('seat.hot', light({}, { hot: temperature }));
    expect(at('120 degC')).toBeLessThan(at('80 degC'));
    expect(at('80 degC')).toBeLessThan(at('40 degC'));
    expect(at('176 degF')).toBeCloseTo(at('80 degC'), 9);
  });

  test('fails where the load goes round against the outer ring', () => {
    const found = one('seat.hot-turning', light({ turns: 'outer ring' }));
    expect(found?.severity).toBe('fails');
    expect(found?.says).toContain('turns in its seat');
    expect(one('seat.hot-turning', light({ turns: 'outer ring', keptBy: 'retaining compound' }))?.severity).toBe(
      'holds',
    );
  });

  test('a free one is gripped when cold', () => {
    const free = (seating: Change): Changes => ({ rearPlate: { material: 'aluminium' }, rearSeating: seating });
    expect(one('seat.cold', free({ made: 'bored', plate: 'H7' }), FREE)?.severity).toBe('thin');
    expect(one('seat.cold', free({ made: 'bored', plate: 'H7', sitsIn: 'a steel ring' }), FREE)).toBeUndefined();
    expect(
      one('seat.cold', { ...free({ made: 'bored', plate: 'G7' }), loads: { cold: '15 degC' } }, FREE)?.severity,
    ).toBe('holds');
  });
});

describe('fits of the seats', () => {
  const shaft = (code: string) => one('seat.shaft', { frontSeating: { made: 'bored', shaft: code } });

  test('a blank one is told, and a loose one creeps under a load that goes round', () => {
    const told = one('seat.shaft', {});
    expect(told?.severity).toBe('holds');
    expect(told?.says).toMatch(/is to be turned to [jkm]s?[56], /);
    expect(shaft('g6')?.severity).toBe('thin');
    expect(shaft('g6')?.says).toContain('creeps');
    expect(shaft('p6')?.severity).toBe('thin');
    expect(shaft('p6')?.says).toContain('C3');
    const own = /turned to ([a-z]+\d)/.exec(told?.says ?? '')?.[1] ?? '';
    expect(shaft(own)?.severity).toBe('holds');
  });

  test('a still outer ring may be loose, a free one must not be tight', () => {
    expect(one('seat.plate', { frontSeating: { made: 'bored', plate: 'G7' } })?.severity).toBe('holds');
    expect(one('seat.plate', { rearSeating: { made: 'bored', plate: 'N7' } }, FREE)?.says).toContain('must slide');
    expect(one('seat.plate', { frontSeating: { made: 'bored', plate: 'H7', turns: 'outer ring' } })?.severity).toBe(
      'thin',
    );
  });

  test('the free bearing has the way that growth and tolerances take', () => {
    const float = (way: string) => one('seat.float', { rearSeating: { made: 'bored', float: way } }, FREE);
    expect(float('0.5 mm')?.severity).toBe('holds');
    expect(float('0.1 mm')?.severity).toBe('thin');
    expect(float('0 mm')?.severity).toBe('thin');
  });

  test('a working is shown for every one', () => {
    const session = changed({});
    const checked = session.assessment.findings.filter(({ check }) =>
      /^(seat\.(shaft|plate|float)|plate\.)/.test(check),
    );
    expect(checked.length).toBeGreaterThan(12);
    for (const { id } of checked) expect(explainFinding(session, id)?.workings.length, id).toBeGreaterThan(0);
  });
});

describe('the plate as a lug', () => {
  const held = (plate: Change, blank: readonly string[] = []) => reserve('plate.hold', { plate, blank });

  test('wider, thicker and shorter plates bear more; steel more than aluminium', () => {
    const own = held({});
    expect(held({ width: '100 mm' })).toBeLessThan(own);
    expect(held({ thickness: '1/4 in' })).toBeLessThan(own);
    expect(held({ span: '220 mm' })).toBeLessThanOrEqual(own);
    expect(held({ material: 'aluminium' })).toBeLessThan(own);
  });

  test('in the worst direction it bears no more than in any other', () => {
    const worst = held({}, ['runs']);
    for (const runs of ['fore and aft', 'from side to side', 'up and down'])
      expect(held({ runs })).toBeGreaterThanOrEqual(worst * (1 - 1e-9));
  });

  test('sizes in any unit give the same', () => {
    expect(held({ width: '5 in', span: '6 in' })).toBeCloseTo(held({ width: '127 mm', span: '152.4 mm' }), 9);
    expect(reserve('plate.cut', { plate: { width: '5 in' } })).toBeCloseTo(
      reserve('plate.cut', { plate: { width: '127 mm' } }),
      9,
    );
  });

  test('a plate that the hole cuts through holds nothing', () => {
    expect(one('plate.hold', { plate: { width: '72 mm' } })?.severity).toBe('fails');
  });
});
