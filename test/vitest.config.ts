import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Tests that start commands, each a process of its own. */
const COMMANDS = ['test/commands/**/*.test.ts'];
/** Tests that simulate or mistype hundreds of benches to count how often something happens. */
const SIMULATIONS = ['test/{coverage,simulation,slips}/**/*.test.ts'];
/** Tests that build and serve the real site. */
const SITE = ['test/site/**/*.test.ts'];

const MINUTE = 60_000;

/** Tests of a kind, with the minutes that one and its preparation may take where the machine is busy. */
const project = (name: string, include: readonly string[], minutes: number, more: object = {}) => ({
  root,
  test: {
    name,
    include: [...include],
    environment: 'node' as const,
    // modules are evaluated once for all files of a worker, which halves the time: no test leans on fresh ones
    isolate: false,
    testTimeout: minutes * MINUTE,
    hookTimeout: minutes * MINUTE,
    ...more,
  },
});

export default defineConfig({
  root,
  test: {
    // by itself the runner leaves one processor idle, of two that is half
    maxWorkers: '100%',
    maxConcurrency: 3,
    projects: [
      project('unit', ['test/**/*.test.ts'], 2, { exclude: [...COMMANDS, ...SIMULATIONS, ...SITE] }),
      project('commands', COMMANDS, 5),
      project('simulation', SIMULATIONS, 10),
      project('site', SITE, 5, { globalSetup: ['test/site/global-setup.ts'] }),
    ],
  },
});
