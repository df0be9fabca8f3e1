/** `npm start`: shows the main demo in the terminal, then serves a working copy of it on the bench. */
import { existsSync } from 'node:fs';
import { buildAll } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, runNode, script } from './run.mjs';

const DEMO = 'marsh-hauler';
const COPY = `.oddwheel/${DEMO}`;
const COMMAND = 'apps/cli/dist/oddwheel.mjs';

await script(async () => {
  await ensureInstalled();
  await buildAll();
  if (existsSync(inRoot(`${COPY}/build.json`)))
    console.log(`Your working copy of the demo is kept in ${COPY}; delete that folder for a fresh one.\n`);
  else {
    const made = await runNode(COMMAND, ['new', COPY, '--like', DEMO]);
    if (made.code !== 0) return made.code;
    console.log();
  }
  // A copy that was edited into something that fails, or cannot be read, is opened all the same: the bench mends it.
  await runNode(COMMAND, ['check', COPY]);
  console.log();
  const opened = await runNode(COMMAND, ['open', COPY, ...process.argv.slice(2)]);
  return opened.code;
});
