import { changesOf } from '../../analysis/clip-mean.ts';
import type { BudgetedValue } from '../../analysis/components.ts';
import { intervalAt } from '../../analysis/error-tail.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import { combineErrors, errorOf } from '../../analysis/linear-error.ts';
import { propagateSum } from '../../analysis/propagate.ts';
import { poolSessions } from '../../analysis/repeat-sessions.ts';
import { DEFAULT_VARIATION } from '../../analysis/variation.ts';
import type { Session } from '../../model/bench.ts';
import { intervalMs } from '../../model/rate.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { splitBudget, weighed } from '../split-budget.ts';
import { measuredFigure, plainFigure, type EntryPage, type JointSubject } from '../joint-figure.ts';
import type { KindName } from '../kinds.ts';
import { nameConfigurations } from '../name-configurations.ts';
import type { Figure } from '../register.ts';
import { describeSignificant } from '../text.ts';
import { findFirmwareChanges, findRepeats, type FirmwareChange, type RepeatGroup } from './repeat-groups.ts';

const PAGE: EntryPage = { name: 'repeats', title: 'Repeat sessions and firmware' };

/** Figures of every group of repeat sessions, and of every change of firmware. */
export function compileRepeats(compilation: Compilation): Contribution {
  const { bench, find } = compilation;
  const repeats = findRepeats(bench, find);
  const changes = findFirmwareChanges(bench, find);
  const names = (examples: readonly Session[]): readonly string[] =>
    nameConfigurations(bench, examples, { body: true });
  const repeatNames = names(repeats.flatMap(({ sessions }) => sessions[0] ?? []));
  const changeNames = names(changes.flatMap(({ earlier }) => earlier[0] ?? []));
  return {
    figures: [
      ...repeats.flatMap((group, index) => repeatFigures(group, repeatNames[index] ?? '', compilation)),
      ...changes.flatMap((change, index) => changeFigure(change, changeNames[index] ?? '', compilation)),
    ],
    findings: [],
  };
}

function repeatFigures(
  { name, sessions }: RepeatGroup,
  subject: string,
  { find, budgetOf, session }: Compilation,
): readonly Figure[] {
  const [first] = sessions;
  if (first === undefined) return [];
  const frameMs = intervalMs(first.rate);
  const { day } = find.variation(first.body) ?? DEFAULT_VARIATION;
  const budgets = sessions.map(({ id }) => budgetOf(id, 'day'));
  const pooled = poolSessions(
    budgets.map((budget) => {
      const { standardUncertainty } = weighed(budget);
      return { value: budget.value, standardUncertainty, error: errorOf(ownOnly(budget)) };
    }),
    { sizes: changesOf(day, frameMs), frameMs },
    combineErrors(budgets.map((budget) => [1 / budgets.length, errorOf(sharedOnly(budget))])),
  );
  if (pooled.kind === 'not-estimable') return [];
  const subjectOf = (kind: KindName): JointSubject => ({
    kind,
    name,
    of: { body: first.body, repeats: name },
    subject,
    page: PAGE,
    totals: sessions.map(({ id }) => session(id).total),
    ...(find.variationFile === undefined
      ? {}
      : { files: [{ file: find.variationFile.path, sha256: find.variationFile.sha256 }] }),
    level: 'condition',
  });
  const { mean, next, betweenVariance, betweenAtMost } = pooled;
  const between = Math.sqrt(betweenVariance);
  return [
    measuredFigure(subjectOf('repeat-mean'), { ...mean, interval: intervalAt(mean, DEFAULT_LEVEL) }),
    plainFigure(subjectOf('repeat-between'), between, describeSignificant(between, 2, 'ms')),
    plainFigure(subjectOf('repeat-between-at-most'), betweenAtMost, describeSignificant(betweenAtMost, 2, 'ms')),
    // On the same rig: what sessions share there moves the next one along with the mean.
    measuredFigure(subjectOf('repeat-next'), { ...next, interval: intervalAt(next, DEFAULT_LEVEL) }),
  ];
}

function ownOnly(budget: BudgetedValue): BudgetedValue {
  return { ...budget, components: splitBudget(budget).own };
}

function sharedOnly({ value, components }: BudgetedValue): BudgetedValue {
  return { value, components: components.filter(({ sharedKey }) => sharedKey !== null) };
}

function changeFigure(
  { name, from, to, earlier, later }: FirmwareChange,
  subject: string,
  { budgetOf, session }: Compilation,
): readonly Figure[] {
  const change = propagateSum([
    ...later.map(({ id }) => [1 / later.length, budgetOf(id)] as const),
    ...earlier.map(({ id }) => [-1 / earlier.length, budgetOf(id)] as const),
  ]);
  if (change.standardUncertainty === 0) return [];
  return [
    measuredFigure(
      {
        kind: 'firmware-change',
        name,
        of: { body: later[0]?.body ?? '', from, to },
        subject: `${subject}, from ${from} to ${to}`,
        page: PAGE,
        totals: [...earlier, ...later].map(({ id }) => session(id).total),
      },
      { ...change, interval: intervalAt(change, DEFAULT_LEVEL) },
    ),
  ];
}
