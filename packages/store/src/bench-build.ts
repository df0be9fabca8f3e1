/** An invented build, as simple as a build can be, for the tests of the stores. */
import type { Json } from '@oddwheel/build/document/json';
import { parseJsonText } from '@oddwheel/build/document/json-text';
import { printFile } from '@oddwheel/build/document/print';
import type { Fault } from '@oddwheel/build/fault';
import type { StoreOptions } from './store.ts';

/** Options for stores under test: a build is JSON of format 1 with an object "path"; the clock stands still. */
export const benchOptions: StoreOptions = {
  now: () => '2031-05-04T10:00:00Z',
  validate(text): Fault[] {
    const parsed = parseJsonText(text);
    if (!parsed.ok) return parsed.faults;
    const build = parsed.value as { format?: Json; path?: Json };
    const fault = (address: string, accepted: string): Fault => ({
      code: 'bench.shape',
      address,
      problem: 'This is no build of the test bench.',
      read: JSON.stringify(build).slice(0, 40),
      accepted,
    });
    return [
      ...(build.format === 1 ? [] : [fault('/format', '1')]),
      ...(typeof build.path === 'object' ? [] : [fault('/path', 'An object.')]),
    ];
  },
};

export const BENCH_TEXT = printFile({
  format: 1,
  path: { 'chain-1': { teeth: 17, pitch: '1/2 in' }, 'chain-2': { teeth: 40 } },
  notes: {},
});

/** A log entry of the test bench. */
export function reading(id: string, body: Json = { tir: '4 thou' }, after: string | null = null) {
  return { id, kind: 'run-out', taken: '2031-05-04T09:00:00Z', logged: '2031-05-04T09:00:01Z', after, body };
}
