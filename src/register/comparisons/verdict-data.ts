/** What a verdict keeps of its comparison, how it was decided in words, and how many were adjusted with it. */
import type { DifferenceResult } from '../../analysis/difference-result.ts';
import type { Comparison } from '../../analysis/family.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS } from '../kinds.ts';
import { describeCoverageLevel, plural } from '../provenance.ts';
import type { Figure, VerdictData } from '../register.ts';
import { describeCount } from '../text.ts';
import { familySizeId, type Family } from './family.ts';
import { describeMargin, describeP } from './verdict-text.ts';

export function verdictData(
  { verdict, pDifference, pEquivalence }: Comparison<DifferenceResult>,
  within: Pick<VerdictData, 'marginMs' | 'family' | 'familySize' | 'claimed'>,
): VerdictData {
  return {
    word: verdict.kind,
    ...within,
    ...(pDifference === undefined ? {} : { pAdjusted: pDifference }),
    ...(pEquivalence === undefined ? {} : { pSameAdjusted: pEquivalence }),
    ...(verdict.kind === 'not-settled' && verdict.furtherRuns.kind === 'runs'
      ? { furtherRuns: verdict.furtherRuns.each }
      : {}),
    ...(verdict.kind === 'not-settled' && verdict.furtherRuns.kind === 'sessions'
      ? { furtherSessions: verdict.furtherRuns.each }
      : {}),
  };
}

interface Deciding {
  /** What the family holds, to follow "comparisons:". */
  readonly inWords: string;
  /** Whether a write-up states what counts as the same. */
  readonly isMarginStated: boolean;
  readonly alpha: number;
}

export function describeDecision(
  { familySize, claimed = 0, marginMs, pAdjusted, pSameAdjusted }: VerdictData,
  { inWords, isMarginStated, alpha }: Deciding,
): readonly string[] {
  const margin = `The same means within ± ${describeMargin(marginMs)}, ${isMarginStated ? 'as the write-up states' : 'half a frame interval of the faster rate'}.`;
  const size =
    familySize + claimed === 1
      ? 'It is the only comparison of its family, so nothing is adjusted.'
      : `One of ${describeCount(familySize)} comparisons that are adjusted together by Holm’s method (${inWords})${claimed === 0 ? '' : `, with ${plural(claimed, 'statement')} that its claims make`}: the probability of any false “slower” or “faster” among them is at most ${describeCoverageLevel(alpha)}, and so is that of any false “the same”. The interval is this comparison’s own.`;
  const p =
    pAdjusted === undefined || pSameAdjusted === undefined
      ? []
      : [
          `Adjusted p of no difference: ${describeP(pAdjusted)}; of a difference beyond the margin: ${describeP(pSameAdjusted)}.`,
        ];
  return [size, margin, ...p];
}

/** @param figures all that the family compares */
export function familySizeFigure(
  { id, of, group, groupTitle, inWords, size }: Omit<Family, 'pairs'> & { readonly size: number },
  figures: readonly Figure[],
): Figure {
  const sources = new Map(figures.flatMap((figure) => figure.sources).map((source) => [source.file, source]));
  return {
    id: familySizeId(id),
    kind: 'family',
    of,
    unit: KINDS.family.unit,
    value: size,
    readings: Math.max(0, ...figures.map(({ readings }) => readings)),
    runs: Math.max(0, ...figures.map(({ runs }) => runs)),
    excluded: 0,
    sources: [...sources.values()],
    text: describeCount(size),
    label: KINDS.family.label,
    entry: groupEntry(group, familySizeId(id)),
    group: groupTitle,
    inWords: `The number of comparisons in the family: ${inWords}. Their verdicts are adjusted together by Holm’s method.`,
  };
}
