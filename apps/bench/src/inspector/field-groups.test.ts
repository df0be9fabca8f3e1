import type { Field } from '@oddwheel/build/session-types';
import { describe, expect, it } from 'vitest';
import { fieldGroups } from './field-groups.ts';

const field = (group: string | null, groupAddress: string | null, key: string): Field => ({
  address: `${groupAddress ?? '/path/shafts/a'}/${key}`,
  name: key,
  group,
  groupAddress,
  entry: 'text',
  quantity: null,
  range: false,
  text: null,
  resolved: null,
  optional: true,
  row: false,
  choices: null,
  choiceNames: null,
  example: null,
  recipe: null,
  assumed: null,
});
const shape = (...fields: Field[]) =>
  fieldGroups(fields).map(({ name, addresses, fields: own }) => [name, addresses, own.map((one) => one.name)]);

describe('groups of fields', () => {
  it('gather what has one name, from wherever in the list it comes', () => {
    expect(
      shape(
        field(null, null, 'name'),
        field('Curve', '/c/units', 'speed'),
        field('Curve', '/c/rows', '0'),
        field(null, null, 'idle'),
      ),
    ).toEqual([
      [null, [], ['name', 'idle']],
      ['Curve', ['/c/units', '/c/rows'], ['speed', '0']],
    ]);
  });

  it('keep two things of one name apart', () => {
    const bearing = (at: string) => ['name', 'station'].map((key) => field('bearing', at, key));
    expect(shape(...bearing('/s/one'), ...bearing('/s/two'))).toEqual([
      ['bearing', ['/s/one'], ['name', 'station']],
      ['bearing', ['/s/two'], ['name', 'station']],
    ]);
  });
});
