import { fileURLToPath } from 'node:url';
import { configDefaults, defineConfig } from 'vitest/config';
import { simdLadder } from './support/simdLadder.ts';

const BROWSER = 'tests/**/*.browser.test.ts';
/** The physics once more, on the SIMD kernel. */
const LADDER = [
  'tests/reference/**/*.test.ts',
  'tests/engine/presets.test.ts',
  'tests/engine/coat/statistics.test.ts',
  'tests/engine/transport/{shadows,arrival,hidden}.test.ts',
];

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
        plugins: [simdLadder],
        test: {
          name: 'simd',
          include: LADDER,
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
          expect: { poll: { timeout: 30_000 } },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
