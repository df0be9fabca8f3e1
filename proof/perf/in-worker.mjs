/** What runs in the worker of `worker.ts`: the page's own model, and one edit after the other, each timed. */
import { createModel } from '../../apps/bench/src/worker/model.ts';

const TEETH = '/path/stages/chain-1/teeth/driver';
const pause = (time) => new Promise((done) => setTimeout(done, time));

/** Time between two edits, as of a control that is dragged on a screen of sixty pictures a second, ms. */
const BETWEEN = 16;
/** As long as a builder looks at a page that was just opened, ms. */
const LOOKS = 3000;

self.onmessage = async ({ data }) => {
  const model = createModel();
  const opened = await model.open(data.text, []);
  if (!opened.ok) throw new Error(JSON.stringify(opened.faults));
  await model.ranges();
  await pause(LOOKS);
  const times = [];
  for (let k = 0; k < data.runs; k++) {
    // What keeps the worker busy when an edit comes is time that the builder waits as well.
    const due = performance.now() + BETWEEN;
    await pause(BETWEEN);
    const edited = await model.apply([{ op: 'set', at: TEETH, value: k % 2 === 0 ? 16 : 17 }]);
    times.push(performance.now() - due);
    if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
    // The page asks for the ends of ranges after each edit.
    void model.ranges();
  }
  self.postMessage(times);
};
