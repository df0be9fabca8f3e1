import { defineConfig } from 'vitest/config';

// Workspaces export their TypeScript under the `source` condition; tests run on it unbuilt.
const conditions = ['source', 'module', 'node', 'import', 'default'];

const shared = {
  exclude: ['**/node_modules/**', '**/dist/**'],
  testTimeout: 60_000,
  hookTimeout: 120_000,
  expect: { poll: { timeout: 15_000 } },
};
// Headless Chromium at times draws no more frames for a page, and a press then waits for ever to see the button at rest.
// What stays moving or is covered says so in further lines, and is not tried again.
const NO_FRAMES = /waiting for element to be visible, enabled and stable(?:\W|\d+m)*$/;
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
        test: {
          ...shared,
          name: 'browser',
          include: [BROWSER],
          maxWorkers: 1,
          retry: { count: 1, condition: NO_FRAMES },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
