/** The one key a build file may not have: in JavaScript it would change the object's prototype. */
export const UNSAFE_KEY = '__proto__';

/** JSON Pointer (RFC 6901, sections 3 and 4) of a list of keys; the empty list gives "", the whole file. */
export function addressOf(keys: readonly string[]): string {
  return keys.reduce(addressBelow, '');
}

/** The address of `key` in the object or array at `address`. */
export function addressBelow(address: string, key: string): string {
  const plain = !key.includes('~') && !key.includes('/');
  return `${address}/${plain ? key : key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/**
 * Keys of a JSON Pointer (RFC 6901, sections 3 and 4), or undefined when the text is not one: it must be empty or begin
 * with "/", and "~" must be followed by 0 or 1.
 */
export function keysOf(address: string): string[] | undefined {
  if (address === '') return [];
  if (!address.startsWith('/') || /~(?![01])/.test(address)) return undefined;
  return address
    .slice(1)
    .split('/')
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** The place in an array that a key names: 0 to `length`, where "-" means `length` (the end). Undefined when it is none. */
export function indexOf(key: string, length: number): number | undefined {
  if (key === '-') return length;
  if (!/^(0|[1-9]\d{0,9})$/.test(key)) return undefined;
  const index = Number(key);
  return index <= length ? index : undefined;
}
