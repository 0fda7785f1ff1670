import { fileURLToPath } from 'node:url';
import { configDefaults, defineConfig } from 'vitest/config';

const BROWSER = 'tests/**/*.browser.test.ts';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, BROWSER],
          testTimeout: 120_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          // a browser that draws in software wants the machine to itself: one file after another, after all else
          name: 'browser',
          include: [BROWSER],
          globalSetup: ['tests/support/buildPage.ts'],
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
