import { z } from 'zod';
import { describeProvenance } from '../../register/provenance.ts';
import { VERDICT_WORDS } from '../claims/assertions.ts';
import { checkSentence } from '../claims/check-sentence.ts';
import { checkClaimWords } from '../claims/check-words.ts';
import { claimOf } from '../claims/claim.ts';
import { describeAssertions } from '../claims/describe.ts';
import { countStatements, judgeClaim, pOfClaim } from '../claims/judge-claim.ts';
import { parseQuantity } from '../claims/quantity.ts';
import { pairOf, targetOf } from '../claims/target.ts';
import { COMMON, levels } from './common.ts';
import { definePart } from './definition.ts';
import { asWritten, checkChoice, checkFigure, checkValue, type Known, type Unplaced } from './property.ts';
import { checkTwo } from './two-sessions.ts';

const text = z.string();
const quantity = text.refine((written) => parseQuantity(written) !== undefined);
const QUANTITY = {
  accepts: '"100 ms", "half a frame", "0.5 frames", "30 %", "half", "twice", "3"',
  schema: quantity,
  check: (found: unknown): readonly Unplaced[] =>
    quantity.safeParse(found).success ? [] : [{ code: 'bad-quantity', found: asWritten(found) }],
} as const;
const AMONG = {
  accepts: '{["total/a", "total/b"]}, or {{ body: …, rig: …, method: …, where: … }}',
  schema: z.union([
    z.array(text).readonly(),
    z
      .strictObject({
        body: text.optional(),
        rig: text.optional(),
        method: text.optional(),
        where: levels.optional(),
      })
      .readonly(),
  ]),
  check: checkAmong,
} as const;

export const claim = definePart({
  name: 'Claim',
  group: 'words',
  shows: 'the words between its tags, leading to the figure; the build fails when the data do not support them',
  needs: [
    'of',
    ['atLeast', 'atMost', 'exactly', 'sameWithin', 'noLowerBy', 'noHigherBy', 'verdict', 'lowestOf', 'highestOf'],
  ],
  properties: {
    of: { means: 'what the words are about', accepts: '"id of a figure"; with than, "id of a session"', schema: text },
    than: {
      ...COMMON.session,
      means:
        'the session it is compared with: by their ratio where a share or a plain number is asserted, else by their difference',
    },
    atLeast: {
      ...QUANTITY,
      means:
        'the whole 95 % interval is at or above this, adjusted for all that the write-up asserts and compares; together with atMost, between the two',
    },
    atMost: { ...QUANTITY, means: 'the same, at or below this' },
    exactly: { ...QUANTITY, means: 'the value is this: for counts', accepts: '"3"' },
    sameWithin: {
      ...QUANTITY,
      means: 'the whole interval of the difference is within this of zero, or of a ratio, within this of one',
    },
    noLowerBy: { ...QUANTITY, means: 'if it is lower at all, then by less than this' },
    noHigherBy: { ...QUANTITY, means: 'if it is higher at all, then by less than this' },
    verdict: {
      means: 'the verdict is this, adjusted for all that the write-up compares',
      accepts: '"slower", "faster", "same" or "not-settled"',
      schema: z.enum(VERDICT_WORDS),
      check: checkChoice('bad-choice', () => VERDICT_WORDS),
    },
    lowestOf: { ...AMONG, means: 'the lowest of these, and told from each of the others' },
    highestOf: { ...AMONG, means: 'the highest of these, and told from each of the others' },
    margin: { ...COMMON.margin, means: `for verdict: ${COMMON.margin.means}` },
  },
  marksWords: true,
  isSettledBefore: true,
  prints: 'words',
  example:
    'Genlock makes the Vennick <Claim of="vennick-uhd25-genlock" than="vennick-uhd25-b" atLeast="half a frame">slower by at least half a frame</Claim>.',
  failure: {
    written: 'We tried <Claim of="count/bodies" exactly="4">four bodies</Claim>.',
    says: '1:10  Claim  the data do not support "four bodies" (exactly 4): count/bodies is 3; 1.0 too low. Change the sentence to what the data say, or find out why they say it.',
  },
  check: (values, known) => [
    ...checkSubject(values, known).map((problem) => ({ ...problem, key: 'of' })),
    ...checkTwo(values),
  ],
  asks: (props, { bench }) => {
    const pair = pairOf(claimOf(props), bench);
    return pair === undefined ? [] : [pair];
  },
  claims: (props, asking) => countStatements(claimOf(props), asking),
  claimed: (props, answering) => pOfClaim(claimOf(props), answering),
  judge: (props, answering, part) => [
    ...checkClaimWords(claimOf(props), part.words ?? '', answering.bench),
    ...checkSentence(part),
    ...judgeClaim(claimOf(props), answering, part),
  ],
  view: (props, answering) => {
    const read = claimOf(props);
    const figure = targetOf(read, answering);
    if (figure === undefined) throw new Error(`there is no figure that the claim ${JSON.stringify(props)} is about`);
    return {
      figure,
      title: `Checked against the data: ${describeAssertions(read)}. ${figure.text}. ${describeProvenance(figure)}`,
    };
  },
  figures: ({ figure }) => [figure],
});

function checkSubject({ of, than }: Readonly<Record<string, unknown>>, known: Known): readonly Unplaced[] {
  if (of === undefined) return [];
  return than === undefined ? checkFigure(of, known) : checkValue(COMMON.session, of, known);
}

function checkAmong(among: unknown, known: Known): readonly Unplaced[] {
  if (Array.isArray(among)) return among.flatMap((id) => checkFigure(id, known));
  return AMONG.schema.safeParse(among).success ? [] : [{ code: 'bad-selection', found: asWritten(among) }];
}
