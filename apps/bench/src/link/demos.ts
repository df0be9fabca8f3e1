/** The demo builds that come with the page, as text; all of them are invented. */
const TEXTS = import.meta.glob<string>('../../../../examples/*/build.json', { query: '?raw', import: 'default' });
const ABOUT = import.meta.glob<string>('../../../../examples/*/build.json', { import: 'about', eager: true });

const nameOf = (path: string): string => path.split('/').at(-2) ?? path;

/** Folder name of a demo and what loads it. */
const DEMOS: ReadonlyMap<string, () => Promise<string>> = new Map(
  Object.entries(TEXTS).map(([path, load]) => [nameOf(path), load]),
);

/** A demo build: its name, and what it is in a few words. */
export interface Demo {
  readonly name: string;
  readonly about: string;
}

/** The demo builds, in alphabetical order of their names. */
export const DEMO_BUILDS: readonly Demo[] = Object.entries(ABOUT)
  .map(([path, about]) => ({ name: nameOf(path), about }))
  .sort((a, b) => (a.name < b.name ? -1 : 1));

/** Text of a demo's build file; rejects with an `Error` when there is none of this name. */
export async function demoText(name: string): Promise<string> {
  const load = DEMOS.get(name);
  if (!load) throw new Error(`There is no demo named ${name}. There are ${[...DEMOS.keys()].join(', ')}.`);
  return load();
}
