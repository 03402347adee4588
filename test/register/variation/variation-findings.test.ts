import { describe, expect, it } from 'vitest';
import { renderVariation } from '../../../src/ingest/render-variation.ts';
import type { Bench } from '../../../src/model/bench.ts';
import { learnStatement } from '../../../src/register/variation/learn-statement.ts';
import { compileRegister } from '../../../src/site/compile.ts';
import { readChanged, VALID_FILES, type Files } from '../../support/bench-folder.ts';

/** Sessions of one condition each, two clips a session; where a second total is given, repeated on another day. */
function benchOf(totalsMs: readonly (readonly [number, number?])[]): Files {
  const files: Record<string, string | null> = { 'data/sessions/a.md': null, 'data/sessions/a.csv': null };
  totalsMs.forEach((days, i) =>
    days.forEach((totalMs, day) => {
      const front = VALID_FILES['data/sessions/a.md']
        .replace('2026-04-11', `2026-04-1${day + 1}`)
        .replace('"1.40"', `"1.${i}"`)
        .replace('method: two-timers', 'method: instrument');
      const rows = [1, 1, 1, 2, 2, 2].map((run, k) => `${run},${totalMs! + [-8, 0, 8][k % 3]!},,`);
      files[`data/sessions/s${i}-${day}.md`] = front;
      files[`data/sessions/s${i}-${day}.csv`] = `run,latency,exclude,note\n${rows.join('\n')}\n`;
    }),
  );
  return files;
}

const FOUR = benchOf([
  [100, 100.5],
  [120, 119.6],
  [140, 140.2],
  [160, 159.8],
]);
const stated = (bench: Bench): Files => ({
  'data/variation.yaml': renderVariation(learnStatement(bench, '2026-05-02')),
});
const aboutVariation = (bench: Bench) =>
  compileRegister(bench).findings.filter(({ where }) => where['file'] === 'data/variation.yaml');

describe('of a publication without a statement', () => {
  it('it is said that one could be learnt, and what a repeat would buy', async () => {
    const findings = aboutVariation(await readChanged(benchOf([[100], [120], [140], [160, 161]])));
    expect(findings.map(({ rule }) => rule)).toEqual(['variation-not-learnt', 'days-unknown']);
    expect(findings[1]!.message).toMatch(/^Conditions were measured again on another day only 1 time,/);
    expect(findings[1]!.hint).toMatch(
      /^Measure conditions again on another day, 3 sessions in all\. .* from ± [\d.]+ ms to ± [\d.]+ ms\.$/,
    );
  });
  it('with too little to learn from, only the second', async () => {
    const findings = aboutVariation(await readChanged(benchOf([[100]])));
    expect(findings.map(({ rule }) => rule)).toEqual(['days-unknown']);
  });
});

describe('of a publication with one', () => {
  it('nothing is said while sessions are those that it came from, and its figures rest on it', async () => {
    const bench = await readChanged({ ...FOUR, ...stated(await readChanged(FOUR)) });
    expect(bench.variation!.knows).toBe('condition');
    expect(aboutVariation(bench)).toEqual([]);
    const { figures } = compileRegister(bench);
    const restsOnIt = (id: string): boolean =>
      figures.find((figure) => figure.id === id)!.sources.some(({ file }) => file === bench.variation!.file.path);
    expect([restsOnIt('total/s0-0'), restsOnIt('frames/s0-0'), restsOnIt('mean/s0-0')]).toEqual([true, true, false]);
  });

  it('a body that is misspelt in it is named, since sizes of others would hold for it in silence', async () => {
    const sound = stated(await readChanged(FOUR))['data/variation.yaml'] as string;
    expect(sound).toContain('\n  vennick:\n');
    const misspelt = { 'data/variation.yaml': sound.replace('\n  vennick:\n', '\n  vennik:\n') };
    expect(aboutVariation(await readChanged({ ...FOUR, ...misspelt })).map(({ message }) => message)).toEqual([
      'The statement of variation and the bodies do not go together: it states sizes of vennik, which is no body here; it states none of vennick, whose sessions it was learnt from. Where none are stated of a body, those of all others hold.',
    ]);
  });

  it('an interval speaks of the condition, and is wider than that of the clips', async () => {
    const bare = await readChanged(FOUR);
    const bench = await readChanged({ ...FOUR, ...stated(bare) });
    const width = (of: Bench): number => {
      const { low, high } = compileRegister(of).figures.find(({ id }) => id === 'total/s0-0')!.interval!;
      return high - low;
    };
    expect(width(bench)).toBeGreaterThan(width(bare));
  });

  it('sessions that fit bring no finding, those that do not bring it', async () => {
    const statement = stated(await readChanged(FOUR));
    const next = (off: number): Files => {
      const files = benchOf([[100 + off], [120 - off], [140 + off], [160 - off]]);
      return Object.fromEntries(
        [0, 1, 2, 3].flatMap((i) => [
          [`data/sessions/s${i}-2.md`, String(files[`data/sessions/s${i}-0.md`]).replace('2026-04-11', '2026-04-20')],
          [`data/sessions/s${i}-2.csv`, files[`data/sessions/s${i}-0.csv`]!],
        ]),
      );
    };
    expect(aboutVariation(await readChanged({ ...FOUR, ...next(0.3), ...statement }))).toEqual([]);
    const [finding] = aboutVariation(await readChanged({ ...FOUR, ...next(60), ...statement }));
    expect(finding?.rule).toBe('variation-disagrees');
    expect(finding?.message).toMatch(/^What was added or changed since 2026-05-02 \(4 sessions\) varies otherwise/);
  });
});
