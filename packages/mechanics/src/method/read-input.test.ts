import { describe, expect, it } from 'vitest';
import { readInput } from './read-input.ts';
import { lever, pulleys } from './testing/samples.ts';

const ROWS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  'pulleys/small': { driver: 0.1, bore: 0.02, trains: 2, broken: 2.5 },
};
const lookup = (row: string): Readonly<Record<string, number>> | null => ROWS[row] ?? null;

describe('reading an input', () => {
  it('takes unit texts, SI numbers and rows, and says which defaults and rows were used', () => {
    // 60 rpm is one turn a second; 12 in = 304.8 mm (yard and pound agreement of 1959).
    expect(readInput(pulleys, { speed: '60 rpm', driver: { row: 'pulleys/small' }, driven: '12 in' }, lookup)).toEqual({
      ok: true,
      input: { speed: 2 * Math.PI, driver: 0.1, driven: 0.3048, slip: 0.02 },
      defaults: ['slip'],
      rows: { driver: 'pulleys/small' },
    });
    expect(
      readInput(
        pulleys,
        { speed: 5, driver: { row: 'pulleys/small', field: 'bore' }, driven: 0.3, slip: '3 %' },
        lookup,
      ),
    ).toMatchObject({
      ok: true,
      input: { speed: 5, driver: 0.02, driven: 0.3, slip: 0.03 },
      defaults: [],
    });
  });
  it('takes vectors, lists, whole numbers from rows, choices and texts', () => {
    const json = {
      arm: ['300 mm', 0, '4 in'],
      force: [0, '1 kN', 0],
      ratios: ['64:22', 2],
      trains: { row: 'pulleys/small' },
      side: 'right',
      name: 'hand lever',
    };
    expect(readInput(lever, json, lookup)).toEqual({
      ok: true,
      input: {
        arm: [0.3, 0, 0.1016],
        force: [0, 1000, 0],
        ratios: [64 / 22, 2],
        trains: 2,
        side: 'right',
        name: 'hand lever',
      },
      defaults: [],
      rows: { trains: 'pulleys/small' },
    });
  });
  it('lists all faults at once', () => {
    const read = readInput(pulleys, { speed: '1000', driver: '3 kg', slip: 0.5, drivne: 0.3 });
    expect(read).toEqual({
      ok: false,
      faults: [
        {
          input: 'speed',
          problem: '"1000" has no unit.',
          read: '1000',
          accepted: 'a speed of rotation, such as "9500 rpm" or "995 rad/s", or a plain number in rad/s',
        },
        {
          input: 'driver',
          problem: '"kg" is a unit of mass; here a length is wanted.',
          read: '3 kg',
          accepted: 'a length, such as "6.35 mm", "1 1/4 in" or "30 thou", or a plain number in m; more than 0 m',
        },
        {
          input: 'driven',
          problem: 'The diameter of the driven pulley is missing.',
          read: 'nothing',
          accepted: 'a length, such as "6.35 mm", "1 1/4 in" or "30 thou", or a plain number in m; more than 0 m',
        },
        {
          input: 'slip',
          problem: '0.5 is out of range; it must be at least 0 and at most 0.1.',
          read: '0.5',
          accepted: 'a part of one, such as "0.97" or "97 %"; at least 0 and at most 0.1',
        },
        {
          input: 'drivne',
          problem: 'sample.pulleys has no input "drivne".',
          read: '0.3',
          accepted: 'the keys speed, driver, driven, slip',
        },
      ],
    });
  });
  const good = { arm: [0, 0, 0], force: [0, 0, 0], ratios: [1], name: 'x' };
  it.each([
    ['two entries of a vector', { arm: [1, 2] }, 'arm', 'There are 2 entries.'],
    [
      'a wrong entry, named by its place',
      { force: [0, '3 m', 0] },
      'force/1',
      '"m" is a unit of length; here a force is wanted.',
    ],
    ['a vector as one number', { arm: 3 }, 'arm', 'A list is wanted here.'],
    ['an empty list', { ratios: [] }, 'ratios', 'There are 0 entries.'],
    ['an entry out of range', { ratios: [2, 0] }, 'ratios/1', '0 is out of range; it must be more than 0.'],
    ['a broken count', { trains: 1.5 }, 'trains', 'A whole number is wanted here.'],
    ['too great a count', { trains: 9 }, 'trains', '9 is out of range; it must be at least 1 and at most 4.'],
    ['a word that is no choice', { side: 'middle' }, 'side', 'This is none of the choices.'],
    ['an empty text', { name: '' }, 'name', 'A text is wanted here.'],
    ['null', { trains: null }, 'trains', 'A whole number is wanted here.'],
    [
      'a number that is not finite',
      { ratios: [Number.POSITIVE_INFINITY] },
      'ratios/0',
      'Infinity is not a finite number.',
    ],
    ['an unknown row', { trains: { row: 'pulleys/huge' } }, 'trains', 'There is no table row "pulleys/huge".'],
    [
      'a row without the field',
      { trains: { row: 'pulleys/small', field: 'teeth' } },
      'trains',
      'The row "pulleys/small" has no field "teeth".',
    ],
    [
      'a row whose number does not fit',
      { trains: { row: 'pulleys/small', field: 'broken' } },
      'trains',
      'A whole number is wanted here.',
    ],
    [
      'a row with more keys',
      { trains: { row: 'pulleys/small', unit: 'm' } },
      'trains',
      'This is not a row of a table.',
    ],
    ['a key that every object has', { constructor: 1 }, 'constructor', 'sample.lever has no input "constructor".'],
  ])('refuses %s', (_, change, input, problem) => {
    const read = readInput(lever, { ...good, ...change }, lookup);
    expect(read.ok ? [] : read.faults.map((fault) => [fault.input, fault.problem])).toEqual([[input, problem]]);
  });
  it.each([[null], [3], ['{}'], [[1]]])('refuses %j as a whole', (json) => {
    expect(readInput(pulleys, json)).toMatchObject({
      ok: false,
      faults: [{ input: '', problem: 'An object is wanted.' }],
    });
  });
});
