import { pointerKeys } from '../schema/describe.ts';

/**
 * Permanent id of a new named thing: its name in small letters, digits and single hyphens, and a number where that id is taken.
 *
 * @param name as the builder typed it; letters with marks lose them, and a name without letters gives `thing`
 * @param otherwise id for a name of which nothing is left
 */
export function newId(name: string, taken: Iterable<string>, otherwise: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll('ß', 'ss')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '');
  const base = plain === '' ? otherwise : /^[a-z]/.test(plain) ? plain : `${otherwise}-${plain}`;
  const used = new Set(taken);
  if (!used.has(base)) return base;
  for (let k = 2; ; k += 1) if (!used.has(`${base}-${k}`)) return `${base}-${k}`;
}

/** Address of what holds the thing at an address. */
export const above = (address: string): string => address.slice(0, address.lastIndexOf('/'));

/** Last key of an address. */
export const lastKey = (address: string): string => pointerKeys(address).at(-1) ?? '';
