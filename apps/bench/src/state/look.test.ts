import { describe, expect, it } from 'vitest';
import { ownerOf, readLook, writeLook } from './look.ts';

describe('where the page looks, in its own address', () => {
  it('goes there and back', () => {
    for (const look of [
      { step: 'layout', element: null, finding: null },
      { step: 'brief', element: '/path/shafts/shaft-a', finding: null },
      { step: 'strength', element: '/path/stages/chain-1', finding: 'chain.slack:/path/stages/chain-1' },
      { step: 'fit-up', element: '/notes/~1path?#%', finding: 'a&b=c' },
    ] as const)
      expect(readLook(writeLook(look))).toEqual(look);
  });

  it('takes a broken address as it stands', () => {
    expect(readLook('#/path/%E0%A4%A')).toEqual({ step: 'strength', element: '/path/%E0%A4%A', finding: null });
  });

  it('opens on what breaks first when no step, or none that exists, is named', () => {
    expect(readLook('')).toEqual({ step: 'strength', element: null, finding: null });
    expect(readLook('#nowhere/path/shafts/a').step).toBe('strength');
    expect(readLook('#ratios').step).toBe('ratios');
  });

  it('finds the element that an address belongs to', () => {
    const known = ['/brief/engine', '/path/stages/chain-1', '/path/stages/chain-10', '/brief/engine/output'];
    expect(ownerOf('/path/stages/chain-1/teeth/driver', known)).toBe('/path/stages/chain-1');
    expect(ownerOf('/path/stages/chain-10', known)).toBe('/path/stages/chain-10');
    expect(ownerOf('/brief/engine/output/origin/x', known)).toBe('/brief/engine/output');
    expect(ownerOf('/units', known)).toBeNull();
  });
});
