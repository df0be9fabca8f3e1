import { describe, expect, it } from 'vitest';
import { ownerOf, readLook, writeLook } from './look.ts';

describe('where the page looks, in its own address', () => {
  it('goes there and back', () => {
    for (const look of [
      { element: null, finding: null },
      { element: '/path/shafts/shaft-a', finding: null },
      { element: '/path/stages/chain-1', finding: 'chain.slack:/path/stages/chain-1' },
      { element: '/notes/~1path?#%', finding: 'a&b=c' },
    ])
      expect(readLook(writeLook(look))).toEqual(look);
  });

  it('takes a broken address as it stands', () => {
    expect(readLook('#/path/%E0%A4%A')).toEqual({ element: '/path/%E0%A4%A', finding: null });
  });

  it('finds the element that an address belongs to', () => {
    const known = ['/brief/engine', '/path/stages/chain-1', '/path/stages/chain-10', '/brief/engine/output'];
    expect(ownerOf('/path/stages/chain-1/teeth/driver', known)).toBe('/path/stages/chain-1');
    expect(ownerOf('/path/stages/chain-10', known)).toBe('/path/stages/chain-10');
    expect(ownerOf('/brief/engine/output/origin/x', known)).toBe('/brief/engine/output');
    expect(ownerOf('/units', known)).toBeNull();
  });
});
