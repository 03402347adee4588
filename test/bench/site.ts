import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { writeBareSite } from './bare-site.ts';
import { CHARTS_PER_WRITE_UP, writeGeneratedBench, type GeneratedSession } from './generated-bench.ts';
import { alternate, describeRatio, describeSpread, printTable, runMeasured, type Usage } from './measure.ts';

const SESSIONS = 500;
/** Sessions to a write-up. */
const TO_A_WRITE_UP = 5;
const WRITE_UPS = SESSIONS / TO_A_WRITE_UP;
const MANY = 4;
const ROUNDS = 3;
const NEW_BODY = 'dale-four';

/** What is measured against a bare build of the same pages from nothing, and the most that it should take of that. */
const ROWS = [
  ['cold', 'from nothing', 2],
  ['reading', 'after one corrected reading', 1],
  ['nothing', 'nothing changed', 0.8],
  ['body', 'after adding a body with 4 sessions', 1.1],
] as const;

/** Builds of a large generated bench against a bare build of the same pages from nothing, in turn. */
export async function benchSite(rounds = ROUNDS, size = SESSIONS): Promise<void> {
  using copy = copyProject();
  using bare = copyProject({ name: 'bare' });
  const writeUps = Math.ceil(size / TO_A_WRITE_UP);
  const sessions = writeGeneratedBench(copy.root, { sessions: size, writeUps });
  copy.build();
  writeBareSite(bare.root, copy.dist, join(copy.root, 'content'));
  const build = (): Usage => runMeasured(copy.root, 'src/commands/build.ts');
  const [first] = sessions;
  if (first === undefined) throw new Error('the generated bench has no session');
  const runs = await alternate(rounds, {
    cold: () => fromNothing(copy.root, 'src/commands/build.ts'),
    nothing: build,
    reading() {
      correctReading(copy, first);
      return build();
    },
    body() {
      addBody(copy, sessions);
      const usage = build();
      removeBody(copy);
      return usage;
    },
    bare: () => fromNothing(bare.root, 'build.mjs'),
  });
  const of = (list: readonly Usage[], what: keyof Usage): readonly number[] => list.map((usage) => usage[what]);
  const row = (name: (typeof ROWS)[number][0], aim: number): string =>
    [
      `${describeSpread(of(runs[name], 'seconds'), 's')}, ratio ${describeRatio(of(runs[name], 'seconds'), of(runs.bare, 'seconds'), aim)}`,
      `processor ${describeSpread(of(runs[name], 'cpuSeconds'), 's')}, ratio ${describeRatio(of(runs[name], 'cpuSeconds'), of(runs.bare, 'cpuSeconds'))}`,
    ].join('; ');
  const [pages, barePages] = [bytesOf(copy.dist, '.html'), bytesOf(bare.dist, '.html')];
  printTable(
    `Builds of a generated bench: ${size} sessions of 30 readings, ${writeUps} write-ups with ${CHARTS_PER_WRITE_UP * writeUps} charts, a chart on each session's page (${rounds} builds each, in turn)`,
    [
      ...ROWS.map(([name, label, aim]): [string, string] => [label, row(name, aim)]),
      [
        'bare, from nothing',
        `${describeSpread(of(runs.bare, 'seconds'), 's')}; processor ${describeSpread(of(runs.bare, 'cpuSeconds'), 's')}`,
      ],
      [
        'peak memory, from nothing',
        `${describeSpread(of(runs.cold, 'peakMiB'), 'MiB', 0)}, bare ${describeSpread(of(runs.bare, 'peakMiB'), 'MiB', 0)}`,
      ],
      ['pages', `${pages.length}, bare ${barePages.length}`],
      ['largest page', `${Math.max(...pages)} bytes (aim: at most 300000)`],
      [
        'the site',
        `${sum(bytesOf(copy.dist, ''))} bytes, of them ${sum(pages)} of pages and ${sum(bytesOf(copy.dist, 'figures.json'))} of the register (aim: at most 40000000)`,
      ],
    ],
  );
  console.log(
    '  Bare: an Astro project with the same write-ups as MDX, numbers and SVG pasted in as text, every other page\n  pasted whole into one dynamic route, all other files in public/; it reads no data, computes nothing and checks nothing.',
  );
}

/** A bench four times as large: time for each session, and memory. */
export async function benchScale(): Promise<void> {
  using few = copyProject({ name: 'few' });
  using many = copyProject({ name: 'many' });
  writeGeneratedBench(few.root, { sessions: SESSIONS, writeUps: WRITE_UPS });
  writeGeneratedBench(many.root, { sessions: SESSIONS * MANY, writeUps: WRITE_UPS * 2 });
  const runs = await alternate(1, {
    few: () => fromNothing(few.root, 'src/commands/build.ts'),
    many: () => fromNothing(many.root, 'src/commands/build.ts'),
  });
  const each = (list: readonly Usage[], count: number): readonly number[] => list.map(({ seconds }) => seconds / count);
  printTable(`Build of ${SESSIONS * MANY} sessions and ${WRITE_UPS * 2} write-ups, from nothing`, [
    [
      `time for each session, against ${SESSIONS}`,
      describeRatio(each(runs.many, SESSIONS * MANY), each(runs.few, SESSIONS), 1),
    ],
    [
      'time',
      describeSpread(
        runs.many.map(({ seconds }) => seconds),
        's',
      ),
    ],
    [
      'peak memory',
      `${describeSpread(
        runs.many.map(({ peakMiB }) => peakMiB),
        'MiB',
        0,
      )} (aim: at most 2048)`,
    ],
    ['largest page', `${Math.max(...bytesOf(many.dist, '.html'))} bytes (aim: at most 300000)`],
    ['the site', `${sum(bytesOf(many.dist, ''))} bytes`],
  ]);
}

function fromNothing(root: string, ...words: readonly string[]): Usage {
  for (const folder of ['.astro', 'dist']) rmSync(join(root, folder), { recursive: true, force: true });
  return runMeasured(root, ...words);
}

/** Changes the last digit of a session's first reading. */
function correctReading(copy: ProjectCopy, { id }: GeneratedSession): void {
  copy.edit(`data/sessions/${id}.csv`, (text) =>
    text.replace(/(\d)(?=,,)/, (digit) => String((Number(digit) + 1) % 10)),
  );
}

/** A body in the condition of four sessions, with their readings. */
function addBody(copy: ProjectCopy, sessions: readonly GeneratedSession[]): void {
  const like = sessions.filter(({ body, rig }) => body === sessions[0]?.body && rig === sessions[0]?.rig).slice(0, 4);
  copy.write(`data/bodies/${NEW_BODY}.md`, '---\nname: Dale Four\nmaker: Nobody\nmodel: four\ninvented: true\n---\n');
  for (const [index, { id, body }] of like.entries()) {
    copy.write(
      `data/sessions/${NEW_BODY}-${index}.md`,
      copy.read(`data/sessions/${id}.md`).replace(`body: ${body}`, `body: ${NEW_BODY}`),
    );
    copy.write(`data/sessions/${NEW_BODY}-${index}.csv`, copy.read(`data/sessions/${id}.csv`));
  }
}

function removeBody(copy: ProjectCopy): void {
  copy.remove(`data/bodies/${NEW_BODY}.md`);
  for (const file of readdirSync(join(copy.root, 'data/sessions')).filter((name) => name.startsWith(NEW_BODY)))
    copy.remove(`data/sessions/${file}`);
}

/** Bytes of every file of a built site whose name ends so. */
function bytesOf(dist: string, ending: string): readonly number[] {
  return readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(ending))
    .map(({ parentPath, name }) => readFileSync(join(parentPath, name)).length);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
