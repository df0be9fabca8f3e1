import { describe, expect, test } from 'vitest';
import { fieldsAt, typeField } from './fields.ts';
import { applyEdit, openSession } from './session.ts';
import type { Session } from './session-types.ts';
import { SMALL_BUILD } from './testing/small-build.ts';

function open(): Session {
  const opened = openSession(JSON.stringify(SMALL_BUILD, null, 2));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

const field = (address: string, at: string) => fieldsAt(open(), address).find((f) => f.address === at);

describe('fields of an element', () => {
  test('a stage lists every key of its kind, blank ones too', () => {
    expect(fieldsAt(open(), '/path/stages/chain-1').map((f) => f.address.slice('/path/stages/chain-1'.length))).toEqual(
      [
        '/name',
        '/from',
        '/to',
        '/chain',
        '/strands',
        '/teeth/driver',
        '/teeth/driven',
        '/links',
        '/tensioner',
        '/joint',
        '/largest/driver',
        '/largest/driven',
        '/stretch',
        '/strength',
        '/oiled',
        '/breaks',
        '/efficiency',
      ],
    );
  });

  test('a blank field shows the row that it stands on', () => {
    const efficiency = field('/path/stages/chain-1', '/path/stages/chain-1/efficiency');
    expect(efficiency?.text).toBeNull();
    expect(efficiency?.assumed?.text).toMatch(/^\d+\.\.\d+ %$/);
    expect(efficiency?.assumed?.source).not.toBe('');
  });

  test('a fraction of an inch says what it is in millimetres', () => {
    expect(field('/path/shafts/axle', '/path/shafts/axle/seats/sprocket/station')).toMatchObject({
      text: '3 1/2 in',
      resolved: 'is 88.9\u2009mm',
    });
  });

  test('a seat is chosen among the seats that its kind of stage fits', () => {
    expect(field('/path/stages/chain-1', '/path/stages/chain-1/to')?.choices).toEqual([
      'output/sprocket',
      'axle/sprocket',
    ]);
  });
});

describe('typing into a field', () => {
  test('gives a named edit and keeps the text as typed', () => {
    expect(typeField(open(), '/brief/vehicle/mass', ' 700 lb ')).toEqual({
      ok: true,
      name: 'Vehicle, mass, ready to drive, no load 310 kg → 700 lb',
      patches: [{ op: 'set', at: '/brief/vehicle/mass', value: '700 lb' }],
    });
  });

  test.each([
    ['/brief/vehicle/mass', '58', 'quantity.unit-missing'],
    ['/brief/vehicle/mass', '58 mm', 'quantity.unit-wrong-kind'],
    ['/brief/vehicle/mass', '', 'edit.required'],
    ['/path/stages/chain-1/teeth/driver', '16.5', 'edit.number'],
    ['/path/stages/chain-1/teeth/driver', '2', 'edit.limit'],
    ['/path/stages/chain-1/tensioner', 'perhaps', 'edit.choice'],
    ['/path/nowhere', '1 mm', 'edit.address'],
  ])('%s = %j is refused with a right example', (address, typed, code) => {
    const result = typeField(open(), address, typed);
    expect(result).toMatchObject({ ok: false, fault: { code, address } });
    if (!result.ok) expect(result.fault.accepted).not.toBe('');
  });

  test('blanking an optional field takes its key out, and the number is listed as assumed', () => {
    const session = open();
    const typed = typeField(session, '/brief/engine/idle', '');
    if (!typed.ok) throw new Error(typed.fault.problem);
    const edited = applyEdit(session, typed.patches);
    if (!edited.ok) throw new Error('edit');
    expect(edited.session.text).not.toContain('"idle"');
    expect(edited.session.assessment.assumed.map((a) => a.address)).toContain('/brief/engine/idle');
  });

  test('a new key takes its place in the order of the schema', () => {
    const session = open();
    const typed = typeField(session, '/brief/engine/primary', '72:26');
    expect(typed).toMatchObject({ ok: true, patches: [{ at: '/brief/engine/primary', before: 'gears' }] });
  });

  test('a direction takes three numbers', () => {
    const typed = typeField(open(), '/path/shafts/axle/direction', '0, 1 0');
    expect(typed).toMatchObject({ ok: true, patches: [{ value: [0, 1, 0] }] });
  });
});
