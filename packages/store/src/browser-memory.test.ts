import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { heldBuild, openHeldStore } from './browser-memory.ts';
import { storeConformance } from './conformance.ts';
import type { Bench } from './conformance-bench.ts';

storeConformance('held by the page', async (): Promise<Bench> => {
  const held = heldBuild({ build: BENCH_TEXT, history: '', log: '', runOut: '', pictures: new Map() });
  const changed = () => {
    for (const watcher of held.watchers) watcher();
  };
  return {
    open: () => openHeldStore(held, benchOptions),
    async replaceBuild(text) {
      held.stored = { ...held.stored, build: text };
      changed();
    },
    async appendRaw(file, text) {
      held.stored = { ...held.stored, [file]: held.stored[file] + text };
      changed();
    },
    async deleteHistory() {
      held.stored = { ...held.stored, history: '' };
    },
    dispose: async () => undefined,
  };
});
