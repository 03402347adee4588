/** That the authoring guide is right: its examples and its messages, on the demonstration. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkWriteUps, knownOf } from '../../src/write-ups/check-write-ups.ts';
import { checkClaims } from '../../src/write-ups/claims/check-claims.ts';
import { compileBench } from '../../src/site/compile.ts';
import { PARTS } from '../../src/write-ups/parts.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { tagOf } from '../support/guide.ts';
import { PROJECT } from '../support/project-files.ts';

const NAMES = PARTS.map(({ name }) => name);

function writeUp(id: string, text: string): WriteUp {
  const refuse = (problem: unknown): never => {
    throw new Error(JSON.stringify(problem));
  };
  return {
    id,
    title: id,
    summary: id,
    date: '2026-04-22',
    ...parseReferences(text, refuse),
    text,
    file: { path: `content/reports/${id}.mdx`, sha256: '0'.repeat(64), bytes: text.length },
  };
}

/** What the build says of each write-up, after the name of its file. */
let said: ReadonlyMap<string, readonly string[]>;
let typed: readonly string[];
beforeAll(async () => {
  const committed = await readBench({
    root: PROJECT,
    dataDir: join(PROJECT, 'data'),
    contentDir: join(PROJECT, 'content'),
  });
  const added = PARTS.flatMap(({ name, example, failure }) => [
    writeUp(`right-${name}`, example),
    writeUp(`wrong-${name}`, failure.written),
  ]);
  const { ledger, ...bench } = { ...committed, reports: [...committed.reports, ...added] };
  const site = compileBench(bench);
  const problems = [...checkWriteUps(knownOf(site)), ...checkClaims(site)];
  said = new Map(
    Object.entries(Object.groupBy(problems, ({ file }) => file)).map(([file, ofFile = []]) => [
      file.replace(/^.*\/|\.mdx$/g, ''),
      ofFile.map((each) => describeProblem(each).slice(file.length + 1)),
    ]),
  );
  typed = site.register.findings
    .filter(({ rule }) => rule === 'typed-quantity')
    .map(({ where, message }) => `${where['place']} ${message}`);
}, 120_000);

describe('the authoring guide', () => {
  it('has parts to speak of', () => expect(NAMES.length).toBeGreaterThan(18));

  it.each(NAMES)('%s: its example uses it, and builds', (name) => {
    expect(tagOf(name)).toContain(`<${name}`);
    expect(said.get(`right-${name}`) ?? []).toEqual([]);
  });

  it.each(PARTS)('$name: its failure is what the build says', ({ name, failure }) =>
    expect(said.get(`wrong-${name}`)).toEqual([failure.says]),
  );

  it.each(PARTS)('$name: every property says what it means and accepts, and what it needs is among them', (part) => {
    const { properties, needs, shows } = part;
    expect(shows).not.toBe('');
    expect(Object.values(properties).filter(({ means, accepts }) => means === '' || accepts === '')).toEqual([]);
    expect(needs.flat().filter((need) => !(need in properties))).toEqual([]);
  });
});

it('the demonstration types no result by hand', () =>
  expect(typed.filter((each) => !/\/(?:right|wrong)-/.test(each))).toEqual([]));

it('the reports of the demonstration claim things', () => {
  const claims = ['how-we-measure', 'stage-screen'].map(
    (name) => readFileSync(join(PROJECT, `content/reports/${name}.mdx`), 'utf8').match(/<Claim /g)?.length ?? 0,
  );
  expect(claims.filter((count) => count === 0)).toEqual([]);
  expect(claims.reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(5);
});
