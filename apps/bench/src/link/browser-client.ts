import { pictureType } from '@oddwheel/store/picture';
import { proxy, type Remote } from 'comlink';
import type { KeeperApi } from '../worker/keeper-api.ts';
import type { HostClient } from './host-client.ts';

/** The keeper in its worker, asked by messages. */
export type RemoteKeeper = Remote<KeeperApi>;

/**
 * The browser in the place of a host: it keeps the build, and other tabs hear of every change.
 *
 * @param device permanent name of this device, for the history
 */
export function createBrowserClient(keeper: RemoteKeeper, device: string): HostClient {
  // A picture never changes under its name: one address each, for as long as the page lasts.
  const urls = new Map<string, string>();
  return {
    read: () => keeper.read(),
    lastSeen: async () => null,
    edit: (base, edit) => keeper.edit(base, edit, device),
    undo: (base) => keeper.undo(base, device),
    redo: (base) => keeper.redo(base, device),
    listen: (changed) => void keeper.listen(proxy(changed)),
    putPicture: (bytes) => keeper.putPicture(bytes),
    pictureUrl: async (hash) => {
      const known = urls.get(hash);
      if (known !== undefined) return known;
      const bytes = await keeper.getPicture(hash);
      const type = bytes && pictureType(bytes);
      if (!bytes || !type) throw new Error('The build has no such picture.');
      const url = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type }));
      urls.set(hash, url);
      return url;
    },
    runOut: {
      read: () => keeper.readRunOut(),
      add: (entries) => keeper.addRunOut(entries),
      listen: (changed) => void keeper.listenRunOut(proxy(changed)),
    },
    archive: () => keeper.archive(),
  };
}
