/** `npm test`: every check of the project, in order; stops at the first that fails. Arguments go to vitest. */
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureInstalled } from './install.mjs';
import { inRoot, runNode, script } from './run.mjs';

const BIN = 'node_modules';
const REPORT = '.oddwheel/tests.json';

/** Name, what it says when it fails, program and arguments. */
const STEPS = [
  ['lint and format', 'npm run format mends most of it', `${BIN}/@biomejs/biome/bin/biome`, ['check', '.']],
  ['types', 'see the lines above', `${BIN}/typescript/bin/tsc`, ['-b']],
  [
    'boundaries between rooms',
    'imports run downward only, see docs/architecture.md',
    `${BIN}/dependency-cruiser/bin/dependency-cruise.mjs`,
    ['--config', '.dependency-cruiser.cjs', 'packages', 'apps', 'proof', 'scripts'],
  ],
  ['unused code', 'delete it, or use it', `${BIN}/knip/bin/knip.js`, ['--no-config-hints', '--no-progress']],
  [
    'generated pages',
    'npm run docs writes them again',
    `${BIN}/tsx/dist/cli.mjs`,
    ['--conditions=source', 'scripts/docs.ts', '--check'],
  ],
  ['build', 'see the lines above', 'scripts/build.mjs', []],
];

async function step([name, hint, program, args]) {
  process.stdout.write(`${name} … `);
  const started = performance.now();
  const { code, output } = await runNode(program, args, { quiet: true });
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(code === 0 ? `good (${seconds} s)` : 'failed');
  if (code !== 0) console.log(`${output.trimEnd()}\n\nStopped at "${name}": ${hint}.`);
  return code === 0;
}

/** Counts of a vitest JSON report. A file that could not run, or an error outside the tests, counts as one failure. */
function counts(report, code) {
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  const failed = report.numFailedTests + broken.length;
  return {
    passed: report.numPassedTests,
    failed: failed === 0 && code !== 0 ? 1 : failed,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

async function tests(args) {
  console.log('tests …');
  mkdirSync(inRoot('.oddwheel'), { recursive: true });
  rmSync(inRoot(REPORT), { force: true });
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${REPORT}`];
  const { code } = await runNode(`${BIN}/vitest/vitest.mjs`, ['run', ...reporters, ...args]);
  if (!existsSync(inRoot(REPORT))) {
    console.log('Stopped at "tests": vitest ended before it wrote its report.');
    return code === 0 ? 1 : code;
  }
  const { passed, failed, skipped } = counts(JSON.parse(readFileSync(inRoot(REPORT), 'utf8')), code);
  console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
  return failed > 0 ? 1 : code;
}

await script(async () => {
  await ensureInstalled();
  for (const one of STEPS) if (!(await step(one))) return 1;
  return tests(process.argv.slice(2));
});
