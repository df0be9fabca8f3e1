/** `npm run perf`: bundles the measurements as the command and the page are bundled, and runs them. */
import { spawnSync } from 'node:child_process';
import { execPath, exit } from 'node:process';
import { build } from 'esbuild';
import { inRoot } from './run.mjs';

// A folder deep, as the source lies, so that it finds the demo builds.
const OUT = inRoot('proof/dist/perf.mjs');

await build({
  entryPoints: [inRoot('proof/perf/run.ts')],
  outfile: OUT,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  conditions: ['source'],
  legalComments: 'none',
  logLevel: 'error',
  banner: { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" },
});
exit(spawnSync(execPath, [OUT], { stdio: 'inherit' }).status ?? 1);
