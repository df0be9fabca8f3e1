import { describe, expect, it } from 'vitest';
import { checkMethod } from '../method/proof.ts';
import { cameraOutOfPlane } from './out-of-plane.ts';

describe('what a camera shows of things out of its plane', () => {
  it('is where the ray through the thing meets the plane', () => {
    // Camera at the origin, looking along z; the plane at z = 3 m, the thing at x = 290 mm and z = 2.9 m.
    const [x, z] = [0.29, 2.9];
    const seen = (x / z) * 3;
    const given = { distance: 3, nearer: 0.1, aside: seen };
    const { out, larger } = cameraOutOfPlane.run(given);
    expect(seen - out).toBeCloseTo(x, 12);
    expect(larger).toBeCloseTo(seen / x, 12);
    expect(checkMethod(cameraOutOfPlane, given)).toEqual([]);
  });

  it('shows farther things inward and smaller, and nothing of the plane itself out of place', () => {
    const far = cameraOutOfPlane.run({ distance: 3, nearer: -0.1, aside: 0.3 });
    expect(far.out).toBeCloseTo(-0.01, 12);
    expect(far.larger).toBeLessThan(1);
    expect(cameraOutOfPlane.run({ distance: 3, nearer: 0, aside: 0.3 })).toEqual({ out: 0, larger: 1 });
  });

  it('refuses a thing behind the camera', () => {
    expect(() => cameraOutOfPlane.run({ distance: 1, nearer: 1, aside: 0 })).toThrow(/less than its distance, 1 m/);
  });
});
