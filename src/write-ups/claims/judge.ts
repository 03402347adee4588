/**
 * Whether the data support a claim. The whole 95 % interval must, and still so when it is adjusted for all that the
 * write-up asserts and compares: a value that merely falls on the right side is luck, and so is one claim of many.
 */
import type { Bench } from '../../model/bench.ts';
import type { ClaimEvidence } from '../../model/problem.ts';
import { intervalMs } from '../../model/rate.ts';
import { RANKABLE, rankFigures } from '../../register/comparisons/ranking.ts';
import { describeP } from '../../register/comparisons/verdict-text.ts';
import { describeCoverage } from '../../register/provenance.ts';
import type { Figure } from '../../register/register.ts';
import { describeSignificant } from '../../register/text.ts';
import type { Bounds } from '../../register/comparisons/p-outside.ts';
import { QUANTITY_ASSERTIONS, type QuantityAssertion, type RankAssertion } from './assertions.ts';
import type { Quantity } from './quantity.ts';

/** What one assertion comes to. */
export type Judgement =
  | { readonly kind: 'holds' }
  | { readonly kind: 'fails'; readonly evidence: ClaimEvidence }
  /** It cannot be asked of this figure: its unit is another, or it compares nothing. */
  | { readonly kind: 'no-question'; readonly why: 'unit' | 'one-sided' | 'not-rankable' };

const ALPHA = 0.05;
const HOLDS: Judgement = { kind: 'holds' };

/**
 * A figure without an interval is exact, and its value decides; one that should have an interval and has none supports
 * nothing.
 */
export function judgeQuantity(
  bench: Pick<Bench, 'sessions'>,
  figure: Figure,
  assertion: QuantityAssertion,
  quantity: Quantity,
  adjustedP: (within: Bounds) => number,
): Judgement {
  const within = boundsOf(bench, figure, assertion, quantity);
  if (within.kind === 'no-question') return within;
  if (figure.reason !== undefined)
    return { kind: 'fails', evidence: { ...evidenceOf(figure), miss: { kind: 'no-interval' } } };
  const { low, high } = figure.interval ?? { low: figure.value, high: figure.value };
  const miss = missOf({ low, high }, within);
  if (miss === undefined) {
    const p = adjustedP(within);
    return p <= ALPHA
      ? HOLDS
      : { kind: 'fails', evidence: { ...evidenceOf(figure), miss: { kind: 'not-shown', p: describeP(p) } } };
  }
  const off = describeSignificant(miss.by, 2, figure.unit);
  return {
    kind: 'fails',
    evidence: { ...evidenceOf(figure), miss: { kind: miss.kind, off, ofInterval: figure.interval !== undefined } },
  };
}

/** Where the whole interval has to lie. */
export function boundsOf(
  bench: Pick<Bench, 'sessions'>,
  figure: Figure,
  assertion: QuantityAssertion,
  quantity: Quantity,
): (Bounds & { readonly kind: 'bounds' }) | Extract<Judgement, { kind: 'no-question' }> {
  const { bounds, compares } = QUANTITY_ASSERTIONS[assertion];
  if (compares && figure.of['than'] === undefined && figure.of['to'] === undefined)
    return { kind: 'no-question', why: 'one-sided' };
  const value = valueIn(bench, figure, quantity);
  if (value === undefined) return { kind: 'no-question', why: 'unit' };
  return { kind: 'bounds', ...bounds(value, figure.kind === 'ratio' ? 1 : 0) };
}

/** In the unit of the figure; frames are those of its session, of two sessions the shorter. */
function valueIn(
  { sessions }: Pick<Bench, 'sessions'>,
  { unit, kind, of }: Figure,
  quantity: Quantity,
): number | undefined {
  if (unit === '1')
    return quantity.unit === '1' || (kind === 'ratio' && quantity.unit === 'ratio') ? quantity.value : undefined;
  if (quantity.unit === unit) return quantity.value;
  if (unit !== 'ms' || quantity.unit !== 'frames') return undefined;
  const frames = sessions
    .filter(({ id }) => id === of['session'] || id === of['than'])
    .map(({ rate }) => intervalMs(rate));
  return frames.length === 0 ? undefined : quantity.value * Math.min(...frames);
}

function missOf(
  interval: Bounds,
  within: Bounds,
): { readonly kind: 'too-low' | 'too-high'; readonly by: number } | undefined {
  const [below, above] = [within.low - interval.low, interval.high - within.high];
  if (below <= 0 && above <= 0) return undefined;
  return below >= above ? { kind: 'too-low', by: below } : { kind: 'too-high', by: above };
}

/** The verdict must be the claimed word, as adjusted in its family. */
export function judgeVerdict(figure: Figure, claimed: string): Judgement {
  const { verdict } = figure;
  if (verdict === undefined) return { kind: 'no-question', why: 'one-sided' };
  if (verdict.word === claimed) return HOLDS;
  const p = claimed === 'same' ? verdict.pSameAdjusted : verdict.pAdjusted;
  const isUnsettled = verdict.word === 'not-settled' && claimed !== 'not-settled';
  return {
    kind: 'fails',
    evidence: {
      ...evidenceOf(figure),
      miss: isUnsettled && p !== undefined ? { kind: 'not-shown', p: describeP(p) } : { kind: 'other-verdict' },
    },
  };
}

/**
 * Alone at the end of the order: every other is told from it, all pairs adjusted with all else that the write-up says.
 */
export function judgeRank(
  figure: Figure,
  assertion: RankAssertion,
  others: readonly Figure[],
  adjust: (p: readonly number[]) => readonly number[],
): Judgement {
  if (!RANKABLE.has(figure.kind) || others.some(({ kind }) => kind !== figure.kind))
    return { kind: 'no-question', why: 'not-rankable' };
  const [first, ...rest] = rankFigures([figure, ...others], assertion === 'highestOf' ? 'highest' : 'lowest', adjust);
  if (first?.figure.id !== figure.id) {
    const beyond = first?.figure ?? figure;
    const off = describeSignificant(Math.abs(beyond.value - figure.value), 2, figure.unit);
    return { kind: 'fails', evidence: { ...evidenceOf(figure), miss: { kind: 'beaten', rival: nameOf(beyond), off } } };
  }
  const tied = rest.filter(({ tiedWithBest }) => tiedWithBest);
  return tied.length === 0
    ? HOLDS
    : {
        kind: 'fails',
        evidence: {
          ...evidenceOf(figure),
          miss: { kind: 'tied', rivals: tied.map(({ figure: rival }) => nameOf(rival)) },
        },
      };
}

function evidenceOf(figure: Figure): Omit<ClaimEvidence, 'miss'> {
  const { id, text, interval, unit } = figure;
  return { figure: id, text, ...(interval === undefined ? {} : { interval: describeCoverage(interval, unit) }) };
}

function nameOf({ id, text }: Figure): string {
  return `${id} (${text})`;
}
