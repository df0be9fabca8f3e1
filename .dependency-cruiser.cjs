/**
 * Which room may import which: the table of `docs/architecture.md`, checked by `npm test`.
 * Workspaces are resolved by their `source` condition, so the paths below are source files.
 */
const TESTS = '[.]test[.]tsx?$';

/** Rooms and the rooms that each may import, itself aside. */
const ROOMS = {
  'packages/quantity': [],
  'packages/mechanics': ['packages/quantity'],
  'packages/tables': ['packages/quantity'],
  'packages/build': ['packages/quantity', 'packages/mechanics', 'packages/tables'],
  'packages/sheets': ['packages/quantity', 'packages/mechanics', 'packages/build'],
  'packages/store': ['packages/build'],
  'apps/bench': [
    'packages/quantity',
    'packages/mechanics',
    'packages/tables',
    'packages/build',
    'packages/sheets',
    'packages/store',
  ],
  'apps/host': ['packages'],
  'apps/cli': ['packages', 'apps/host'],
  proof: ['packages', 'apps'],
};

/** Packages from the registry that a pure room may use, outside its tests. */
const PURE = {
  'packages/quantity': [],
  'packages/mechanics': [],
  'packages/tables': [],
  'packages/build': ['zod', '@humanwhocodes/momoa', '@noble/hashes'],
};

const under = (folders) => folders.map((folder) => `^${folder}/`);

const downward = Object.entries(ROOMS).map(([room, allowed]) => ({
  name: `${room.replaceAll('/', '-')}-imports-downward`,
  comment: `${room} may import ${allowed.length === 0 ? 'nothing of ours' : allowed.join(', ')}.`,
  severity: 'error',
  from: { path: `^${room}/` },
  to: { path: '^(packages|apps|proof)/', pathNot: [`^${room}/`, ...under(allowed)] },
}));

const pure = Object.entries(PURE).flatMap(([room, allowed]) => [
  {
    name: `${room.replaceAll('/', '-')}-is-pure`,
    comment: `${room} touches no file, clock, network or process: no module of Node.`,
    severity: 'error',
    from: { path: `^${room}/src/`, pathNot: TESTS },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: `${room.replaceAll('/', '-')}-needs-few-packages`,
    comment: `${room} may use ${allowed.length === 0 ? 'no package from the registry' : allowed.join(', ')}.`,
    severity: 'error',
    from: { path: `^${room}/src/`, pathNot: TESTS },
    to: { path: 'node_modules/', pathNot: allowed.map((name) => `node_modules/${name}/`) },
  },
]);

module.exports = {
  forbidden: [
    ...downward,
    ...pure,
    {
      name: 'scripts-and-examples-stay-outside',
      comment: 'Scripts and demo builds are for tests and for the command line’s start alone.',
      severity: 'error',
      from: { path: '^(packages|apps)/[^/]+/src/', pathNot: TESTS },
      to: { path: '^(scripts|examples)/' },
    },
    {
      name: 'no-circles',
      comment: 'Two files that import each other are one file.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'bench-reaches-the-disk-through-the-host',
      comment: 'The page uses the store of the browser only.',
      severity: 'error',
      from: { path: '^apps/bench/src/', pathNot: TESTS },
      to: { path: '^packages/store/src/(disk|memory)' },
    },
    {
      name: 'page-code-runs-without-node',
      comment: 'Nothing that the page loads may lead to a module of Node.',
      severity: 'error',
      from: { path: '^(apps/bench/src/|packages/(sheets/src/|store/src/browser))', pathNot: TESTS },
      to: {
        path: '^(node:)?(fs|path|os|crypto|child_process|http|https|net|url|worker_threads|stream|zlib)(/|$)',
        reachable: true,
      },
    },
    {
      name: 'nothing-unresolved',
      comment: 'Every import leads to a file.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: 'tests-are-not-imported',
      comment: 'A test is nobody’s helper.',
      severity: 'error',
      from: {},
      to: { path: TESTS },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(packages/[^/]+|apps/[^/]+|proof)/dist/' },
    tsPreCompilationDeps: true,
    combinedDependencies: true,
    enhancedResolveOptions: {
      conditionNames: ['source', 'import', 'node', 'default'],
      exportsFields: ['exports'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.json'],
      mainFields: ['module', 'main', 'types'],
    },
  },
};
