import { describe, expect, it } from 'vitest';
import {
  ANALYSIS_CODES,
  AUDIT_CODES,
  CHAIN_CODES,
  LEDGER_CODES,
  ProblemsError,
  TYPED_CODES,
  WRITE_UP_CODES,
  WRITING_CODES,
  type ProblemCode,
} from '../../src/model/problem.ts';
import { PROBLEM_CODES } from '../../src/model/problem-text.ts';
import { writeBenchFolder } from '../support/bench-folder.ts';
import { DISPLAY_PAIR_CASES } from './cases/display-pairs.ts';
import { FILE_CASES } from './cases/files.ts';
import { FRONT_MATTER_CASES } from './cases/front-matter.ts';
import { LEDGER_CASES } from './cases/ledger.ts';
import { MARKUP_CASES } from './cases/markup.ts';
import { PICTURE_CASES } from './cases/pictures.ts';
import { READING_CASES } from './cases/readings.ts';
import { REFERENCE_CASES } from './cases/references.ts';
import { SLIP_CASES } from './cases/slips.ts';
import { SPEED_CASES } from './cases/speeds.ts';
import { VARIATION_CASES } from './cases/variation.ts';
import type { ProblemCase } from './cases/case.ts';

const GROUPS = {
  files: FILE_CASES,
  'front matter': FRONT_MATTER_CASES,
  references: REFERENCE_CASES,
  'two displays': DISPLAY_PAIR_CASES,
  readings: READING_CASES,
  ledger: LEDGER_CASES,
  'the statement of variation': VARIATION_CASES,
  'speeds of one’s own': SPEED_CASES,
  'plausible slips': SLIP_CASES,
  markup: MARKUP_CASES,
  'photographs and clips': PICTURE_CASES,
};
const seen = new Set<ProblemCode>();

/** Every line that reading this bench reports, without the heading and the blank lines between files. */
async function linesOf({ changes, arrange }: ProblemCase): Promise<readonly string[]> {
  using folder = writeBenchFolder(changes);
  arrange?.(folder);
  try {
    await folder.read();
    return [];
  } catch (error) {
    if (!(error instanceof ProblemsError)) throw error;
    for (const { code } of error.problems) seen.add(code);
    return error.message
      .split('\n')
      .filter((line) => line !== '')
      .slice(1);
  }
}

describe.each(Object.entries(GROUPS))('a problem of %s is reported with its place and its remedy', (_group, cases) => {
  it.each(cases)('$name', async (problemCase) => {
    expect(await linesOf(problemCase)).toEqual(problemCase.lines);
    expect('frontMatterRan' in globalThis).toBe(false);
  });
});

it('every kind of problem was seen above', () => {
  // those of WRITE_UP_CODES are shown in test/write-ups/check-write-ups.test.ts, of LEDGER_CODES in
  // test/ledger/check.test.ts, of CHAIN_CODES in test/ledger/replay.test.ts and join.test.ts,
  // of ANALYSIS_CODES in test/register/refusal.test.ts, of WRITING_CODES in test/commands,
  // of TYPED_CODES in test/write-ups/prose, of AUDIT_CODES in test/audit
  const others: readonly ProblemCode[] = [
    ...WRITE_UP_CODES,
    ...LEDGER_CODES,
    ...CHAIN_CODES,
    ...ANALYSIS_CODES,
    ...WRITING_CODES,
    ...TYPED_CODES,
    ...AUDIT_CODES,
  ];
  expect(PROBLEM_CODES.filter((code) => !seen.has(code) && !others.includes(code))).toEqual([]);
  expect(seen.size).toBeGreaterThan(60);
});
