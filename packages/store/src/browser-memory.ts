import { type Changed, type Medium, storeOn } from './medium.ts';
import { type Step, type Stored, written } from './steps.ts';
import type { BuildContent, BuildStore, StoreOptions } from './store.ts';

/** A build that a page holds where the browser keeps nothing; it lasts as long as the page. */
export interface HeldBuild {
  stored: Stored;
  readonly pictures: Map<string, Uint8Array>;
  readonly watchers: Set<() => void>;
}

/** A build in the page's memory with this content. */
export function heldBuild({ build, history, log, runOut, pictures }: BuildContent): HeldBuild {
  return { stored: { build, history, log, runOut }, pictures: new Map(pictures), watchers: new Set() };
}

/** A store on a build in the page's memory. Several stores may be open on one. */
export function openHeldStore(held: HeldBuild, options: StoreOptions): Promise<BuildStore> {
  return storeOn(heldMedium(held), options);
}

function heldMedium(held: HeldBuild): Medium {
  return {
    load: async () => held.stored,
    async change<T>(step: (stored: Stored) => Step<T>): Promise<Changed<T>> {
      const before = held.stored;
      const { writes, result } = step(before);
      held.stored = written(before, writes);
      if (writes.some(({ file }) => file !== 'history')) for (const changed of held.watchers) changed();
      return { before, writes, result };
    },
    async putPicture(hash, bytes) {
      held.pictures.set(hash, bytes.slice());
    },
    getPicture: async (hash) => held.pictures.get(hash)?.slice(),
    pictures: async () => [...held.pictures.keys()],
    watch(changed) {
      held.watchers.add(changed);
      return () => held.watchers.delete(changed);
    },
    close: async () => undefined,
  };
}
