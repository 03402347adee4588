import { combineComponents } from '../../analysis/components.ts';
import { estimateDifference } from '../../analysis/difference.ts';
import { tInterval } from '../../analysis/interval.ts';
import { poolSessions } from '../../analysis/repeat-sessions.ts';
import type { Session } from '../../model/bench.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { sharedUncertainty, splitBudget } from '../split-budget.ts';
import { measuredFigure, plainFigure, type EntryPage, type JointSubject } from '../joint-figure.ts';
import type { KindName } from '../kinds.ts';
import { nameConfigurations } from '../name-configurations.ts';
import type { Figure } from '../register.ts';
import { describeSignificant } from '../text.ts';
import {
  averageBudget,
  findFirmwareChanges,
  findRepeats,
  type FirmwareChange,
  type RepeatGroup,
} from './repeat-groups.ts';

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
  { budgetOf, session }: Compilation,
): readonly Figure[] {
  const budgets = sessions.map(({ id }) => budgetOf(id));
  const pooled = poolSessions(
    budgets.map((budget) => ({
      value: budget.value,
      standardUncertainty: combineComponents(splitBudget(budget).own).standardUncertainty,
    })),
  );
  if (pooled.kind === 'not-estimable') return [];
  const subjectOf = (kind: KindName): JointSubject => ({
    kind,
    name,
    of: { body: sessions[0]?.body ?? '', repeats: name },
    subject,
    page: PAGE,
    totals: sessions.map(({ id }) => session(id).total),
  });
  const {
    mean,
    standardUncertainty,
    degreesOfFreedom,
    interval,
    nextSession,
    betweenVariance,
    betweenAtMost,
    sessionStandardDeviation,
  } = pooled;
  const whole = combineComponents([
    { standardUncertainty, degreesOfFreedom },
    { standardUncertainty: sharedUncertainty(budgets), degreesOfFreedom: Infinity },
  ]);
  const between = Math.sqrt(betweenVariance);
  return [
    measuredFigure(subjectOf('repeat-mean'), {
      value: mean,
      ...whole,
      interval: tInterval(mean, whole.standardUncertainty, whole.degreesOfFreedom, interval.level),
    }),
    plainFigure(subjectOf('repeat-between'), between, describeSignificant(between, 2, 'ms')),
    plainFigure(subjectOf('repeat-between-at-most'), betweenAtMost, describeSignificant(betweenAtMost, 2, 'ms')),
    // On the same rig: what sessions share there moves the next one along with the mean.
    measuredFigure(subjectOf('repeat-next'), {
      value: mean,
      standardUncertainty: Math.hypot(sessionStandardDeviation, standardUncertainty),
      degreesOfFreedom,
      interval: nextSession,
    }),
  ];
}

function changeFigure(
  { name, from, to, earlier, later }: FirmwareChange,
  subject: string,
  { budgetOf, session }: Compilation,
): readonly Figure[] {
  const average = (sessions: readonly Session[]) => averageBudget(sessions.map(({ id }) => budgetOf(id)));
  const change = estimateDifference(average(later), average(earlier));
  if (change.kind === 'not-estimable') return [];
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
      change,
    ),
  ];
}
