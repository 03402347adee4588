import { anchorOf } from '../register/entry-groups.ts';
import { inWordsOf, isKind, KINDS } from '../register/kinds.ts';
import { recomputePath } from '../register/paths.ts';
import { describeBasis, describeCoverage } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import type { Level } from '../analysis/variation.ts';
import { describeSignificant } from '../register/text.ts';
import { describeBudget, type BudgetText } from './budget.ts';
import { citeFigure } from './cite-line.ts';
import { earlierTexts, type EarlierText } from './earlier-values.ts';
import { redoOf, type Redo } from './redo.ts';

/** A row among the entries of a session. */
export interface EntryRow {
  readonly figure: Figure;
  readonly anchor: string | undefined;
  readonly inWords: string;
  /** How a reader redoes it; undefined for a kind without a formula. */
  readonly redo: Redo | undefined;
  readonly details: readonly string[];
  readonly earlier: readonly EarlierText[];
  /** A line to copy. */
  readonly cite: string;
  /** Where a reader recomputes it. */
  readonly recompute: string;
}

/** Everything that can be said of one figure: what it is, how far it can be trusted, where it comes from. */
export interface Entry extends EntryRow {
  readonly anchor: string;
  /** `10 readings in 1 run`. */
  readonly basis: string;
  readonly analysis: string;
  readonly budget: BudgetText | undefined;
}

export function entryRow(site: Pick<Published, 'bench' | 'register' | 'figure'>, figure: Figure): EntryRow {
  return {
    figure,
    anchor: isKind(figure.kind) ? KINDS[figure.kind].anchor : undefined,
    inWords: inWordsOf(figure),
    redo: redoOf(site, figure),
    details: describeEntry(figure),
    earlier: earlierTexts(site.bench, figure.id),
    cite: citeFigure(site, figure),
    recompute: recomputePath(figure),
  };
}

export function entryOf(site: Pick<Published, 'bench' | 'register' | 'figure'>, figure: Figure): Entry {
  return {
    ...entryRow(site, figure),
    anchor: anchorOf(figure.id),
    basis: describeBasis(figure),
    analysis: site.register.analysis,
    budget: (figure.components ?? []).length > 0 ? describeBudget(figure) : undefined,
  };
}

const SPEAKS_OF: Readonly<Record<Level, string>> = {
  clips: 'speaks of its own clips, not of other days',
  day: 'speaks of its day, not of others',
  condition: 'speaks of the condition, whatever the day',
};

/**
 * What stands under a figure's value in its entry, a line each: interval, standard uncertainty, and of what it speaks.
 */
export function describeEntry({ unit, standardUncertainty, interval, speaksOf }: Figure): readonly string[] {
  const uncertainty =
    standardUncertainty === undefined
      ? ''
      : `standard uncertainty ${describeSignificant(standardUncertainty, 2, unit)}`;
  return [
    interval === undefined ? '' : describeCoverage(interval, unit),
    uncertainty,
    interval === undefined || speaksOf === undefined ? '' : SPEAKS_OF[speaksOf],
  ]
    .filter(Boolean)
    .map(keepUnits);
}

/** No line break between a number and its unit. */
function keepUnits(line: string): string {
  return line.replace(/(\d) (?=\p{L}|%)/gu, '$1\u00a0');
}
