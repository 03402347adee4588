/** Whether the words of a claim name the quantities that it asserts, and no others. */
import type { Bench } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import { findQuantities } from '../prose/find-quantities.ts';
import { findLooseQuantities } from '../prose/loose-quantities.ts';
import { DIGITS, SHARE, valueOfNumber, valueOfShare, WORDS } from '../prose/number-words.ts';
import { isSameQuantity } from '../prose/same-quantity.ts';
import { settingQuantities } from '../prose/setting-quantities.ts';
import type { QuantityAssertion } from './assertions.ts';
import type { Claim } from './claim.ts';
import { describeAssertions } from './describe.ts';
import type { Quantity } from './quantity.ts';

interface Named extends Pick<Quantity, 'text' | 'value'> {
  readonly unit: Quantity['unit'] | 'rate';
  readonly index: number;
}

const SHARES = new RegExp(SHARE, 'giu');
const PLAIN = new RegExp(DIGITS, 'gu');
/** `one` is as often a pronoun. */
const COUNTED = new RegExp(`(?!\\bone\\b)${WORDS}`, 'giu');

/** Which way words set a figure against the quantity that follows them. */
const AT_LEAST =
  /\b(?:at least|not? less than|(?<!\bnot? )more than|over|above|upwards of|exceed(?:s|ing)?|beyond)\s+$/i;
const AT_MOST = /\b(?:at most|not? more than|(?<!\bnot? )less than|under|below|within|up to)\s+$/i;
const WAYS: Readonly<Partial<Record<QuantityAssertion, RegExp>>> = { atLeast: AT_MOST, atMost: AT_LEAST };

type Unplaced = Omit<Problem, 'file' | 'line' | 'column'>;

export function checkClaimWords(claim: Claim, words: string, bench: Bench): readonly Unplaced[] {
  const problem = (found: string): Unplaced => ({
    code: 'claim-words',
    key: 'Claim',
    found,
    expected: describeAssertions(claim),
  });
  const text = withoutNames(words, bench);
  const hasCount = claim.quantities.some(({ quantity: { unit } }) => unit === '1');
  // hundreds of milliseconds have a least and a most
  const assertions = claim.quantities.map(({ assertion }) => assertion);
  const isBounded = assertions.includes('atLeast') && assertions.includes('atMost');
  const vague = isBounded ? [] : findLooseQuantities(text).map((loose) => problem(loose.text));
  if (vague.length > 0) return vague;
  return namedIn(text, hasCount, bench).flatMap((named) => {
    const meant = claim.quantities.filter(({ quantity }) => isSameQuantity(ofRatio(quantity), ofRatio(named)));
    if (meant.length === 0) return [problem(named.text)];
    const before = text.slice(0, named.index);
    const isAgainst = meant.every(({ assertion }) => WAYS[assertion]?.test(before) === true);
    return isAgainst ? [problem(`${/\S+(?: than)?\s+$/.exec(before)?.[0] ?? ''}${named.text}`)] : [];
  });
}

/** A plain number may stand for a multiple, and the other way round. */
function ofRatio({ unit, value }: Pick<Named, 'unit' | 'value'>): Pick<Named, 'unit' | 'value'> {
  return { unit: unit === '1' ? 'ratio' : unit, value };
}

/** Quantities; shares by themselves; bare numbers that can be no setting, in words only where a count is asserted. */
function namedIn(text: string, hasCount: boolean, bench: Bench): readonly Named[] {
  const found = findQuantities(text);
  const rest = found.reduce(
    (left, { index, length }) => left.slice(0, index) + '\uFFFC'.repeat(length) + left.slice(index + length),
    text,
  );
  const levels = new Set(bench.settings.flatMap((setting) => setting.levels.map(({ id }) => id)));
  const isSetting = settingQuantities(bench);
  const shares = [...rest.matchAll(SHARES)].map(({ 0: share, index }): Named => {
    return { text: share, unit: 'ratio', value: valueOfShare(share) ?? Number.NaN, index };
  });
  const plain = [...rest.matchAll(PLAIN), ...(hasCount ? rest.matchAll(COUNTED) : [])]
    .filter(({ 0: number }) => !levels.has(number) && !isSetting({ unit: 'rate', value: Number(number), rate: number }))
    .map(
      ({ 0: number, index }): Named => ({ text: number, unit: '1', value: valueOfNumber(number) ?? Number.NaN, index }),
    );
  return [...found.filter((each) => !isSetting(each)), ...shares, ...plain].sort((a, b) => a.index - b.index);
}

/** Names of things may hold a number: `Dunmere 30`. */
function withoutNames(words: string, { bodies, displays, links, rigs }: Bench): string {
  return [...bodies, ...displays, ...links, ...rigs].reduce(
    (text, { name }) => (name === '' ? text : text.replaceAll(name, '\uFFFC'.repeat(name.length))),
    words,
  );
}
