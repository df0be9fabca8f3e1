import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import type { Server } from 'node:http';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import { validateText } from '@oddwheel/build/session';
import { openDiskStore } from '@oddwheel/store/disk';
import { BUILD_FILE } from '@oddwheel/store/folder';
import { createBuildFolder } from '@oddwheel/store/new-build';
import type { BuildStore } from '@oddwheel/store/store';
import type { Hono } from 'hono';
import { createApp, noSuchAddress } from './app.ts';
import { addBuildApi } from './build-api.ts';
import { addEventsApi } from './events-api.ts';
import { ownHosts } from './guard.ts';
import { createHub } from './hub.ts';
import { listen } from './listen.ts';
import { follow } from './live.ts';
import { createPairing } from './pairing.ts';
import { addRecordApi } from './record-api.ts';
import { addBegunApi, addWaitingApi } from './waiting-api.ts';

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

/** Whether a folder is empty, or not there yet: a build can begin in it. */
export async function isEmpty(folder: string): Promise<boolean> {
  try {
    return (await readdir(folder)).length === 0;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ENOENT';
  }
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
 * Serves a build and the bench on 127.0.0.1, and with `lan` on the workshop's network. In a folder that is empty or not there
 * yet the page begins the build.
 * @param options the folder of the build on disk, or a store that is open already (closed by its owner)
 * @throws Error when the page is not built or the port cannot be had; StoreError when the folder cannot be opened
 */
export async function startHost(options: HostOptions): Promise<Host> {
  const { benchDir, lan = false, log } = options;
  if (!existsSync(join(benchDir, 'index.html'))) throw new Error('The page is not built yet; npm run build does it.');
  const hub = createHub();
  const pairing = lan ? createPairing(Date.now, (code) => log(`Pairing code: ${code}`)) : null;
  let port = 0;
  const appWith = (api: (app: Hono) => void): Hono =>
    createApp({
      ...{ api, benchDir, pairing, log },
      port: () => port,
      // Addresses of the network come and go while the host runs.
      own: () => ownHosts(port, lan ? lanAddresses() : []),
    });
  let letGo = async (): Promise<void> => {};
  const served = (store: BuildStore): Hono => {
    const live = follow(store, validateText, hub, (error) =>
      log(`A change by another program could not be read: ${String(error)}`),
    );
    letGo = async () => {
      live.stop();
      if (!('store' in options)) await store.close();
    };
    return appWith((app) => {
      addBuildApi(app, store, live);
      addRecordApi(app, store, live);
      addEventsApi(app, hub, live);
      addBegunApi(app);
      app.all('/api/*', noSuchAddress);
    });
  };
  const opened = (folder: string): Promise<BuildStore> =>
    openDiskStore(folder, { validate: validateText, now: () => new Date().toISOString() });
  /** Serves the page without a build, until one is begun there or put into the folder. */
  const waiting = (folder: string): Hono => {
    let turn: Promise<unknown> = Promise.resolve();
    const inTurn = <T>(work: () => Promise<T>): Promise<T> => {
      const done = turn.then(work, work);
      turn = done.catch(() => undefined);
      return done;
    };
    let begun: Hono | null = null;
    const serve = async (): Promise<Hono> => {
      begun ??= served(await opened(folder));
      current = begun;
      return begun;
    };
    return appWith((app) =>
      addWaitingApi(app, {
        begin: (text) =>
          inTurn(async () => {
            await createBuildFolder(folder, text, { validate: validateText });
            await serve();
          }),
        found: () => inTurn(async () => (begun || existsSync(join(folder, BUILD_FILE)) ? serve() : null)),
      }),
    );
  };
  let current =
    'store' in options
      ? served(options.store)
      : (await isEmpty(options.folder))
        ? waiting(options.folder)
        : served(await opened(options.folder));
  const server = createAdaptorServer({
    fetch: (...asked: Parameters<Hono['fetch']>) => current.fetch(...asked),
  }) as Server;
  try {
    port = await listen(server, lan ? '0.0.0.0' : '127.0.0.1', options.port);
  } catch (error) {
    await letGo();
    throw error;
  }
  if (lan) announceLan(log, port);

  return {
    url: `http://127.0.0.1:${port}/`,
    close: async () => {
      hub.endAll();
      await closeServer(server);
      await letGo();
    },
  };
}
