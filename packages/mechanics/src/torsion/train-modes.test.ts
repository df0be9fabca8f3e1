import { describe, expect, test } from 'vitest';
import { naturalFrequency } from './natural-frequency.ts';
import { trainModes } from './train-modes.ts';

describe('natural swings of masses in a row', () => {
  test('two discs: ω² = k (1/J₁ + 1/J₂), closed form', () => {
    const [one] = trainModes([0.02, 12], [3000]);
    expect(one?.angularFrequency).toBeCloseTo(Math.sqrt(3000 * (1 / 0.02 + 1 / 12)), 9);
    // The light end swings against the heavy one in the inverse ratio of their inertias.
    expect((one?.shape[0] ?? 0) / (one?.shape[1] ?? 1)).toBeCloseTo(-12 / 0.02, 6);
  });

  test('three equal discs and springs: ω² = k/J and 3 k/J', () => {
    const modes = trainModes([2, 2, 2], [50, 50]);
    expect(modes.map(({ angularFrequency }) => angularFrequency ** 2)).toEqual([
      expect.closeTo(25, 9),
      expect.closeTo(75, 9),
    ]);
  });

  test('three discs: the roots of the published quadratic', () => {
    // ω⁴ J₁J₂J₃ − ω² [k₁ J₃ (J₁ + J₂) + k₂ J₁ (J₂ + J₃)] + k₁ k₂ (J₁ + J₂ + J₃) = 0
    const [j1, j2, j3, k1, k2] = [0.4, 1.1, 2.3, 900, 1700];
    const b = k1 * j3 * (j1 + j2) + k2 * j1 * (j2 + j3);
    const a = j1 * j2 * j3;
    const c = k1 * k2 * (j1 + j2 + j3);
    const root = Math.sqrt(b * b - 4 * a * c);
    const modes = trainModes([j1, j2, j3], [k1, k2]);
    expect((modes[0]?.angularFrequency ?? 0) ** 2).toBeCloseTo((b - root) / (2 * a), 6);
    expect((modes[1]?.angularFrequency ?? 0) ** 2).toBeCloseTo((b + root) / (2 * a), 6);
  });

  test('three rotors of 0.15, 0.3 and 0.09 kg·m² on a shaft of 70 mm: 171 and 277 Hz (read: qna.carrieradda.com/26013 and 26108)', () => {
    const give = 32 / (84e9 * Math.PI * 0.07 ** 4);
    const hertz = trainModes([0.15, 0.3, 0.09], [1 / (1.5 * give), 1 / give]).map(
      (one) => one.angularFrequency / (2 * Math.PI),
    );
    expect(hertz.map(Math.round)).toEqual([171, 277]);
  });

  test('a massless node in between adds springs in series; a stiffer spring never slows the drive', () => {
    const whole = trainModes([0.3, 5], [1 / (1 / 800 + 1 / 1300)])[0]?.angularFrequency ?? 0;
    const split = trainModes([0.3, 1e-9, 5], [800, 1300])[0]?.angularFrequency ?? 0;
    expect(split).toBeCloseTo(whole, 5);
    const stiffer = trainModes([0.3, 1e-9, 5], [800, 2600])[0]?.angularFrequency ?? 0;
    expect(stiffer).toBeGreaterThan(split);
  });

  test('Rayleigh’s quotient of the shape gives the eigenvalue back', () => {
    const { frequency } = naturalFrequency.run({ inertias: [0.4, 1.1, 2.3], stiffnesses: [900, 1700] });
    const [first] = trainModes([0.4, 1.1, 2.3], [900, 1700]);
    expect(frequency).toBeCloseTo((first?.angularFrequency ?? 0) / (2 * Math.PI), 10);
  });
});
