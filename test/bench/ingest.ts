import { mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { seededRandom } from '../../src/analysis/random.ts';
import { simulateTwoTimers } from '../../src/analysis/simulate.ts';
import { ProblemList } from '../../src/ingest/problem-list.ts';
import { readSource } from '../../src/ingest/read-source.ts';
import { parseReadings } from '../../src/ingest/readings.ts';
import { parseRate } from '../../src/model/rate.ts';
import { chainOf, readingLine } from './generated-bench.ts';
import { alternate, describeRatio, describeSpread, printTable, timed } from './measure.ts';

const READINGS = 1_000_000;
const ROUNDS = 6;
const AIM = 1.5;
const SEED = 7;

/** One file of a million readings: read, checked and typed, against the CSV library splitting the same file into text. */
export async function benchIngest(rounds = ROUNDS): Promise<void> {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'ingest-')));
  try {
    const path = join(folder, 'large.csv');
    writeFileSync(path, largeFile());
    const rig = {
      id: 'loft',
      name: 'Loft',
      invented: true,
      description: '',
      prose: [],
      links: [],
      display: 'screen',
      file: { path: '', sha256: '', bytes: 0 },
      sourceTimer: { name: 'Timer', refresh: parseRate('60')! },
    };
    const ours = async (): Promise<void> => {
      const problems = new ProblemList();
      const source = await readSource(path, 'data/large.csv', { realFolder: folder, name: 'data' }, problems);
      const parsed = source && parseReadings(source, 'two-timers', rig);
      problems.throwIfAny();
      if (parsed?.readings.length !== READINGS)
        throw new Error(`read ${parsed?.readings.length} readings of ${READINGS}`);
    };
    const alone = (): void => {
      if ((parse(readFileSync(path)) as unknown[]).length !== READINGS + 1)
        throw new Error('the CSV library lost rows');
    };
    const runs = await alternate(rounds + 1, { ours: () => timed(ours), alone: () => timed(alone) });
    // the first round compiles
    const [seconds, aloneSeconds] = [runs.ours.slice(1), runs.alone.slice(1)];
    printTable(`Ingest of one file of ${READINGS} readings (${rounds} rounds, in turn)`, [
      [
        'ours',
        `${describeSpread(seconds, 's', 2)}, ${describeSpread(
          seconds.map((each) => READINGS / each / 1e6),
          'million readings a second',
          2,
        )}`,
      ],
      ['csv-parse alone', describeSpread(aloneSeconds, 's', 2)],
      ['ratio', describeRatio(seconds, aloneSeconds, AIM)],
    ]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function largeFile(): string {
  const stamps = simulateTwoTimers(
    chainOf('loft', '25'),
    { pipelineMs: 120 },
    { readings: READINGS, spacingMs: 2000, startMs: 3000 },
    1,
    seededRandom(SEED),
  );
  return ['run,source,shown,exclude,note', ...stamps.map((stamp) => readingLine(1, stamp)), ''].join('\n');
}
