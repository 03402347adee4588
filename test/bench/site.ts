import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { copyProject } from '../support/project-copy.ts';
import { writeBareSite } from './bare-site.ts';
import { CHARTS_PER_WRITE_UP, writeGeneratedBench } from './generated-bench.ts';
import { alternate, describeRatio, describeSpread, printTable, runMeasured, type Usage } from './measure.ts';

const SESSIONS = 500;
const WRITE_UPS = 100;
const ROUNDS = 3;
const AIM = 1.5;

/** The build of a large generated bench against a bare build of the same pages, both from nothing, in turn. */
export async function benchSite(): Promise<void> {
  using copy = copyProject();
  using bare = copyProject({ name: 'bare' });
  writeGeneratedBench(copy.root, { sessions: SESSIONS, writeUps: WRITE_UPS });
  copy.build();
  writeBareSite(bare.root, copy.dist, join(copy.root, 'content'));
  const fromNothing =
    (root: string, ...words: readonly string[]) =>
    (): Usage => {
      for (const folder of ['.astro', 'dist']) rmSync(join(root, folder), { recursive: true, force: true });
      return runMeasured(root, ...words);
    };
  const runs = await alternate(ROUNDS, {
    ours: fromNothing(copy.root, 'src/commands/build.ts'),
    bare: fromNothing(bare.root, 'build.mjs'),
  });
  const [pages, barePages] = [pagesOf(copy.dist), pagesOf(bare.dist)];
  const of = (list: readonly Usage[], what: keyof Usage): readonly number[] => list.map((usage) => usage[what]);
  const both = (what: keyof Usage, unit: string, digits = 1): string =>
    `${describeSpread(of(runs.ours, what), unit, digits)}, bare ${describeSpread(of(runs.bare, what), unit, digits)}, ratio ${describeRatio(of(runs.ours, what), of(runs.bare, what), what === 'seconds' ? AIM : undefined)}`;
  printTable(
    `Build of a generated bench: ${SESSIONS} sessions of 30 readings, ${WRITE_UPS} write-ups with ${CHARTS_PER_WRITE_UP * WRITE_UPS} charts, a chart on each session's page (${ROUNDS} builds each, in turn)`,
    [
      ['time', both('seconds', 's')],
      ['processor time', both('cpuSeconds', 's')],
      ['peak memory', both('peakMiB', 'MiB', 0)],
      ['pages', `${pages.length}, bare ${barePages.length}`],
      ['bytes of pages', `${sum(pages)}, bare ${sum(barePages)}`],
    ],
  );
  console.log(
    '  Bare: an Astro project with the same write-ups as MDX, numbers and SVG pasted in as text, every other page\n  pasted whole into one dynamic route, all other files in public/; it reads no data, computes nothing and checks nothing.',
  );
}

/** Bytes of every page of a built site. */
function pagesOf(dist: string): readonly number[] {
  return readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) => readFileSync(join(dist, name)).length);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
