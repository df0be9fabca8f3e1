import { readFileSync } from 'node:fs';
import { applyEdit, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const open = (text: string): Session => {
  const opened = openSession(text);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  return opened.session;
};
const edit = (session: Session, at: string, value: unknown): Session => {
  const edited = applyEdit(session, [
    value === undefined ? { op: 'remove', at } : { op: 'set', at, value: value as string },
  ]);
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  return edited.session;
};
const firing = (session: Session) => session.assessment.findings.find(({ check }) => check === 'torsion.firing');

const demo = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

describe('free play and natural swings of a whole drive', () => {
  const session = open(demo);

  test('backlash of 0.2 mm at the rim of a gear of 33 teeth of module 5: 0.2 / 82.5 rad there, over the chain behind it at the wheel', () => {
    const part = session.assessment.turning.parts.find(({ name }) => name === 'Bevel pair');
    expect(part?.angle).toBeCloseTo(0.0002 / 0.0825 / (48 / 15), 12);
  });

  test('a chain two links longer adds two pitches over the pitch radius of its driven sprocket', () => {
    const play = (links: number) =>
      edit(session, '/path/stages/chain-2/links', links).assessment.turning.parts.find(({ name }) => name === 'Chain 2')
        ?.angle ?? 0;
    const radius = 0.0254 / (2 * Math.sin(Math.PI / 48));
    expect(play(86) - play(84)).toBeCloseTo((2 * 0.0254) / radius, 9);
  });

  test('two masses on the cush alone: the slowest swing is near the closed form when all else is stiff', () => {
    // The cush of 100 N·m/rad is far softer than chains and shafts.
    const soft = edit(session, '/path/cush/stiffness', '100 N.m/rad');
    const { model, middle } = soft.evaluation;
    const at = middle.scene.at;
    const gear = soft.assessment.turning.gears[4];
    const overall = soft.assessment.gears[4]?.overall.value ?? 0;
    const engine = at(model.vehicle.engineInertia) * overall ** 2;
    const vehicle =
      at(model.vehicle.wheelInertia) +
      at(model.vehicle.otherInertia) +
      (at(model.vehicle.mass) + at(model.vehicle.payload)) * ((middle.scene.rollOut ?? 0) / (2 * Math.PI)) ** 2;
    const closed = Math.sqrt(100 * (1 / engine + 1 / vehicle)) / (2 * Math.PI);
    // Sprockets and gears sit on the engine's side and add a little to it.
    expect((gear?.modes[0] ?? 0) / closed).toBeGreaterThan(0.95);
    expect((gear?.modes[0] ?? 0) / closed).toBeLessThanOrEqual(1);
  });

  test('a softer cush swings slower; without one the drive is told to lack it; without cylinders the beat is unknown', () => {
    const slow = edit(session, '/path/cush/stiffness', '1000 N.m/rad');
    expect(firing(slow)?.reserve?.value).toBeGreaterThan(firing(session)?.reserve?.value ?? Number.POSITIVE_INFINITY);
    const none = edit(session, '/path/cush', undefined);
    const cush = none.assessment.findings.find(({ check }) => check === 'torsion.cush');
    expect(cush?.severity).toBe('thin');
    expect(cush?.says).toContain('between the wheel and Axle C');
    expect(firing(edit(session, '/brief/engine/cylinders', undefined))?.missing[0]?.address).toBe(
      '/brief/engine/cylinders',
    );
  });
});
