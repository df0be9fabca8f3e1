import { readFileSync } from 'node:fs';
import { applyEdit, openSession } from '@oddwheel/build/session';
import type { Session } from '@oddwheel/build/session-types';
import { describe, expect, test } from 'vitest';

const DEMO = readFileSync(new URL('../../examples/marsh-hauler/build.json', import.meta.url), 'utf8');

function opened(edits: readonly (readonly [string, string])[]): Session {
  const first = openSession(DEMO);
  if (!first.ok) throw new Error(JSON.stringify(first.faults));
  const edited = applyEdit(
    first.session,
    edits.map(([at, value]) => ({ op: 'set', at, value })),
  );
  if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
  return edited.session;
}

/** Movement of shaft A along itself in first gear at peak torque, m, and the thrust on it, N. */
function along(session: Session): { readonly moved: number; readonly thrust: number } {
  const { scene } = session.evaluation.middle;
  const load = scene.cases[0];
  const answer = load ? scene.strength.answer(1, load) : null;
  if (!answer?.ok) throw new Error('no answer');
  return {
    moved: Math.abs(answer.solution.alongAt(0) ?? 0),
    thrust: Math.abs(answer.solution.reactionAt(0)?.axial ?? 0),
  };
}

describe('gears moving under load', () => {
  const plate = '/path/plates/plate-front';

  test('the plate of the bearing that takes the thrust bends as a strip: F l³ / (48 E I) hinged, a quarter of it built in', () => {
    const hinged = along(opened([[`${plate}/ends`, 'as if hinged']]));
    const builtIn = along(opened([[`${plate}/ends`, 'as if built in']]));
    expect(hinged.thrust).toBeCloseTo(builtIn.thrust, 6);
    const second = (0.14 * 0.0127 ** 3) / 12;
    const bends = (hinged.thrust * 0.16 ** 3) / (205e9 * second);
    expect((hinged.moved - builtIn.moved) / (bends / 48 - bends / 192)).toBeCloseTo(1, 6);
  });

  test('a stiffer shaft moves less', () => {
    const finding = (session: Session) =>
      session.assessment.findings.find(({ check }) => check === 'bevel.moves')?.reserve?.value ?? Number.NaN;
    const before = finding(opened([]));
    expect(finding(opened([['/path/shafts/shaft-a/seats/pinion/diameter', '44 mm']]))).toBeGreaterThan(before);
  });

  test('a blank tie lies between the two bounds, and the finding says on what it depends', () => {
    const blank = openSession(DEMO.replaceAll(', "ends": "as if built in"', ''));
    if (!blank.ok) throw new Error(JSON.stringify(blank.faults));
    expect(blank.session.assessment.assumed.map(({ text }) => text)).toContain('hinged..built in');
  });
});
