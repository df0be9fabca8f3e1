/** The tools of the conformance suites. */
import type { Json } from '@oddwheel/build/document/json';
import type { Patch } from '@oddwheel/build/document/patch';
import { afterEach } from 'vitest';
import type { BuildStore, SaveResult } from './store.ts';

/** One build, and the ways to it. */
export interface Bench {
  /** Opens a store on the build; several may be open at once. */
  open(): Promise<BuildStore>;
  /** What another program does: it replaces build.json with this text. */
  replaceBuild(text: string): Promise<void>;
  /** What a cut-off write leaves behind: this text at the end of a file. */
  appendRaw(file: 'history' | 'log', text: string): Promise<void>;
  /** The history file is deleted. */
  deleteHistory(): Promise<void>;
  dispose(): Promise<void>;
}

/** Address of a number in `BENCH_TEXT`: 17. */
export const TEETH = '/path/chain-1/teeth';

export const set = (at: string, value: Json): Patch => ({ op: 'set', at, value });

/** The result of a save that must have been done. */
export function saved(result: SaveResult): Extract<SaveResult, { ok: true }> {
  if (!result.ok) throw new Error(`not saved: ${JSON.stringify(result)}`);
  return result;
}

/** Saves one patch on what the store reads now. */
export async function save(store: BuildStore, patch: Patch, name = 'Edit') {
  return saved(await store.save({ base: (await store.read()).hash, patches: [patch], name }));
}

/** Benches whose stores are closed, and which are cleared away, after each test. */
export function cleanBenches(make: () => Promise<Bench>): () => Promise<Bench> {
  const open: Bench[] = [];
  const stores: BuildStore[] = [];
  afterEach(async () => {
    for (const store of stores.splice(0)) await store.close();
    for (const made of open.splice(0)) await made.dispose();
  });
  return async () => {
    const made = await make();
    open.push(made);
    return {
      ...made,
      async open() {
        const store = await made.open();
        stores.push(store);
        return store;
      },
    };
  };
}
