import { readFileSync } from 'node:fs';
import { explainFinding, openSession } from '@oddwheel/build/session';
import { describe, expect, test } from 'vitest';

/** Checks that tell their demand are run in the case where it is greatest; the other reserves follow by proportion. */
const BY_DEMAND = ['bearing.static', 'bearing.speed', 'bearing.tilt', 'hub.torque', 'hub.slip'];

describe.each(['hill-trike', 'marsh-hauler', 'rail-cart'])('%s', (demo) => {
  const opened = openSession(readFileSync(new URL(`../../examples/${demo}/build.json`, import.meta.url), 'utf8'), {
    ends: 'not yet',
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  const { session } = opened;
  const { cases, findings, reserves } = session.assessment;
  const columns = session.evaluation.columns;

  test('the working of every finding in every case ends in the reserve that its table holds', () => {
    const seen = new Map<string, number>();
    for (const { id, check, row, governing } of findings) {
      if (governing === null) continue;
      cases.forEach((one, c) => {
        const told = reserves[row * columns + c] ?? Number.NaN;
        const worked = explainFinding(session, id, one.id)?.reserve ?? Number.NaN;
        expect(Number.isNaN(told), `${id} in ${one.id}`).toBe(Number.isNaN(worked));
        if (Number.isNaN(told)) return;
        seen.set(check, (seen.get(check) ?? 0) + 1);
        expect(Math.abs(told / worked - 1), `${id} in ${one.id}`).toBeLessThan(1e-14);
      });
    }
    for (const check of BY_DEMAND.filter((one) => findings.some((finding) => finding.check === one && finding.reserve)))
      expect(seen.get(check), check).toBeGreaterThan(cases.length / 2);
  });
});
