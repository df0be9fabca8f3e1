import { defineConfig } from 'vitest/config';

// Workspaces export their TypeScript under the `source` condition; tests run on it unbuilt.
const conditions = ['source', 'module', 'node', 'import', 'default'];

const shared = {
  exclude: ['**/node_modules/**', '**/dist/**'],
  testTimeout: 60_000,
  hookTimeout: 120_000,
  expect: { poll: { timeout: 15_000 } },
};
const BROWSER = 'proof/browser/**/*.test.ts';

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          ...shared,
          name: 'code',
          include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}', 'proof/**/*.test.ts'],
          exclude: [...shared.exclude, BROWSER],
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        // A page is played as one builder plays it: two browsers at once would take the time from each other.
        test: { ...shared, name: 'browser', include: [BROWSER], maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
