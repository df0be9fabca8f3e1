import { existsSync } from 'node:fs';
import type { Server } from 'node:http';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import { validateText } from '@oddwheel/build/session';
import { openDiskStore } from '@oddwheel/store/disk';
import type { BuildStore } from '@oddwheel/store/store';
import { createApp } from './app.ts';
import { ownHosts } from './guard.ts';
import { createHub } from './hub.ts';
import { listen } from './listen.ts';
import { follow } from './live.ts';
import { createPairing } from './pairing.ts';

interface CommonOptions {
  /** Folder of the built page, with its index.html. */
  readonly benchDir: string;
  /** 0 for any free port; left out, 4717 or the next free one. */
  readonly port?: number;
  /** Serves the workshop's network too, with pairing. */
  readonly lan?: boolean;
  /** Takes a line for the terminal. */
  readonly log: (line: string) => void;
}

export type HostOptions = CommonOptions & ({ readonly folder: string } | { readonly store: BuildStore });

export interface Host {
  /** Address of the bench on this machine. */
  readonly url: string;
  /** Ends all connections and lets go of the folder. */
  readonly close: () => Promise<void>;
}

/** IPv4 addresses that this machine has on its networks now. */
function lanAddresses(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((list) => list ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
}

function announceLan(log: (line: string) => void, port: number): void {
  const addresses = lanAddresses().map((address) => `http://${address}:${port}/`);
  log(`On the workshop's network: ${addresses.length === 0 ? 'no network found' : addresses.join(' or ')}`);
  log('Others on this network can read along: the connection is not encrypted (plain http).');
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}

/**
 * Serves a build and the bench on 127.0.0.1, and with `lan` on the workshop's network.
 * @param options the folder of the build on disk, or a store that is open already (closed by its owner)
 * @throws Error when the page is not built or the port cannot be had; StoreError when the folder cannot be opened
 */
export async function startHost(options: HostOptions): Promise<Host> {
  const { benchDir, lan = false, log } = options;
  if (!existsSync(join(benchDir, 'index.html'))) throw new Error('The page is not built yet; npm run build does it.');
  const store =
    'store' in options
      ? options.store
      : await openDiskStore(options.folder, { validate: validateText, now: () => new Date().toISOString() });
  const letGo = async (): Promise<void> => {
    if (!('store' in options)) await store.close();
  };

  const hub = createHub();
  const live = follow(store, validateText, hub, (error) =>
    log(`A change by another program could not be read: ${String(error)}`),
  );
  const pairing = lan ? createPairing(Date.now, (code) => log(`Pairing code: ${code}`)) : null;
  let port = 0;
  const app = createApp({
    ...{ store, live, hub, benchDir, pairing, log },
    port: () => port,
    // Addresses of the network come and go while the host runs.
    own: () => ownHosts(port, lan ? lanAddresses() : []),
  });
  const server = createAdaptorServer({ fetch: app.fetch }) as Server;
  try {
    port = await listen(server, lan ? '0.0.0.0' : '127.0.0.1', options.port);
  } catch (error) {
    live.stop();
    await letGo();
    throw error;
  }
  if (lan) announceLan(log, port);

  return {
    url: `http://127.0.0.1:${port}/`,
    close: async () => {
      live.stop();
      hub.endAll();
      await closeServer(server);
      await letGo();
    },
  };
}
