import { describe, expect, test } from 'vitest';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

type Guard = Readonly<Record<string, string>>;
const FAR: Guard = { rider: '5 m', passenger: '5 m', bystander: '5 m' };
const NEAR: Guard = { ...FAR, bystander: '300 mm' };

/** The small build, one chain from the engine ahead of the wheel, with its guard. */
function found(guard: Guard | null) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD));
  if (guard) build.path.stages['chain-1'].guard = guard;
  const opened = openSession(JSON.stringify(build));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { findings } = opened.session.assessment;
  return (check: string) => findings.find((finding) => finding.check === check);
}

const at = (key: string) => `/path/stages/chain-1/guard/${key}`;
const asked = (guard: Guard | null, check = 'guard.reach') =>
  found(guard)(check)?.missing.map(({ address }) => address);

describe('reach', () => {
  /**
   * Openings and least distances in mm of ISO 13857:2019 table 4, persons of 14 years and older, as a consulting engineer’s page restates
   * it (zt-grassberger.at, “Safety Distance”), typed from there and not from our table.
   */
  test.each([
    ['slots', '4 mm', 2],
    ['slots', '6 mm', 10],
    ['slots', '8 mm', 20],
    ['slots', '10 mm', 80],
    ['slots', '12 mm', 100],
    ['slots', '20 mm', 120],
    ['slots', '20.1 mm', 850],
    ['slots', '120 mm', 850],
    ['squares', '4 mm', 2],
    ['squares', '6 mm', 5],
    ['squares', '8 mm', 15],
    ['squares', '10 mm', 25],
    ['squares', '12 mm', 80],
    ['squares', '30 mm', 120],
    ['squares', '40 mm', 200],
    ['squares', '41 mm', 850],
    ['round holes', '8 mm', 5],
    ['round holes', '10 mm', 20],
    ['round holes', '12 mm', 80],
    ['round holes', '40 mm', 120],
    ['round holes', '120 mm', 850],
  ])('through %s of %s a hand reaches %d mm', (shape, opening, reach) => {
    const guard = { ...NEAR, kind: 'with openings', shape, opening };
    const enough = found({ ...guard, stands: `${reach} mm` })('guard.reach');
    expect(enough?.severity).toBe('holds');
    expect(enough?.demand?.value).toBeCloseTo(reach / 1000, 12);
    const short = found({ ...guard, stands: `${reach * 0.9} mm` })('guard.reach');
    expect(short?.severity).toBe('fails');
    expect(short?.reserve?.value).toBeCloseTo(0.9, 9);
  });

  test('a slot of at most 30 by 65 mm stops the hand at the thumb: 200 mm', () => {
    const guard = { ...NEAR, kind: 'with openings', shape: 'slots', opening: '30 mm', stands: '300 mm' };
    expect(found({ ...guard, slotLength: '65 mm' })('guard.reach')?.demand?.value).toBeCloseTo(0.2, 12);
    expect(found({ ...guard, slotLength: '66 mm' })('guard.reach')?.demand?.value).toBeCloseTo(0.85, 12);
    expect(found({ ...guard, opening: '31 mm', slotLength: '65 mm' })('guard.reach')?.demand?.value).toBeCloseTo(0.85);
  });

  test('openings beyond the table are no guard', () => {
    const guard = { ...NEAR, kind: 'with openings', shape: 'squares', opening: '121 mm', stands: '1 m' };
    const reach = found(guard)('guard.reach');
    expect(reach?.severity).toBe('fails');
    expect(reach?.says).toContain('they are no guard');
  });

  test('beyond an arm’s 850 mm nobody reaches it, and the source of that is named', () => {
    const far = found({ ...FAR, rider: '850 mm', kind: 'none' })('guard.reach');
    expect(far?.severity).toBe('holds');
    expect(far?.wantedFrom).toContain('ISO 13857, 2019, table 3');
    expect(found({ ...FAR, rider: '849 mm', kind: 'none' })('guard.reach')?.severity).toBe('fails');
  });

  test('open, or open on a side, in reach of anyone: it fails, whatever else is not said', () => {
    expect(found({ bystander: '300 mm', kind: 'none' })('guard.reach')?.severity).toBe('fails');
    const side = found({ passenger: '300 mm', kind: 'one side only' })('guard.reach');
    expect(side?.severity).toBe('fails');
    expect(side?.says).toContain('A passenger comes within');
  });

  test('a closed guard holds', () => {
    expect(found({ ...NEAR, kind: 'closed' })('guard.reach')?.severity).toBe('holds');
  });

  test('it draws in where the upper run meets the driver and the lower one the wheel’s sprocket', () => {
    // The driver lies ahead; rolling forward, the upper run is pulled forward onto it.
    expect(found({ ...NEAR, kind: 'closed' })('guard.reach')?.says).toContain(
      'It draws in onto sprocket 15 at its top and onto sprocket 45 at its bottom.',
    );
  });

  test('what the build does not say is asked for', () => {
    expect(asked(null)).toEqual([at('rider'), at('passenger'), at('bystander')]);
    expect(asked({ ...NEAR })).toEqual([at('kind')]);
    expect(asked({ ...NEAR, kind: 'with openings' })).toEqual([at('opening'), at('shape'), at('stands')]);
    expect(asked({ bystander: '2 m', kind: 'closed' })).toEqual([at('rider'), at('passenger')]);
  });
});

describe('toe guard', () => {
  test('missing within reach it fails, fitted or closed it holds, and nobody near needs one', () => {
    expect(found({ ...NEAR, toe: 'none' })('guard.toe')?.severity).toBe('fails');
    expect(found({ ...NEAR, toe: 'fitted' })('guard.toe')?.severity).toBe('holds');
    expect(found({ ...NEAR, kind: 'closed' })('guard.toe')?.severity).toBe('holds');
    expect(found({ ...FAR, toe: 'none' })('guard.toe')?.severity).toBe('holds');
    expect(asked(NEAR, 'guard.toe')).toEqual([at('toe')]);
  });
});

describe('containment', () => {
  test('a chain that nothing holds in is thin; held it holds by the builder’s word; blank it is asked', () => {
    const open = found({ ...NEAR, holds: 'no' })('guard.hold');
    expect(open?.severity).toBe('thin');
    expect(open?.says).toContain('nothing holds it in');
    expect(found({ ...NEAR, holds: 'yes' })('guard.hold')?.severity).toBe('holds');
    expect(asked(null, 'guard.hold')).toEqual([at('holds')]);
  });
});
