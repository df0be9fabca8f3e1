import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import { storeConformance } from './conformance.ts';
import type { Bench } from './conformance-bench.ts';
import { MEMORY_FOLDER, memoryBuild, openMemoryStore } from './memory.ts';

storeConformance('memory', async (): Promise<Bench> => {
  const files = memoryBuild(BENCH_TEXT);
  const bytes = (text: string) => new TextEncoder().encode(text);
  return {
    open: () => openMemoryStore(files, benchOptions),
    replaceBuild: (text) => files.write(`${MEMORY_FOLDER}/build.json`, bytes(text)),
    appendRaw: (file, text) => files.append(`${MEMORY_FOLDER}/${file}.ndjson`, bytes(text)),
    deleteHistory: () => files.write(`${MEMORY_FOLDER}/history.ndjson`, bytes('')),
    dispose: async () => undefined,
  };
});
