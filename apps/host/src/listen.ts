import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

/** The usual port, and how many after it are tried when it is taken. */
export const USUAL_PORT = 4717;
const NEXT = 20;

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '');

function once(server: Server, host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

/**
 * Starts to listen.
 * @param host address to listen on
 * @param port 0 to 65535, 0 for any free one; left out, the usual port or the next free one after it
 * @returns the port listened on
 * @throws Error that says why the port cannot be had
 */
export async function listen(server: Server, host: string, port?: number): Promise<number> {
  if (port !== undefined) {
    try {
      return await once(server, host, port);
    } catch (error) {
      const why = { EADDRINUSE: 'is taken by another program', EACCES: 'is kept by the system' }[codeOf(error)];
      throw new Error(`Port ${port} ${why ?? `cannot be listened on (${String(error)})`}; give another one, or none.`);
    }
  }
  for (let next = USUAL_PORT; next < USUAL_PORT + NEXT; next += 1) {
    try {
      return await once(server, host, next);
    } catch (error) {
      if (codeOf(error) !== 'EADDRINUSE') throw error;
    }
  }
  throw new Error(`The ports ${USUAL_PORT} to ${USUAL_PORT + NEXT - 1} are all taken; give another one.`);
}
