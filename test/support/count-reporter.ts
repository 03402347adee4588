import type { Reporter, SerializedError, TestModule, TestRunEndReason } from 'vitest/node';

/**
 * The last line of a test run, plain: `412 passed, 0 failed`.
 *
 * A file that could not be loaded and an error outside every test count as one failure each, and a run in
 * which no test passed or failed has failed: a suite that looked at nothing has proved nothing.
 */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly SerializedError[], reason: TestRunEndReason): void {
    const counted = countTests(modules, unhandled.length);
    // A set-up that throws ends the run before there is a test to blame.
    const counts = reason === 'passed' ? counted : { ...counted, failed: Math.max(1, counted.failed) };
    if (counts.failed > 0 || counts.passed === 0) process.exitCode = 1;
    process.once('exit', () => console.log(describeCounts(counts)));
  }
}

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export function describeCounts({ passed, failed, skipped }: Counts): string {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

function countTests(modules: readonly TestModule[], errors: number): Counts {
  const states = modules.flatMap(({ children }) => [...children.allTests()].map((test) => test.result().state));
  const count = (state: string): number => states.filter((one) => one === state).length;
  // A suite fails by itself where a hook of it throws, and a module where it cannot be loaded.
  const broken = modules
    .flatMap((module) => [module, ...module.children.allSuites()])
    .filter((one) => one.errors().length > 0).length;
  return {
    passed: count('passed'),
    failed: count('failed') + broken + errors,
    skipped: count('skipped') + count('pending'),
  };
}
