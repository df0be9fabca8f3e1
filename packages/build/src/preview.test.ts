import { describe, expect, test } from 'vitest';
import { createCache } from './model/cache.ts';
import { previewEdit } from './preview.ts';
import { applyEdit, openSession } from './session.ts';
import { SMALL_BUILD } from './testing/small-build.ts';

const UP = [{ op: 'set', at: '/brief/engine/output/origin/z', value: '58 mm' }] as const;

function opened() {
  const result = openSession(JSON.stringify(SMALL_BUILD));
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.session;
}

describe('a preview of an edit', () => {
  test('has the middle values, the clearances and the places that the edit then has', () => {
    const session = opened();
    const cache = createCache();
    // Twice, so that the second one meets what the first one kept.
    previewEdit(session, [{ ...UP[0], value: '70 mm' }], cache);
    const previewed = previewEdit(session, UP, cache);
    const edited = applyEdit(session, UP);
    if (!previewed.ok || !edited.ok) throw new Error('refused');
    const { findings, clearance, scene } = previewed.preview;
    const reserves = (all: typeof findings) =>
      all.map(({ id, reserve }) => [id, reserve?.value ?? null] as const).sort(([a], [b]) => (a < b ? -1 : 1));
    expect(reserves(findings)).toEqual(reserves(edited.session.assessment.findings));
    expect(clearance.rows.map(({ text }) => text)).toEqual(
      edited.session.assessment.clearance.rows.map(({ text }) => text),
    );
    expect(scene.model.shafts[0]?.origin[2]).toBeCloseTo(0.058, 12);
  });

  test('leaves the build as it is, and tells what an edit would be refused for', () => {
    const session = opened();
    const text = session.text;
    const refused = previewEdit(session, [{ ...UP[0], value: '58 kg' }], createCache());
    expect(refused.ok).toBe(false);
    if (!refused.ok) expect(refused.faults[0]?.address).toBe('/brief/engine/output/origin/z');
    expect(session.text).toBe(text);
  });
});
