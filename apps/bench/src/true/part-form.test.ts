import { bodyFaults } from '@oddwheel/build/true/read-body';
import type { TruePart } from '@oddwheel/build/true/types';
import { describe, expect, it } from 'vitest';
import { fieldOf, formOf, idFor, partBody } from './part-form.ts';

const PART: TruePart = {
  ...{ part: 'jackshaft', name: 'Jackshaft', use: 'drive', shaft: 'shaft-a', seats: { a: '20 mm', b: '180 mm' } },
  goal: { station: '260 mm', tir: '3 thou' },
  joints: [{ joint: 'spline', station: '200 mm', positions: 6 }],
  weld: {
    ...{ mode: 'weld-up', station: '220 mm', steel: 'E355', hardness: 'none', coating: 'zinc, taken off' },
    ...{ smallest: '3 mm', largest: '25 mm', owed: [{ clock: '3:00', length: '20 mm' }] },
  },
  press: { diameter: '25 mm', yield: '350 MPa' },
  serves: {
    bearings: 'tapered',
    ...{ sprocket: { rootDiameter: '150 mm', made: 'welded' }, stiffness: '200 N/mm' },
    balance: { mass: '4 kg', topSpeed: '1800 rpm', grade: '6.3 mm/s' },
    gear: { bevel: true, diameter: '120 mm', module: '3 mm', grade: 7 },
    contributors: [
      { name: 'bore clearance', tir: '2 thou' },
      { name: 'sprocket', tir: '3 thou', high: '140 deg' },
    ],
  },
};

const CARRIED = { gearKind: 'bevel' as const, balanceMass: 'heavy', others: 'bore clearance' };

describe('the form of a part', () => {
  it('gives back what it was made from', () => {
    const { use: _, ...drive } = PART;
    const body = partBody(PART.part, formOf(PART));
    expect(body).toEqual(drive);
    expect(bodyFaults('true-part', body)).toEqual([]);
  });

  it('leads each fault to its field', () => {
    const form = {
      ...formOf(undefined),
      tir: 'little',
      joints: 'spline, 200 mm, many',
      weldMode: 'weld-up' as const,
      ...CARRIED,
    };
    const faults = bodyFaults('true-part', partBody('shaft', form));
    const fields = faults.map(({ address }) => fieldOf(address));
    expect(fields).not.toContain(undefined);
    expect(fields).toEqual(
      expect.arrayContaining([
        'seatA',
        'seatB',
        'station',
        'tir',
        'joints',
        'steel',
        'owed',
        'gearModule',
        'balanceSpeed',
        'others',
      ]),
    );
  });

  it('names a new part by its name, and never as another one', () => {
    expect(idFor('Shaft A', [])).toBe('shaft-a');
    expect(idFor('Shaft A', ['shaft-a', 'shaft-a-2'])).toBe('shaft-a-3');
    expect(idFor(' … ', [])).toBe('part');
  });
});
