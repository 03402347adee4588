import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Rig } from '../../src/model/bench.ts';
import { checkEncoding } from '../../src/ingest/encoding.ts';
import { parseFrontMatter } from '../../src/ingest/front-matter.ts';
import { parseReadings } from '../../src/ingest/readings.ts';
import { parseSettings } from '../../src/ingest/settings.ts';
import { tally, type Source } from '../../src/ingest/source.ts';
import { VALID_FILES } from '../support/bench-folder.ts';

const rig = { sourceTimer: { name: 'Phone', refresh: { frames: 60, seconds: 1 } } } as Rig;

const PARSERS: Readonly<Record<string, { text: string; parse: (source: Source) => unknown }>> = {
  readings: { text: VALID_FILES['data/sessions/a.csv'], parse: (source) => parseReadings(source, 'two-timers', rig) },
  'front matter': { text: VALID_FILES['data/rigs/balcony.md'], parse: parseFrontMatter },
  settings: { text: VALID_FILES['data/settings.yaml'], parse: parseSettings },
};

/** A valid file in which a few stretches of bytes are replaced by others that mean something to a parser. */
function damaged(text: string): fc.Arbitrary<Uint8Array> {
  const bytes = Buffer.from(text);
  const scrap = fc.string({
    unit: fc.constantFrom(...'\n\r",:;-[]{}&*!|>%@`#?\t 0.\0', '---', 'é', '\ufeff'),
    maxLength: 4,
  });
  const cut = fc.record({ at: fc.nat(bytes.length), length: fc.nat(6), scrap });
  return fc
    .array(cut, { minLength: 1, maxLength: 4 })
    .map((cuts) =>
      cuts.reduce(
        (left, { at, length, scrap: put }) =>
          Buffer.concat([left.subarray(0, at), Buffer.from(put), left.subarray(at + length)]),
        bytes,
      ),
    );
}

it.each(Object.entries(PARSERS))('damaged %s give a result or a problem, and never crash', (_name, { text, parse }) => {
  let [results, refusals] = [0, 0];
  fc.assert(
    fc.property(damaged(text), (raw) => {
      const { report, count } = tally(() => undefined);
      const bytes = checkEncoding(raw, report);
      const result = bytes && parse({ file: { path: 'x', sha256: '', bytes: raw.length }, bytes, report });
      if (result === undefined) expect(count()).toBeGreaterThan(0);
      if (count() === 0) results += 1;
      else refusals += 1;
    }),
    { seed: 3, numRuns: 1000 },
  );
  expect(results).toBeGreaterThan(10);
  expect(refusals).toBeGreaterThan(100);
});
