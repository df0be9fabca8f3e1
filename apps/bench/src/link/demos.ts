/** The demo builds that come with the page, as text; all of them are invented. */
const TEXTS = import.meta.glob<string>('../../../../examples/*/build.json', { query: '?raw', import: 'default' });

/** Folder name of a demo and what loads it. */
const DEMOS: ReadonlyMap<string, () => Promise<string>> = new Map(
  Object.entries(TEXTS).map(([path, load]) => [path.split('/').at(-2) ?? path, load]),
);

/** Names of the demo builds, in alphabetical order. */
export const DEMO_NAMES: readonly string[] = [...DEMOS.keys()].sort();

/** Text of a demo's build file; rejects with an `Error` when there is none of this name. */
export async function demoText(name: string): Promise<string> {
  const load = DEMOS.get(name);
  if (!load) throw new Error(`There is no demo named ${name}. There are ${DEMO_NAMES.join(', ')}.`);
  return load();
}
