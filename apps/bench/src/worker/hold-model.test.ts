import { describe, expect, it } from 'vitest';
import cart from '../../../../examples/rail-cart/build.json?raw';
import { createModel } from './model.ts';

const FINDING = 'bearing.static:/path/shafts/countershaft/seats/bearing-left';

function open() {
  const model = createModel();
  expect(model.open(cart, []).ok).toBe(true);
  return model;
}

describe('looking for changes that make a finding hold', () => {
  it('answers others in between, and gives what it found', async () => {
    const model = open();
    const looking = model.hold(FINDING, () => {});
    expect(model.fields('/brief/vehicle').length).toBeGreaterThan(0);
    const hold = await looking;
    expect(hold?.proposals[0]?.what).toContain('6306');
    expect(hold?.ends).toBe('tried');
  });

  it('gives up when the build changes, when it is stopped, and when another finding is asked for', async () => {
    const model = open();
    const stopped = model.hold(FINDING, () => {});
    model.stopHold();
    expect(await stopped).toBeNull();
    const first = model.hold(FINDING, () => {});
    const second = model.hold('torsion.cush:/path/cush', () => {});
    expect(await first).toBeNull();
    expect((await second)?.finding).toBe('torsion.cush:/path/cush');
    const left = model.hold(FINDING, () => {});
    expect(model.apply([{ op: 'set', at: '/name', value: 'cart' }]).ok).toBe(true);
    expect(await left).toBeNull();
  });
});
