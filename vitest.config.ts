import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const core = fileURLToPath(new URL('packages/core/src/index.ts', import.meta.url));
const sync = fileURLToPath(new URL('packages/sync/src/index.ts', import.meta.url));
// `npm run checks` also records what ordinary matchers hold to a number.
const setupFiles = process.env.SHELLRAISE_CHECKS
  ? [fileURLToPath(new URL('packages/core/tests/outside/data/record-matchers.ts', import.meta.url))]
  : [];
const browserTests = 'packages/app/tests/browser/**/*.test.ts';

// Browser tests run in Chromium on the built app, alone and one file after the other: they wait
// for what a person would wait for, and a busy machine would make them slow. One browser is started
// for all files.
export default defineConfig({
  resolve: { alias: { '@shellraise/core': core, '@shellraise/sync': sync } },
  test: {
    // One worker fewer than there are processors, the default, leaves half of two idle.
    maxWorkers: availableParallelism(),
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['packages/*/tests/**/*.test.ts'],
          exclude: [browserTests],
          setupFiles,
          testTimeout: 60_000,
          // No test changes what others share: loading the engine anew for each file takes longer
          // than most files run. What records matchers is set up once a file, and would twice.
          isolate: setupFiles.length > 0,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [browserTests],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // As long as a person would wait on a busy machine.
          expect: { poll: { timeout: 20_000 } },
          fileParallelism: false,
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
