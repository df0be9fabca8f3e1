import { hashBytes, hashText } from '@oddwheel/build/document/hash';
import {
  appendStep,
  historyStep,
  readStep,
  runOutStep,
  type Step,
  type StepOptions,
  type Stored,
  saveStep,
  type Write,
  written,
} from './steps.ts';
import {
  type BuildContent,
  type BuildStore,
  type OutsideChange,
  type Snapshot,
  StoreError,
  type StoreOptions,
} from './store.ts';

/** Where a build lies: the only part in which the stores differ. */
export interface Medium {
  /** What is stored, read without waiting for others; the texts may be a moment apart. */
  load(): Promise<Stored>;
  /**
   * Carries out one step while nobody else writes: loads, lets `step` decide, and does its writes in order, each durable
   * before the next. `step` is pure and may be called again when a text changed in between.
   */
  change<T>(step: (stored: Stored) => Step<T>): Promise<Changed<T>>;
  putPicture(hash: string, bytes: Uint8Array): Promise<void>;
  getPicture(hash: string): Promise<Uint8Array | undefined>;
  /** Names of all pictures, in no order. */
  pictures(): Promise<readonly string[]>;
  /** Calls `changed` whenever something may have changed, also by this store. */
  watch(changed: () => void): () => void;
  close(): Promise<void>;
}

export interface Changed<T> {
  readonly before: Stored;
  readonly writes: readonly Write[];
  readonly result: T;
}

/** A store on a medium. Fails when the medium holds no build. */
export async function storeOn(medium: Medium, given: StoreOptions): Promise<BuildStore> {
  const listeners = new Set<(change: OutsideChange) => void>();
  let seen = await medium.load();
  const options: StepOptions = { ...rememberingClean(given), reached: () => hashText(seen.build) };
  let stopWatching: (() => void) | undefined;
  let closed = false;
  let last: Promise<unknown> = Promise.resolve();

  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const turn = last.then(() => {
      if (closed) throw new StoreError('store.closed', 'The build store is closed.');
      return work();
    });
    last = turn.catch(() => undefined);
    return turn;
  }

  /** Tells the listeners what others changed before this store's own writes, of which they hear nothing. */
  function notice(before: Stored, writes: readonly Write[]): void {
    const outside = changed(before, seen);
    seen = written(before, writes);
    if (outside.build || outside.log || outside.runOut) for (const listener of [...listeners]) listener(outside);
  }

  async function change<T>(step: (stored: Stored) => Step<T>): Promise<T> {
    const { before, writes, result } = await medium.change(step);
    notice(before, writes);
    return result;
  }

  /** Notes in the history what another program did; undefined when nothing can be written. */
  async function catchUp(): Promise<Snapshot | undefined> {
    try {
      return await change((stored) => readStep(stored, options));
    } catch (error) {
      // A build on a medium that cannot be written can still be looked at.
      if (error instanceof StoreError && error.code === 'store.read-only') return undefined;
      throw error;
    }
  }

  async function read(): Promise<Snapshot> {
    const { writes, result } = readStep(await medium.load(), options);
    return (writes.length > 0 ? await catchUp() : undefined) ?? result;
  }

  async function content(): Promise<BuildContent> {
    // Others may go on writing: pictures are only ever added, and an append is whole lines.
    const stored = await medium.load();
    const pictures = new Map<string, Uint8Array>();
    for (const hash of [...(await medium.pictures())].sort()) {
      const bytes = await medium.getPicture(hash);
      if (!bytes) continue;
      if (hashBytes(bytes) !== hash)
        throw new StoreError(
          'store.damaged',
          `The picture pictures/${hash} is damaged: its content does not match its name. Take it out of the folder, or put it back from a copy.`,
        );
      pictures.set(hash, bytes);
    }
    return { ...stored, pictures };
  }

  async function look(): Promise<void> {
    const now = await medium.load();
    const { build, log, runOut } = changed(now, seen);
    if (!build && !log && !runOut) return;
    const { writes } = readStep(now, options);
    if (writes.length === 0 || !(await catchUp())) notice(now, []);
  }

  function lookSoon(): void {
    // Whatever keeps the build from being read now will be met by the next read, which has somebody to tell.
    inTurn(look).catch(() => undefined);
  }

  return {
    read: () => inTurn(read),
    save: (request) => inTurn(() => change((stored) => saveStep(stored, request, options))),
    undo: (request) => inTurn(() => change((stored) => historyStep(stored, 'undo', request, options))),
    redo: (request) => inTurn(() => change((stored) => historyStep(stored, 'redo', request, options))),
    append: (entries) => inTurn(() => change((stored) => appendStep(stored, entries))),
    appendRunOut: (entries) => inTurn(() => change((stored) => runOutStep(stored, entries))),
    putPicture: (bytes) =>
      inTurn(async () => {
        const hash = hashBytes(bytes);
        await medium.putPicture(hash, bytes);
        return hash;
      }),
    getPicture: (hash) => inTurn(async () => (/^[0-9a-f]{64}$/.test(hash) ? medium.getPicture(hash) : undefined)),
    content: () => inTurn(content),
    watch(listener) {
      listeners.add(listener);
      stopWatching ??= medium.watch(lookSoon);
      return () => {
        listeners.delete(listener);
        if (listeners.size > 0) return;
        stopWatching?.();
        stopWatching = undefined;
      };
    },
    async close() {
      if (closed) return;
      listeners.clear();
      stopWatching?.();
      stopWatching = undefined;
      await last;
      closed = true;
      await medium.close();
    },
  };
}

const changed = (now: Stored, before: Stored): OutsideChange => ({
  build: now.build !== before.build,
  log: now.log !== before.log,
  runOut: now.runOut !== before.runOut,
});

/** The text on the disk is nearly always the one that was checked last; checking it once is enough. */
function rememberingClean({ validate, now }: StoreOptions): StoreOptions {
  let clean: string | undefined;
  return {
    now,
    validate(text) {
      if (text === clean) return [];
      const faults = validate(text);
      if (faults.length === 0) clean = text;
      return faults;
    },
  };
}
