/** A sample of `npm run proof:hold`, which does every finding and proposal of the demos and of 50 variants. */
import { wantsHold } from '@oddwheel/build/hold/hold';
import { trialsOf } from '@oddwheel/build/hold/trials';
import { describe, expect, test } from 'vitest';
import { DEMOS, differences, held, open, textOf, variants } from '../hold/verify.ts';

/** Every so many findings that are short of one demo. */
const EVERY = { 'marsh-hauler': 20, 'hill-trike': 7, 'rail-cart': 4 } as const;

describe('make it hold', () => {
  test.each(DEMOS)('%s: what is shown at the middle of the ranges is what comes of it', (demo) => {
    const session = open(textOf(demo), 'not yet');
    if (!session) throw new Error(demo);
    const trials = trialsOf(session);
    const short = session.assessment.findings.filter(wantsHold);
    let proposals = 0;
    for (const { id } of short.filter((_, k) => k % EVERY[demo] === 0)) {
      const hold = held(trials, id, 'not yet');
      if (hold.none !== null) expect(hold.proposals).toEqual([]);
      for (const proposal of hold.proposals.slice(0, 1)) {
        proposals += 1;
        expect(differences(session, hold, proposal, 'not yet')).toEqual([]);
      }
    }
    expect(proposals).toBeGreaterThan(1);
  });

  test('rail-cart: the ring of a bearing that was only cut, with the ends of all ranges tried', () => {
    const session = open(textOf('rail-cart'), 'tried');
    if (!session) throw new Error('rail-cart');
    const hold = held(trialsOf(session), 'seat.made:/path/shafts/countershaft/seats/bearing-left', 'tried');
    expect(hold.proposals.length).toBeGreaterThan(0);
    for (const proposal of hold.proposals) expect(differences(session, hold, proposal, 'tried')).toEqual([]);
  });

  test('variants: what is shown is what comes of it', () => {
    let proposals = 0;
    for (const { session, pick } of variants(6, ['rail-cart', 'hill-trike'])) {
      const short = session.assessment.findings.filter(wantsHold);
      const finding = short[pick % Math.max(1, short.length)];
      if (!finding) continue;
      const hold = held(trialsOf(session), finding.id, 'not yet');
      for (const proposal of hold.proposals.slice(0, 1)) {
        proposals += 1;
        expect(differences(session, hold, proposal, 'not yet')).toEqual([]);
      }
    }
    expect(proposals).toBeGreaterThan(3);
  });
});
