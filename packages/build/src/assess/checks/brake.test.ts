import { describe, expect, test } from 'vitest';
import { openSession } from '../../session.ts';
import { SMALL_BUILD } from '../../testing/small-build.ts';

type Brake = Readonly<Record<string, string>>;

/** The small build, one chain from engine to wheel, with a brake; its shafts may lie in bearings. */
function opened(brake: Brake, bearings: Readonly<Record<string, string>> = {}) {
  const build = JSON.parse(JSON.stringify(SMALL_BUILD));
  build.brief.loads = { brake: { torque: '300 N.m', ...brake } };
  const seats = build.path.shafts.axle.seats;
  for (const [id, body] of Object.entries(bearings))
    seats[id] = { kind: 'bearing', name: id, station: id === 'right' ? '-60 mm' : '60 mm', body };
  return openSession(JSON.stringify(build));
}

function found(brake: Brake, bearings?: Readonly<Record<string, string>>) {
  const result = opened(brake, bearings);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  const { findings } = result.session.assessment;
  return (check: string) => findings.find((finding) => finding.check === check);
}

describe('brake before a chain', () => {
  const before = { at: 'output/sprocket' };

  test('as the only brake of the axle it fails, and the fix is named', () => {
    const place = found({ ...before, others: 'none' })('brake.place');
    expect(place?.severity).toBe('fails');
    expect(place?.consequence).toBe('loses braking');
    expect(place?.says).toContain('sprocket 15 of Output, before Chain 1');
    expect(place?.says).toContain('Put a brake on the wheel’s own shaft');
  });

  test('the builder’s note makes it thin and is shown; the failing finding gives way to it', () => {
    const find = found({ ...before, others: 'none', note: 'yard cart, second lever on the front wheels' });
    expect(find('brake.place')).toBeUndefined();
    expect(find('brake.noted')?.severity).toBe('thin');
    expect(find('brake.noted')?.says).toContain('“yard cart, second lever on the front wheels”');
  });

  test('while the build does not say whether another works alone, it is unknown, and asks', () => {
    const place = found(before)('brake.place');
    expect(place?.severity).toBe('unknown');
    expect(place?.missing.map(({ address }) => address)).toEqual(['/brief/loads/brake/others']);
  });

  test('another brake on the wheel itself lets it stand, without a note', () => {
    const find = found({ ...before, others: 'works alone', note: 'kept for the record' });
    expect(find('brake.place')?.severity).toBe('holds');
    expect(find('brake.noted')).toBeUndefined();
  });
});

test('a brake at the wheel stands behind every chain, and needs no note', () => {
  const find = found({ at: 'axle/wheel' });
  expect(find('brake.place')?.severity).toBe('holds');
  expect(find('brake.noted')).toBeUndefined();
});

test('without a brake it asks for one, and says nothing of its way', () => {
  const result = openSession(JSON.stringify(SMALL_BUILD));
  if (!result.ok) throw new Error('faults');
  const { findings } = result.session.assessment;
  expect(findings.find(({ check }) => check === 'brake.place')?.severity).toBe('unknown');
  expect(findings.filter(({ check }) => check === 'brake.noted' || check === 'brake.path')).toEqual([]);
});

describe('way of the brake’s torque', () => {
  const arm = { left: 'swinging arm', right: 'swinging arm' };
  const held = { at: 'axle/wheel', heldBy: 'tab on the left tube', body: 'swinging arm' };

  test('asks what holds the caliper, to which body that belongs, and for bearings, whichever is not said', () => {
    const asks = (brake: Brake, bearings = {}) =>
      found(brake, bearings)('brake.path')?.missing.map(({ address }) => address);
    expect(asks({ at: 'axle/wheel' })).toEqual([
      '/brief/loads/brake/heldBy',
      '/brief/loads/brake/body',
      '/path/shafts/axle/seats',
    ]);
    expect(asks({ at: 'axle/wheel', heldBy: 'tab on the left tube' }, arm)).toEqual(['/brief/loads/brake/body']);
  });

  test('held on the body that carries the shaft it holds, names every part on its way and what takes the turning back', () => {
    const path = found(held, arm)('brake.path');
    expect(path?.severity).toBe('holds');
    expect(path?.says).toContain('at wheel of Axle pass through Axle to the wheel.');
    expect(path?.says).toContain('“tab on the left tube” on the swinging arm');
    const before = found({ ...held, at: 'output/sprocket' }, arm)('brake.path');
    expect(before?.missing.map(({ address }) => address)).toEqual(['/brief/engine/output/seats']);
  });

  test('held on another body it fails, since the two move against each other', () => {
    const path = found({ ...held, body: 'vehicle frame' }, arm)('brake.path');
    expect(path?.severity).toBe('fails');
    expect(path?.says).toContain('Hold the caliper on the swinging arm');
    const mixed = found(held, { left: 'swinging arm', right: 'subframe' })('brake.path');
    expect(mixed?.severity).toBe('fails');
  });

  test('blanks for what holds it are refused at their place', () => {
    const result = opened({ ...held, heldBy: '  ' }, arm);
    expect(result.ok).toBe(false);
    if (!result.ok)
      expect(result.faults).toMatchObject([{ address: '/brief/loads/brake/heldBy', problem: 'Here stand no words.' }]);
  });
});
