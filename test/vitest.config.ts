import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const slow = { testTimeout: 120_000, hookTimeout: 300_000 };

/** `unit`: everything that needs no built site. `site`: builds and serves the real site. */
export default defineConfig({
  root,
  test: {
    // by itself the runner leaves one processor idle, of two that is half
    maxWorkers: '100%',
    maxConcurrency: 3,
    projects: [
      {
        root,
        test: {
          name: 'unit',
          include: ['test/**/*.test.ts'],
          exclude: ['test/site/**'],
          environment: 'node',
          testTimeout: 120_000,
          hookTimeout: 60_000,
        },
      },
      {
        root,
        test: {
          name: 'site',
          include: ['test/site/**/*.test.ts'],
          globalSetup: ['test/site/global-setup.ts'],
          environment: 'node',
          ...slow,
        },
      },
    ],
  },
});
