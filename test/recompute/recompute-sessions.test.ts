import { describe, expect, it } from 'vitest';
import { publishedPath, checksum } from '../../src/ingest/files-in-hand.ts';
import { compareFigures } from '../../src/recompute/compare-figures.ts';
import { describeComparison } from '../../src/recompute/describe-comparison.ts';
import { missingFiles } from '../../src/recompute/missing-files.ts';
import { estimatorAt, recomputePair, recomputeSessions } from '../../src/recompute/recompute-sessions.ts';
import type { Figure } from '../../src/register/register.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { readChanged, VALID_FILES } from '../support/bench-folder.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const SECOND = {
  'data/sessions/b.md': VALID_FILES['data/sessions/a.md'].replace('audio-out: on', 'audio-out: off'),
  'data/sessions/b.csv': VALID_FILES['data/sessions/a.csv'].replace('00:31.181', '00:31.165'),
};

/** The files that the page of a session lists, under whatever names a reader gave their folders. */
function inHand(changes: Readonly<Record<string, string>> = {}): ReadonlyMap<string, Uint8Array> {
  return new Map(
    Object.entries({ ...VALID_FILES, ...changes }).flatMap(([path, text]) =>
      path.startsWith('data/') ? [[path, bytes(text)]] : [],
    ),
  );
}

const figuresOf = (files = inHand()): readonly Figure[] =>
  recomputeSessions(files).sessions.flatMap(({ figures }) => figures);

describe('the figures of a session from its files alone', () => {
  it('are those of a whole build, to the last digit', async () => {
    const published = compileRegister(await readChanged(SECOND)).figures.filter(
      ({ of }) => of['session'] !== undefined && of['than'] === undefined,
    );
    const compared = compareFigures(published, figuresOf(inHand(SECOND)));
    expect(compared).toHaveLength(2 * 12);
    expect(compared.flatMap(({ differing }) => differing)).toEqual([]);
    expect(describeComparison(compared)).toBe('24 figures identical to the last digit.');
  });

  it('say which figure differs, and in what, when a reading was changed', async () => {
    const { figures } = compileRegister(await readChanged());
    const changed = inHand({ 'data/sessions/a.csv': VALID_FILES['data/sessions/a.csv'].replace('31.181', '31.191') });
    const total = compareFigures(figures, figuresOf(changed)).find(({ id }) => id === 'total/a');
    expect(total?.differing).toContain('value');
    expect(total?.differing).toContain('sources.0.sha256');
    // (301 + 315) / 2 = 308 ms; with one source 10 ms nearer, (291 + 315) / 2 = 303 ms.
    const mean = compareFigures(figures, figuresOf(changed)).find(({ id }) => id === 'mean/a');
    expect([mean?.published?.value, mean?.recomputed?.value]).toEqual([308, 303]);
  });

  it('have a wider interval at a higher level, about the same value', () => {
    const at = (level: number) => recomputeSessions(inHand(), estimatorAt(level)).session('a').total;
    const [usual, wide] = [at(0.95), at(0.99)];
    expect(wide.value).toBe(usual.value);
    expect(wide.interval?.level).toBe(0.99);
    expect(wide.interval?.high).toBeGreaterThan(usual.interval?.high ?? Infinity);
  });

  it('can be compared, two sessions at a time', () => {
    const compilation = recomputeSessions(inHand(SECOND));
    const [difference, ratio, verdict] = recomputePair(compilation, 'a', 'b');
    const [a, b] = ['a', 'b'].map((id) => compilation.session(id).total.value);
    expect(difference?.value).toBe((a ?? NaN) - (b ?? NaN));
    expect(ratio?.value).toBe((a ?? NaN) / (b ?? NaN));
    expect(verdict?.verdict?.familySize).toBe(1);
  });
});

it('a session asks for the files that it and its rig refer to', () => {
  const pair = new Map([...inHand()].filter(([path]) => path.startsWith('data/sessions/a')));
  expect(missingFiles(pair)).toEqual(['data/bodies/orrin.md', 'data/rigs/balcony.md', 'data/settings.yaml']);
  const withRig = new Map([...inHand()].filter(([path]) => /sessions\/a|rigs\/balcony/.test(path)));
  expect(missingFiles(withRig)).toContain('data/links/air.md');
  expect(missingFiles(new Map([...inHand()].filter(([path]) => !path.endsWith('.csv'))))).toEqual([
    'data/sessions/a.csv',
  ]);
  expect(missingFiles(inHand())).toEqual([]);
});

it.each([
  ['data/sessions/a.csv', 'data/sessions/a.csv', undefined],
  ['Downloads/a.csv', 'data/sessions/a.csv', undefined],
  ['Downloads/a.md', 'data/sessions/a.md', 'data/sessions/a.md'],
  ['balcony.md', 'data/rigs/balcony.md', 'data/rigs/balcony.md'],
  ['screen.md', 'data/displays/screen.md', 'data/displays/screen.md'],
  ['orrin.md', 'data/bodies/orrin.md', 'data/bodies/orrin.md'],
  ['air.md', 'data/links/air.md', 'data/links/air.md'],
  ['C:\\figures\\settings.yaml', 'data/settings.yaml', undefined],
  ['package/content/ledger/figures.csv', undefined, undefined],
  ['package/content/site.md', undefined, 'content/site.md'],
  ['README.md', undefined, undefined],
] as const)('%s is %s', (path, expected, content) => {
  expect(publishedPath({ path, bytes: bytes(content === undefined ? '# text\n' : VALID_FILES[content]) })).toBe(
    expected,
  );
});

it('checksums are SHA-256', () => {
  // NIST, FIPS 180-4 example: SHA-256 of the three bytes "abc".
  expect(checksum(bytes('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});
