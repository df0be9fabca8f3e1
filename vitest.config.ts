import { defineConfig } from 'vitest/config';

// Workspaces export their TypeScript under the `source` condition; tests run on it unbuilt.
const conditions = ['source', 'module', 'node', 'import', 'default'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}', 'proof/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**'],
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 15_000 } },
  },
});
