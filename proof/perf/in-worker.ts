/** What runs in the worker of `worker.ts`: one edit after the other, each timed. */
import { applyEdit, openSession } from '@oddwheel/build/session';

const TEETH = '/path/stages/chain-1/teeth/driver';

self.onmessage = ({ data }: MessageEvent<{ readonly text: string; readonly runs: number }>) => {
  const opened = openSession(data.text, { cache: true });
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  let { session } = opened;
  const times: number[] = [];
  for (let k = 0; k < data.runs; k++) {
    const start = performance.now();
    const edited = applyEdit(session, [{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }], 'not yet');
    times.push(performance.now() - start);
    if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
    session = edited.session;
  }
  self.postMessage(times);
};
