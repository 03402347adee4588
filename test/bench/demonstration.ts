import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { copyProject } from '../support/project-copy.ts';
import { describeSpread, printTable, runMeasured, type Usage } from './measure.ts';

const ROUNDS = 3;
const AIM_KIB = 60;

/** The site as committed: its build, from nothing, and the size of its report pages. */
export async function benchDemonstration(rounds = ROUNDS): Promise<void> {
  using copy = copyProject();
  const runs: Usage[] = [];
  for (let round = 0; round < rounds; round += 1) runs.push(runMeasured(copy.root, 'src/commands/build.ts'));
  printTable(`Build of the committed site (${rounds} builds)`, [
    [
      'time',
      describeSpread(
        runs.map(({ seconds }) => seconds),
        's',
      ),
    ],
    [
      'processor time',
      describeSpread(
        runs.map(({ cpuSeconds }) => cpuSeconds),
        's',
      ),
    ],
    [
      'peak memory',
      describeSpread(
        runs.map(({ peakMiB }) => peakMiB),
        'MiB',
        0,
      ),
    ],
  ]);
  const reports = join(copy.dist, 'reports');
  printTable(
    `Its report pages, gzipped (aim: at most ${AIM_KIB} KiB each)`,
    readdirSync(reports, { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }): [string, string] => [
        name,
        `${(gzipSync(readFileSync(join(reports, name, 'index.html'))).length / 1024).toFixed(1)} KiB`,
      ]),
  );
}
