import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { checkDemo } from './command.ts';

/** Findings named in one demo's section of the page, in its order, each with its state. */
function named(page: string, demo: string): string[] {
  const section = page.split(/^## /m).find((part) => part.startsWith(`${demo}\n`)) ?? '';
  return [...section.matchAll(/^\d\. `([^`]+)`, \*\*(\w+)\*\*/gm)].map(([, id, state]) => `${id} ${state}`);
}

test.each(['marsh-hauler', 'rail-cart', 'hill-trike'])(
  'docs/demos.md explains the first five findings of %s',
  async (demo) => {
    const page = await readFile(new URL('../../docs/demos.md', import.meta.url), 'utf8');
    const { checked } = await checkDemo(demo);
    const first = checked.findings.slice(0, 5).map(({ id, severity }) => `${id} ${severity}`);
    expect(
      named(page, demo),
      `check ranks other findings first: rewrite the section "${demo}" of docs/demos.md to explain, in this order, ${first.join(', ')}`,
    ).toEqual(first);
  },
);
