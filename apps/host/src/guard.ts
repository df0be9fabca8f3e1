/** Who may ask: a page of another site must not reach the builds on this machine through the builder's browser. */
import type { Problem } from './problem.ts';

/** Names that this machine has for itself. */
const LOOPBACK = ['127.0.0.1', 'localhost', '[::1]'];

/**
 * The values of `Host` that are ours.
 * @param port the port that the host listens on
 * @param addresses IPv4 addresses of this machine on the network, when it serves the network
 */
export function ownHosts(port: number, addresses: readonly string[]): ReadonlySet<string> {
  const names = [...LOOPBACK, ...addresses];
  // A browser leaves the port out when it is the usual one.
  return new Set(names.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`])));
}

/** Refuses a `Host` that is not ours: a foreign name that was made to point at this machine. */
export function hostFault(host: string | undefined, own: ReadonlySet<string>): Problem | null {
  if (host !== undefined && own.has(host.toLowerCase())) return null;
  return {
    problem: 'This host answers to its own addresses only.',
    read: `Host: ${host ?? 'none'}`,
    accepted: [...own].join(', '),
  };
}

/**
 * Refuses a request that a page of another origin makes.
 * A program that is no browser sends neither header and is let through: it runs with the builder's rights anyway.
 * @param origin the `Origin` header
 * @param site the `Sec-Fetch-Site` header
 */
export function originFault(
  origin: string | undefined,
  site: string | undefined,
  own: ReadonlySet<string>,
): Problem | null {
  const accepted = [...own].map((host) => `http://${host}`).join(', ');
  if (origin !== undefined && !(origin.startsWith('http://') && own.has(origin.slice('http://'.length).toLowerCase())))
    return { problem: 'Only the bench itself may do this.', read: `Origin: ${origin}`, accepted };
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    return { problem: 'Only the bench itself may do this.', read: `Sec-Fetch-Site: ${site}`, accepted };
  return null;
}

/** True for an address of this machine itself, as a socket reports it. */
export function isLoopback(address: string | undefined): boolean {
  if (address === undefined) return false;
  const plain = address.startsWith('::ffff:') ? address.slice('::ffff:'.length) : address;
  return plain === '::1' || /^127(\.\d{1,3}){3}$/.test(plain);
}
