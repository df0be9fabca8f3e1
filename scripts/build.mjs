/** `npm run build`: bundles the command and the page, each only when its sources changed since the last time. */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';
import { hashInputs } from './inputs.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, script } from './run.mjs';

const SHARED = ['package-lock.json', 'scripts/build.mjs'];
const PACKAGES = readdirSync(inRoot('packages')).map((name) => `packages/${name}/src`);

const PAGE = [
  ...SHARED,
  ...PACKAGES,
  'examples',
  ...['index.html', 'vite.config.ts', 'public', 'src'].map((x) => `apps/bench/${x}`),
];

/** What is built, from what, and the file that must be there when it is built. */
const OUTPUTS = [
  {
    name: 'the command',
    folder: 'apps/cli/dist',
    shows: 'oddwheel.mjs',
    inputs: [...SHARED, ...PACKAGES, 'apps/host/src', 'apps/cli/src'],
    make: makeCommand,
  },
  {
    name: 'the page',
    folder: 'apps/bench/dist',
    shows: 'index.html',
    inputs: PAGE,
    make: () => makePage('production'),
  },
  {
    name: 'the page as one file',
    folder: 'apps/bench/dist-alone',
    shows: 'oddwheel.html',
    inputs: PAGE,
    make: () => makePage('alone'),
    size: true,
  },
];

async function makeCommand(folder) {
  const { build } = await import('esbuild');
  rmSync(inRoot(`${folder}/chunks`), { recursive: true, force: true });
  await build({
    entryPoints: { oddwheel: inRoot('apps/cli/src/main.ts') },
    outdir: inRoot(folder),
    outExtension: { '.js': '.mjs' },
    chunkNames: 'chunks/[name]-[hash]',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20.19',
    conditions: ['source'],
    legalComments: 'none',
    logLevel: 'error',
    // Packages in the older module form ask for Node's own modules through `require`.
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);",
    },
  });
}

async function makePage(mode) {
  const { build } = await import('vite');
  const configFile = inRoot('apps/bench/vite.config.ts');
  await build({ root: inRoot('apps/bench'), configFile, mode, logLevel: 'warn' });
}

async function bring(output, say) {
  const stamp = join(inRoot(output.folder), '.inputs');
  const hash = hashInputs(output.inputs);
  const built = existsSync(join(inRoot(output.folder), output.shows)) && existsSync(stamp);
  if (built && readFileSync(stamp, 'utf8') === hash) {
    say(`Built already: ${output.name}.`);
    return;
  }
  say(`Building ${output.name} …`);
  await output.make(output.folder);
  mkdirSync(inRoot(output.folder), { recursive: true });
  writeFileSync(stamp, hash);
  if (output.size) {
    const file = `${output.folder}/${output.shows}`;
    say(`${file}: ${(statSync(inRoot(file)).size / 1e6).toFixed(2)} MB`);
  }
}

/** Builds what is out of date and says what it does, one line each. */
export async function buildAll() {
  for (const output of OUTPUTS) await bring(output, console.log);
}

/** Builds the command alone, when it is out of date. `say` takes one line of what is going on. */
export async function buildCommand(say) {
  await bring(OUTPUTS[0], say);
}

if (argv[1] === fileURLToPath(import.meta.url))
  await script(async () => {
    await ensureInstalled();
    await buildAll();
    return 0;
  });
