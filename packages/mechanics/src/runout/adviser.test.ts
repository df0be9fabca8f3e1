import { describe, expect, it } from 'vitest';
import { beginAdvice, learn, learnCooled } from './advice-state.ts';
import { advise } from './advise.ts';
import type { BeadPart, Offset } from './adviser-types.ts';
import { learnedResponse } from './belief.ts';

const THOU = 25.4e-6;
const MM = 1e-3;
const DEGREE = Math.PI / 180;
const PULL = 0.3 * THOU * 1000;

const part = (measured: Offset, more: Partial<BeadPart> = {}): BeadPart => ({
  mode: 'correct',
  measured,
  readingSpread: 0.15 * THOU,
  goal: 3 * THOU,
  lies: 'beyond',
  beads: { smallest: 2 * MM, largest: 20 * MM, step: MM, places: 24 },
  prior: { pull: PULL, pullFactor: 3, lag: 15 * DEGREE, scatter: 0.18, relaxation: { mean: 0.1, spread: 0.07 } },
  rounds: 12,
  owed: [],
  ...more,
});

/** A part that answers evenly, without scatter. */
const answer = (at: Offset, clock: number, length: number, pull: number, lag: number): Offset => ({
  x: at.x + pull * length * Math.cos(clock + lag),
  y: at.y + pull * length * Math.sin(clock + lag),
});

function run(start: BeadPart, pull: number, lag: number) {
  let state = beginAdvice(start);
  let advice = advise(state);
  for (let round = 0; advice.do === 'bead' && round < 40; round++) {
    const { bead } = advice;
    state = learn(state, bead, state.now, answer(state.now, bead.clock, bead.length, pull, lag));
    advice = advise(state);
  }
  return { state, advice };
}

describe('beads on a part that answers evenly', () => {
  it('the first is a trial opposite the high spot for a section beyond the bead, and on its side for one between the seats', () => {
    const first = advise(beginAdvice(part({ x: 20 * THOU, y: 0 })));
    expect(first).toMatchObject({ do: 'bead', trial: true, bead: { clock: Math.PI } });
    expect(first.warnings).toContain('uncertain');
    const between = advise(beginAdvice(part({ x: 20 * THOU, y: 0 }, { lies: 'between' })));
    expect(between).toMatchObject({ do: 'bead', bead: { clock: 0 } });
  });

  it.each([
    [0.4, 0],
    [1, 10],
    [2.5, -20],
    [4, 15],
  ])('pull %f times the guess and %f degrees aside: within the goal, and learned', (times, lag) => {
    const { state, advice } = run(part({ x: 15 * THOU, y: 10 * THOU }), times * PULL, lag * DEGREE);
    expect(advice).toMatchObject({ do: 'stop', because: 'good' });
    expect(state.laid.length).toBeLessThanOrEqual(12);
    const known = learnedResponse(state.belief, state.part.prior);
    expect(known.pullLow).toBeLessThan(times * PULL * 1.15);
    expect(known.pullHigh).toBeGreaterThan(times * PULL * 0.85);
  });

  it('takes the sign from the first bead', () => {
    const { state, advice } = run(part({ x: 15 * THOU, y: 10 * THOU }), -PULL, 0);
    expect(state.turned).toBe(true);
    expect(advice).toMatchObject({ do: 'stop', because: 'good' });
  });

  it('a part that hardly moves is called hopeless before round six', () => {
    const { state, advice } = run(part({ x: 30 * THOU, y: 0 }), PULL / 12, 0);
    expect(advice).toMatchObject({ do: 'stop', because: 'hopeless' });
    expect(state.laid.length).toBeLessThan(6);
  });

  it('a good part is left alone', () => {
    expect(advise(beginAdvice(part({ x: THOU, y: 0 })))).toMatchObject({ do: 'stop', because: 'good' });
  });

  it('a warm part waits, and its cold reading teaches what cooling takes back', () => {
    const begun = beginAdvice(part({ x: 20 * THOU, y: 0 }));
    const warm = learn(begun, { clock: Math.PI, length: 20 * MM }, begun.now, { x: 10 * THOU, y: 0 }, 'warm');
    expect(warm.belief).toBe(begun.belief);
    expect(advise(warm)).toMatchObject({ do: 'wait' });
    const cold = learnCooled(warm, { x: 12.5 * THOU, y: 0 });
    expect(cold.relaxation.mean).toBeGreaterThan(0.15);
    expect(advise(cold).do).toBe('bead');
    expect(() => learnCooled(cold, cold.now)).toThrow('cold one');
  });

  it('beads that pile up are warned of', () => {
    let state = beginAdvice(part({ x: 60 * THOU, y: 0 }));
    for (let k = 0; k < 3; k++) {
      const bead = { clock: Math.PI, length: 20 * MM };
      state = learn(state, bead, state.now, answer(state.now, bead.clock, bead.length, 1.2 * PULL, 0));
    }
    expect(advise(state).warnings).toContain('piled-up');
  });

  it('a strong part that the shortest bead would throw over is brought in by two', () => {
    const start = part({ x: 3 * THOU, y: 0 }, { beads: { smallest: 8 * MM, largest: 20 * MM, step: MM, places: 24 } });
    let state = beginAdvice(start);
    const known = { clock: Math.PI / 2, length: 8 * MM };
    for (let k = 0; k < 2; k++)
      state = learn(
        state,
        { ...known, clock: known.clock + Math.PI * k },
        { x: 0, y: 0 },
        answer({ x: 0, y: 0 }, known.clock + Math.PI * k, known.length, 3 * PULL, 0),
      );
    const advice = advise({ ...state, now: start.measured });
    expect(advice).toMatchObject({ do: 'bead', pair: true });
  });
});

describe('welding up', () => {
  const owed = Array.from({ length: 8 }, (_, k) => ({ clock: (k * Math.PI) / 4, length: 20 * MM }));

  it('never ends before the whole weld is in, and says what is still owed', () => {
    let state = beginAdvice(part({ x: 0.2 * THOU, y: 0 }, { mode: 'weld-up', owed, rounds: 20 }));
    let left = 160 * MM;
    for (let k = 0; k < 40 && left > 1e-9; k++) {
      const advice = advise(state);
      if (advice.do !== 'bead' || advice.bead.segment === undefined)
        throw new Error('a piece of the weld was expected');
      left -= advice.bead.length;
      expect(advice.owedAfter).toBeCloseTo(left, 9);
      state = learn(state, advice.bead, state.now, state.now);
    }
    expect(state.owed.every((length) => length < 1e-9)).toBe(true);
    expect(advise(state).do).not.toBe('wait');
  });

  it('begins opposite the high spot, where the first and strongest piece counts most', () => {
    const advice = advise(beginAdvice(part({ x: 20 * THOU, y: 0 }, { mode: 'weld-up', owed, rounds: 20 })));
    if (advice.do !== 'bead') throw new Error('a bead was expected');
    expect(Math.cos(advice.bead.clock)).toBeLessThan(-0.6);
  });

  it('wants to know what is owed', () => {
    expect(() => beginAdvice(part({ x: 0, y: 0 }, { mode: 'weld-up' }))).toThrow('owed: nothing read');
    expect(() => beginAdvice(part({ x: 0, y: 0 }, { goal: -1 }))).toThrow('goal');
  });
});
