/**
 * Writes the pages that are made from the code: the schema of the build file, one page per method, the page of outside checks, and that of consequences.
 * `--check` writes nothing and fails when a page on the disk differs.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildJsonSchema } from '@oddwheel/build/json-schema';
import { consequencesPage } from '@oddwheel/build/signs/page';
import { METHODS } from '@oddwheel/mechanics/catalogue';
import { methodPage } from '@oddwheel/mechanics/method/doc-page';
import { outsideChecksPage } from '../proof/outside-checks-page.ts';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

function methodIndex(): string {
  const lines = [...METHODS]
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((m) => `| [${m.id}](${m.id}.md) | ${m.gives} |`);
  return `# Methods\n\nEach formula by itself, as \`oddwheel reckon\` runs it. Made from the method records; do not edit by hand.\n\n| method | gives |\n|---|---|\n${lines.join('\n')}\n`;
}

const pages = new Map<string, string>([
  ['docs/build.schema.json', `${JSON.stringify(buildJsonSchema(), null, 2)}\n`],
  ['docs/methods/README.md', methodIndex()],
  ...METHODS.map((method): [string, string] => [`docs/methods/${method.id}.md`, methodPage(method)]),
  ['docs/outside-checks.md', outsideChecksPage()],
  ['docs/consequences.md', consequencesPage()],
]);

const check = process.argv.includes('--check');
const folder = join(root, 'docs/methods');
const stale = existsSync(folder)
  ? readdirSync(folder)
      .map((name) => `docs/methods/${name}`)
      .filter((name) => !pages.has(name))
  : [];
const differs = [...pages]
  .filter(([name, text]) => !existsSync(join(root, name)) || readFileSync(join(root, name), 'utf8') !== text)
  .map(([name]) => name);

if (check) {
  for (const name of [...differs, ...stale]) console.log(`${name} is not what the code makes`);
  process.exitCode = differs.length + stale.length > 0 ? 1 : 0;
} else {
  mkdirSync(folder, { recursive: true });
  for (const name of stale) rmSync(join(root, name));
  for (const name of differs) writeFileSync(join(root, name), pages.get(name) ?? '');
  console.log(`${differs.length} pages written, ${stale.length} taken away, ${pages.size} in all.`);
}
