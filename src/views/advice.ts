/** What to set on a body: its conditions from the lowest total up, what each costs over the lowest, and one sentence. */
import { differingSettings } from '../analysis/matched-pairs.ts';
import type { Session } from '../model/bench.ts';
import type { Choice } from '../register/comparisons/choices.ts';
import { costId } from '../register/comparisons/cost-figures.ts';
import { rankFigures } from '../register/comparisons/ranking.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import { labelSessions } from '../register/labels.ts';
import { describeLevel } from '../register/level-words.ts';
import { sessionPath } from '../register/paths.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import type { Published } from '../register/published.ts';

export interface AdviceRow {
  readonly path: string;
  readonly label: string;
  readonly total: Figure;
  /** Over the lowest total. */
  readonly cost: Figure;
  readonly tiedWithBest: boolean;
}

interface Candidate extends Omit<AdviceRow, 'path'> {
  readonly session: Session;
}

export interface Advice {
  /** Lowest total first. */
  readonly rows: readonly [AdviceRow, ...AdviceRow[]];
  readonly shared: string;
  readonly sentence: Sentence;
}

const MOST_STEPS = 5;

/** undefined where a total is not published, which is for no choice of the bench. */
export function adviseOn(site: Pick<Published, 'bench' | 'find' | 'figure'>, { sessions }: Choice): Advice | undefined {
  const { bench, find, figure } = site;
  const labels = labelSessions(bench, sessions);
  const ranked = rankFigures(sessions.flatMap(({ id }) => figure(`total/${id}`) ?? []));
  const [best, ...others] = ranked.flatMap(({ figure: total, tiedWithBest }): readonly Candidate[] => {
    const session = find.session(total.of['session'] ?? '');
    const cost = figure(costId(session.id));
    return cost === undefined
      ? []
      : [{ session, label: labels.of.get(session.id) ?? session.id, total, cost, tiedWithBest }];
  });
  if (best === undefined) return undefined;
  return {
    rows: [rowOf(best), ...others.map(rowOf)],
    shared: labels.shared,
    sentence: [...lowest(site, best), ...steps(site, best, others)],
  };
}

function rowOf({ session, ...row }: Candidate): AdviceRow {
  return { path: sessionPath(session.id), ...row };
}

function lowest({ bench, find }: Pick<Published, 'bench' | 'find'>, { session, total }: Candidate): Sentence {
  return [
    `The lowest total of ${find.body(session.body).name} on ${find.rig(session.rig).name} is `,
    total,
    `, at ${describeCondition(bench, session)}.`,
  ];
}

/** What changing one setting costs from there, dearest last; those that show no cost are named together. */
function steps(
  { find }: Pick<Published, 'find'>,
  { session: best }: Candidate,
  others: readonly Candidate[],
): Sentence {
  const single = others.flatMap((row) => {
    const [setting, ...more] = differingSettings(best.settings, row.session.settings);
    const level = setting === undefined ? undefined : row.session.settings[setting];
    if (setting === undefined || level === undefined || more.length > 0 || row.session.firmware !== best.firmware)
      return [];
    return [{ words: describeLevel(find, setting, level), cost: row.cost, tied: row.tiedWithBest }];
  });
  const seen = new Set<string>();
  const distinct = single.filter(({ words }) => !seen.has(words) && seen.add(words));
  const costing = distinct.filter(({ tied }) => !tied).slice(0, MOST_STEPS);
  const free = distinct.filter(({ tied }) => tied).slice(0, MOST_STEPS);
  return [
    ...listed(costing, ' From there, ', (step) => [`${step.words} costs `, step.cost]),
    ...listed(free, ' These sessions settle no cost of ', (step) => [`${step.words} (`, step.cost, ')']),
    ...(distinct.length === 0
      ? [' No session differs from it in one setting only, so what each step costs is not measured.']
      : []),
  ];
}

function listed<T>(items: readonly T[], opening: string, describe: (item: T) => Sentence): Sentence {
  if (items.length === 0) return [];
  const joint = (index: number): string => (index === 0 ? '' : index === items.length - 1 ? ' and ' : ', ');
  return [opening, ...items.flatMap((item, index) => [joint(index), ...describe(item)]), '.'];
}
