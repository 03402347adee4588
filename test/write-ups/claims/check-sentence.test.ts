/** That a claim is said straight: what turns a sentence round is found, and what only stands beside it is let pass. */
import { describe, expect, it } from 'vitest';
import { parseReferences } from '../../../src/ingest/references.ts';
import { checkSentence } from '../../../src/write-ups/claims/check-sentence.ts';

/** What is found in a text with one claim, which `CLAIM` stands for. */
function foundIn(text: string): readonly (string | undefined)[] {
  const { parts } = parseReferences(text.replace('CLAIM', '<Claim of="a" exactly="1">the words</Claim>'), (problem) => {
    throw new Error(problem.code);
  });
  return parts.filter(({ name }) => name === 'Claim').flatMap((part) => checkSentence(part).map(({ found }) => found));
}

describe('a sentence around a claim', () => {
  it.each([
    ['It is not true that CLAIM.', 'not'],
    ['Nobody can say that CLAIM.', 'Nobody can'],
    ['It is **wrong** that CLAIM.', 'wrong'],
    ['It is false to say that CLAIM, whatever others say.', 'false'],
    ['The Vennick isn’t CLAIM.', 'isn’t'],
    ["The Vennick doesn't take CLAIM.", "doesn't"],
    ['It is hardly CLAIM.', 'hardly'],
    ['It never is CLAIM.', 'never'],
    ['It is far from CLAIM.', 'far'],
    ['We doubt, after all, that CLAIM.', 'doubt'],
    ['That CLAIM is a myth.', 'is a myth'],
    ['Some say that CLAIM, which is wrong.', ', which is wrong'],
    ['That CLAIM turned out to be wrong.', 'turned out to be wrong'],
    ['CLAIM? No.', '?'],
    ['Is it so that CLAIM?', '?'],
    ['One thing first. It cannot be that\nCLAIM.', 'cannot'],
  ])('is told where it turns it round: %s', (text, found) => {
    expect(foundIn(text)).toEqual([found]);
  });

  it.each([
    'We found that CLAIM.',
    'There is no doubt that CLAIM.',
    'It is not the rate that matters. What matters is that CLAIM.',
    'That is no fault of the display, and CLAIM.',
    'This does not depend on the rig: CLAIM.',
    'It is not only slower, it is CLAIM.',
    'It is not just CLAIM but also heavier.',
    'CLAIM for a picture that does not move.',
    'CLAIM for a picture that is not still.',
    'It takes CLAIM, not more.',
    'CLAIM, which the display does not explain.',
    'At 25 frames/s it takes CLAIM. That is wrong for a stage.',
    'Is that much? It is CLAIM.',
  ])('is let pass where it leaves it as it is: %s', (text) => {
    expect(foundIn(text)).toEqual([]);
  });

  it('ends with its cell, its item and its heading', () => {
    expect(foundIn('## Not so\n\n- Nothing is true\n- CLAIM\n- this is wrong\n')).toEqual([]);
    expect(foundIn('| a | b |\n| - | - |\n| not | CLAIM |\n')).toEqual([]);
  });

  it('is none where a claim stands by itself', () => {
    expect(foundIn('Never.\n\nCLAIM\n\nThis is wrong.')).toEqual([]);
  });
});
