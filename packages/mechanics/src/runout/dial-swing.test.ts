import { describe, expect, it } from 'vitest';
import { dialSwing, formSeen, offsetShare } from './dial-swing.ts';
import { sectionForm } from './readings.ts';

const lobe = (order: number, amplitude: number, at = 0, spread = 0) => ({
  ...{ order, cosine: amplitude * Math.cos(order * at), sine: amplitude * Math.sin(order * at) },
  ...{ amplitude, high: at, spread },
});

describe('the swing of a dial', () => {
  it('is twice the offset of a round section, and twice the amplitude of an oval one that runs true', () => {
    expect(dialSwing({ x: 3, y: -4 }, [])).toBeCloseTo(10, 2);
    expect(dialSwing({ x: 0, y: 0 }, [lobe(2, 2, 0.5)])).toBeCloseTo(4, 2);
  });

  it('of e cos t + a cos 2t runs from a + e to -a - e²/8a, or to a - e when the offset outweighs the oval', () => {
    // The derivative vanishes at t = 0, t = π and cos t = -e/4a.
    for (const [e, a] of [
      [1, 1],
      [2, 0.7],
      [5, 1],
    ] as const) {
      const low = e < 4 * a ? -a - (e * e) / (8 * a) : a - e;
      expect(dialSwing({ x: e, y: 0 }, [lobe(2, a)])).toBeCloseTo(a + e - low, 2);
    }
  });

  it('of a set is that of the curve fitted through it', () => {
    const readings = Array.from({ length: 24 }, (_, k) => {
      const angle = (k * Math.PI) / 12;
      return { angle, value: 8e-5 * Math.cos(angle - 1) + 3e-5 * Math.cos(2 * angle) + 1e-5 * Math.cos(3 * angle + 2) };
    });
    const { offset, harmonics, fittedTir } = sectionForm(readings, 1e-9);
    const form = formSeen(harmonics);
    expect(form.map(({ order }) => order)).toEqual([2, 3]);
    expect(dialSwing(offset, form)).toBeCloseTo(fittedTir, 7);
  });

  it('leaves out lobes that may be noise', () => {
    expect(formSeen([lobe(1, 9), lobe(2, 1, 0, 0.3), lobe(3, 1, 0, 0.1)]).map(({ order }) => order)).toEqual([3]);
  });
});

describe('what form leaves of a goal', () => {
  it('is all of it for a round section, nothing when the form is beyond it', () => {
    expect(offsetShare(3, [])).toBe(3);
    expect(offsetShare(3, [lobe(2, 1.6)])).toBe(0);
  });

  it('keeps the dial within the goal whichever way the offset points, and no offset more would', () => {
    const form = [lobe(2, 0.5, 0.3), lobe(3, 0.3, 1)];
    const share = offsetShare(3, form);
    const worst = (tir: number) =>
      Math.max(
        ...Array.from({ length: 720 }, (_, k) => {
          const [x, y] = [Math.cos(k * (Math.PI / 360)), Math.sin(k * (Math.PI / 360))];
          return dialSwing({ x: (tir / 2) * x, y: (tir / 2) * y }, form);
        }),
      );
    expect(share).toBeLessThan(3);
    expect(worst(share)).toBeLessThan(3.02);
    expect(worst(share + 0.05)).toBeGreaterThan(3);
  });
});
