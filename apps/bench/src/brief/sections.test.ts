import type { Field } from '@oddwheel/build/session-types';
import { describe, expect, it } from 'vitest';
import { curveOf, curveUnits, sectionOf, sheetAddresses, sheetSections, stateOf } from './sections.ts';

const field = (address: string, text: string | null, more: Partial<Field> = {}): Field => ({
  address,
  name: address.split('/').at(-1) ?? '',
  group: null,
  groupAddress: null,
  entry: 'text',
  quantity: null,
  range: false,
  text,
  resolved: null,
  optional: true,
  row: false,
  choices: null,
  choiceNames: null,
  example: null,
  recipe: null,
  assumed: null,
  ...more,
});

const ENGINE: readonly Field[] = [
  field('/brief/engine/name', 'twin'),
  field('/brief/engine/curve/units/speed', 'rpm'),
  field('/brief/engine/curve/units/torque', 'N.m'),
  field('/brief/engine/curve/rows/0', '1300 24.5'),
  field('/brief/engine/curve/rows/1', '8800 32.4'),
  field('/brief/engine/gears/0', '2.75'),
  field('/brief/engine/output/sense', 'positive'),
];
const part = (address: string) => ({ address, name: address, present: true });
const PARTS = ['/brief/shop', '/brief/vehicle', '/brief/duty', '/brief/new', '/units'].map(part);

describe('sections of the brief', () => {
  it('come in the order of the work; parts that are not known to it come after, and settings last', () => {
    expect(sheetAddresses(PARTS)).toEqual([
      '/brief/engine',
      '/brief/wheel',
      '/brief/vehicle',
      '/brief/duty',
      '/brief/shop',
      '/brief/new',
      '/units',
    ]);
  });

  it('part engine from gearbox, and show every field but the curve, which has a plot and a table', () => {
    const sections = sheetSections(PARTS, new Map([['/brief/engine', ENGINE]]));
    const shown = sections.flatMap(({ fields }) => fields.map(({ address }) => address));
    expect(shown).toEqual(['/brief/engine/name', '/brief/engine/gears/0', '/brief/engine/output/sense']);
    expect(sectionOf(sections, '/brief/engine/gears/0')?.key).toBe('gearbox');
    expect(sectionOf(sections, '/brief/engine/curve/rows/0')?.key).toBe('engine');
    expect(sectionOf(sections, '/brief/vehicle/mass')?.key).toBe('vehicle');
    expect(sectionOf(sections, '/path/shafts/a')).toBeUndefined();
    expect(curveUnits(ENGINE)).toHaveLength(2);
  });

  it('say what is assumed and what is not given', () => {
    const assumed = { text: '90..97 %', source: 'a book' };
    expect(stateOf([field('/a', null, { assumed }), field('/b', null), field('/c', '1')])).toBe(
      '1 assumed, 1 not given',
    );
    expect(stateOf([field('/c', '1')])).toBe('as written');
    expect(stateOf([])).toBe('not given');
  });

  it('the curve is read from its fields, and is none without units', () => {
    expect(curveOf(ENGINE)).toEqual({
      speedUnit: 'rpm',
      torqueUnit: 'N.m',
      rows: [
        [1300, 24.5],
        [8800, 32.4],
      ],
    });
    expect(curveOf([field('/brief/engine/name', 'twin')])).toBeNull();
  });
});
