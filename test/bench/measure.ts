/** How the bench measures, and how it writes what it measured. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';

/** What one run of a program took. */
export interface Usage {
  readonly seconds: number;
  /** Of all its threads together: on a machine with other work it says more than the clock does. */
  readonly cpuSeconds: number;
  readonly peakMiB: number;
}

/** Runs a program with this Node in a folder, alone, to its end. Throws with what it printed when it fails. */
export function runMeasured(cwd: string, ...words: readonly string[]): Usage {
  const folder = mkdtempSync(join(tmpdir(), 'usage-'));
  try {
    const file = join(folder, 'usage.json');
    const start = performance.now();
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', import.meta.resolve('./report-usage.ts'), ...words],
      {
        cwd,
        env: { ...process.env, BENCH_USAGE: file },
        encoding: 'utf8',
      },
    );
    const seconds = (performance.now() - start) / 1000;
    if (status !== 0) throw new Error(`${words.join(' ')} ended with code ${status}\n${stdout}${stderr}`);
    const { userCPUTime, systemCPUTime, maxRSS } = JSON.parse(readFileSync(file, 'utf8')) as NodeJS.ResourceUsage;
    return { seconds, cpuSeconds: (userCPUTime + systemCPUTime) / 1e6, peakMiB: maxRSS / 1024 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs several things in turn, round by round, so that whatever else the machine does falls on all of them alike. */
export async function alternate<T, Name extends string>(
  rounds: number,
  things: Readonly<Record<Name, () => T | Promise<T>>>,
): Promise<Record<Name, T[]>> {
  const names = Object.keys(things) as Name[];
  const results = Object.fromEntries(names.map((name) => [name, []])) as unknown as Record<Name, T[]>;
  for (let round = 0; round < rounds; round += 1) {
    for (const name of names) results[name].push(await things[name]());
  }
  return results;
}

/** Seconds that a piece of work takes. */
export async function timed(work: () => unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.ceil(middle) - 1] ?? Number.NaN) + (sorted[Math.floor(middle)] ?? Number.NaN)) / 2;
}

/** `6.2 s (5.9 to 7.1)`: the median and what it lies between. */
export function describeSpread(values: readonly number[], unit: string, digits = 1): string {
  const text = (value: number): string => value.toFixed(digits);
  return `${text(median(values))} ${unit} (${text(Math.min(...values))} to ${text(Math.max(...values))})`;
}

/** `1.42 (aim: at most 1.5)` */
export function describeRatio(ours: readonly number[], other: readonly number[], aim?: number): string {
  return `${(median(ours) / median(other)).toFixed(2)}${aim === undefined ? '' : ` (aim: at most ${aim})`}`;
}

/** Prints a heading and its lines, values in one column. */
export function printTable(heading: string, rows: readonly (readonly [name: string, text: string])[]): void {
  const width = Math.max(...rows.map(([name]) => name.length));
  console.log([`\n${heading}`, ...rows.map(([name, text]) => `  ${name.padEnd(width)}  ${text}`)].join('\n'));
}
