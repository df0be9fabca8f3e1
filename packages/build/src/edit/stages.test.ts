import { describe, expect, test } from 'vitest';
import { applyPatches } from '../document/patch.ts';
import { applyEdit, openSession } from '../session.ts';
import type { Session } from '../session-types.ts';
import { SMALL_BUILD } from '../testing/small-build.ts';
import { newId } from './ids.ts';
import { stageKinds } from './stages.ts';
import { formFor, structureEdit } from './structure-edit.ts';
import type { EditRequest } from './types.ts';

function open(): Session {
  const opened = openSession(JSON.stringify(SMALL_BUILD, null, 2));
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
}

function edited(session: Session, request: EditRequest): Session {
  const edit = structureEdit(session, request);
  if (!edit.ok) throw new Error(`${JSON.stringify(request)}: ${JSON.stringify(edit.faults)}`);
  const next = applyEdit(session, edit.patches);
  if (!next.ok) throw new Error(JSON.stringify(next.faults));
  expect(applyPatches(next.session.text, next.inverse)).toMatchObject({ ok: true, text: session.text });
  return next.session;
}

const TYPED: Readonly<Record<string, string>> = {
  driver: '15',
  driven: '45',
  chain: '520',
  pitch: '8 mm',
  body: 'subframe',
};

function insert(
  session: Session,
  stage: string,
  side: 'before' | 'after',
  kind: string,
  more: Record<string, string> = {},
): Session {
  const answers = Object.fromEntries(
    formFor(session, '/path/stages', kind).fields.map(({ address, text, choices, example, optional }) => [
      address,
      more[address] ??
        TYPED[address.slice(address.lastIndexOf('/') + 1)] ??
        text ??
        (optional ? '' : (choices?.[0] ?? example ?? '')),
    ]),
  );
  return edited(session, { do: 'insert stage', stage, side, kind, answers });
}

const columns = (session: Session): string[] => session.assessment.path.map(({ kind }) => kind);
const near = (a: readonly number[] | undefined, b: readonly number[]): void =>
  b.forEach((x, k) => {
    expect(a?.[k]).toBeCloseTo(x, 3);
  });
const seatAt = (session: Session, reference: string) => {
  const [shaftId, seatId] = reference.split('/');
  return session.evaluation.model.shafts.find(({ id }) => id === shaftId)?.seats.find(({ id }) => id === seatId)?.at;
};

describe('a stage more or less', () => {
  test('from one stage to six of all kinds, before and after, and back to one', () => {
    let session = open();
    for (const [k, kind] of stageKinds(session).slice(0, 5).entries()) {
      const ids = Object.keys(session.build.path.stages);
      session = insert(session, ids[k % ids.length] ?? '', k % 2 === 0 ? 'after' : 'before', kind);
      expect(session.assessment.path.filter(({ address }) => address.startsWith('/path/stages/'))).toHaveLength(k + 2);
    }
    expect(columns(session).filter((kind) => kind === 'shaft').length).toBeGreaterThanOrEqual(6);
    while (Object.keys(session.build.path.stages).length > 1) {
      const at = `/path/stages/${Object.keys(session.build.path.stages).at(-1)}`;
      session = edited(session, { do: 'remove', at });
    }
    expect(Object.keys(session.build.path.shafts)).toHaveLength(1);
    expect(
      structureEdit(session, { do: 'remove', at: `/path/stages/${Object.keys(session.build.path.stages)[0]}` }),
    ).toMatchObject({
      ok: false,
    });
  });

  test.each(['before', 'after'] as const)(
    'every kind can stand %s the only stage, and its ends are where the form says',
    (side) => {
      for (const kind of stageKinds(open())) {
        const session = insert(open(), 'chain-1', side, kind);
        expect(columns(session).filter((one) => one === kind).length, kind).toBeGreaterThan(0);
        expect(columns(session)[0]).toBe('engine');
        expect(columns(session).at(-1)).toBe('ground');
      }
    },
  );

  test('a chain stands in line with the seat it takes over; the old stage’s seats are told to be brought into line', () => {
    const session = insert(open(), 'chain-1', 'before', 'chain', { '/path/stages/+/name': 'First chain' });
    const stage = session.build.path.stages['first-chain'];
    expect(stage).toMatchObject({ from: 'output/sprocket', to: 'shaft-a/sprocket-1' });
    expect(session.build.path.stages['chain-1']).toMatchObject({ from: 'shaft-a/sprocket-2', to: 'axle/sprocket' });
    const [a, b] = [seatAt(session, 'output/sprocket'), seatAt(session, 'shaft-a/sprocket-1')];
    expect(a?.[1]).toBeCloseTo(b?.[1] ?? 0, 4);
    expect(session.build.path.shafts['shaft-a']?.seats['bearing-1']).toMatchObject({ body: 'subframe' });
  });

  test('a bevel pair stands with its axes meeting, each gear at the other’s pitch radius m z / 2 from the apex', () => {
    const session = insert(open(), 'chain-1', 'before', 'bevel', { '/path/stages/+/module': '4 mm' });
    expect(session.build.brief.engine.output.seats.sprocket).toMatchObject({ kind: 'gear', name: 'gear 15' });
    // The output runs along y at x 600, z 50; its gear is at y 88.9, so the apex lies 4 × 45 / 2 = 90 mm further out.
    near(seatAt(session, 'output/sprocket'), [0.6, 0.0889, 0.05]);
    const shaft = session.evaluation.model.shafts.find(({ id }) => id === 'shaft-a');
    expect(shaft?.direction).toEqual([1, 0, 0]);
    near(shaft?.origin.slice(1), [0.1789, 0.05]);
    near(seatAt(session, 'shaft-a/gear'), [0.63, 0.1789, 0.05]);
  });

  test('a spur pair stands at m (z1 + z2) / 2', () => {
    const session = insert(open(), 'chain-1', 'before', 'spur', { '/path/stages/+/module': '3 mm' });
    const [a, b] = [seatAt(session, 'output/sprocket') ?? [], seatAt(session, 'shaft-a/gear') ?? []];
    expect(Math.hypot((a[0] ?? 0) - (b[0] ?? 0), (a[2] ?? 0) - (b[2] ?? 0))).toBeCloseTo(0.003 * 30, 4);
  });

  test('an adjuster that no longer fits its seat goes too, and is named before', () => {
    const with1 = edited(open(), {
      do: 'add',
      at: '/path/adjusters',
      kind: null,
      answers: {
        '/path/adjusters/+/name': 'rings behind the sprocket',
        '/path/adjusters/+/sets': 'sprocket line',
        '/path/adjusters/+/of': 'output/sprocket',
        '/path/adjusters/+/moves': 'output/sprocket',
        '/path/adjusters/+/along': '0 1 0',
        '/path/adjusters/+/travel': '2 mm',
      },
    });
    const seat = structureEdit(with1, { do: 'remove', at: '/brief/engine/output/seats/sprocket' });
    expect(seat.ok ? '' : seat.faults[0]?.problem).toBe('Chain 1, rings behind the sprocket still use sprocket 15.');
    const answers = Object.fromEntries(
      formFor(with1, '/path/stages', 'bevel').fields.map(({ address, text }) => [
        address,
        TYPED[address.slice(address.lastIndexOf('/') + 1)] ?? text ?? '',
      ]),
    );
    const edit = structureEdit(with1, { do: 'insert stage', stage: 'chain-1', side: 'before', kind: 'bevel', answers });
    expect(edit.ok && edit.also).toContain('The adjuster “rings behind the sprocket” goes too.');
    expect(edit.ok && edit.name).toBe('Add bevel “Bevel 1” before Chain 1');
  });

  test('an empty form names every field that is wanted', () => {
    const edit = structureEdit(open(), {
      do: 'insert stage',
      stage: 'chain-1',
      side: 'before',
      kind: 'chain',
      answers: {},
    });
    expect(edit.ok ? [] : edit.faults.map(({ address }) => address)).toEqual([
      '/path/stages/+/name',
      '/path/stages/+/chain',
      '/path/stages/+/teeth/driver',
      '/path/stages/+/teeth/driven',
      '/path/shafts/+/name',
      '/path/shafts/+/seats/bearing/body',
    ]);
  });
});

describe('ids from names', () => {
  test.each([
    ['Chain 1', [], 'chain-1'],
    ['Chain 1', ['chain-1', 'chain-1-2'], 'chain-1-3'],
    ['  Große Welle, links! ', [], 'grosse-welle-links'],
    ['16B', [], 'stage-16b'],
    ['軸', ['stage'], 'stage-2'],
  ])('%s beside %j is %s', (name, taken, id) => {
    expect(newId(name, taken, 'stage')).toBe(id);
  });
});

describe('points of the torque curve', () => {
  const curved = (): Session => edited(open(), { do: 'paste curve', text: 'rpm Nm\n2000 24\n4000 30\n7000 24.5' });
  const rows = (session: Session) => session.build.brief.engine.curve?.rows;

  test('are added in order, moved between their neighbours, and taken out down to two', () => {
    const added = edited(curved(), { do: 'add curve point', speed: 5000, torque: 29 });
    expect(rows(added)).toEqual([
      [2000, 24],
      [4000, 30],
      [5000, 29],
      [7000, 24.5],
    ]);
    const moved = edited(added, { do: 'move curve point', row: 2, speed: 5200, torque: 28 });
    expect(rows(moved)?.[2]).toEqual([5200, 28]);
    expect(structureEdit(moved, { do: 'move curve point', row: 2, speed: 7000, torque: 28 })).toMatchObject({
      ok: false,
    });
    expect(structureEdit(moved, { do: 'add curve point', speed: 7000, torque: 28 })).toMatchObject({ ok: false });
    const out = edited(edited(moved, { do: 'remove curve point', row: 2 }), { do: 'remove curve point', row: 0 });
    expect(rows(out)).toEqual([
      [4000, 30],
      [7000, 24.5],
    ]);
    expect(structureEdit(out, { do: 'remove curve point', row: 0 })).toMatchObject({ ok: false });
  });

  test('keep their undo names short and in the units of the curve', () => {
    const edit = structureEdit(curved(), { do: 'move curve point', row: 1, speed: 4000, torque: 31 });
    expect(edit.ok && edit.name).toBe('Torque curve, point 2, 30 N.m at 4000 rpm → 31 N.m at 4000 rpm');
  });
});
