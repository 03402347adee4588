/** What to set, in one paragraph that is honest about ties: what matters, what does not, what it costs, what is unknown. */
import { differingSettings } from '../analysis/matched-pairs.ts';
import type { Session, Setting } from '../model/bench.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import { listWords } from '../register/comparisons/pair-words.ts';
import { describeLevel, describeLevels } from '../register/level-words.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { levelOf } from '../register/session-figures.ts';
import type { Sentence } from '../register/sentence.ts';
import { capitalize } from '../register/text.ts';
import { lowerFirst } from '../register/traits.ts';

export interface AdvisedSession {
  readonly session: Session;
  readonly total: Figure;
  readonly cost: Figure;
  readonly tiedWithBest: boolean;
}

type Site = Pick<Published, 'bench' | 'find' | 'figure'>;

/** What a setting does among these sessions: the levels that reach the lowest, and those that one step away cost. */
interface Found {
  readonly setting: string;
  /** Levels of the lowest session and of all that are too close to call with it, in the order of the bench. */
  readonly free: readonly string[];
  readonly costing: readonly { readonly level: string; readonly cost: Figure; readonly session: Session }[];
}

const MOST_COSTS = 5;

export function adviceWords(site: Site, best: AdvisedSession, others: readonly AdvisedSession[]): Sentence {
  const tied = [best, ...others.filter(({ tiedWithBest }) => tiedWithBest)];
  const slower = others.filter(({ tiedWithBest }) => !tiedWithBest);
  const found = site.bench.settings.map((setting) => whatIsFound(setting, tied, slower));
  return [
    ...whatToSet(site, best, found),
    ...whatIsFree(site, found),
    ...whatItCosts(site, found),
    ...whatTheModelSays(site, best, found),
    ...whatIsUnknown(site, found, [...tied, ...slower]),
  ];
}

function whatIsFound(
  { id, levels }: Setting,
  tied: readonly AdvisedSession[],
  slower: readonly AdvisedSession[],
): Found {
  const free = new Set(tied.map(({ session }) => session.settings[id] ?? ''));
  const oneStepAway = slower.filter(({ session }) =>
    tied.some((each) => {
      const differing = differingSettings(each.session.settings, session.settings);
      return differing.length === 1 && differing[0] === id;
    }),
  );
  const seen = new Set<string>();
  return {
    setting: id,
    free: levels.map((level) => level.id).filter((level) => free.has(level)),
    costing: oneStepAway.flatMap(({ session, cost }) => {
      const level = session.settings[id] ?? '';
      if (seen.has(level)) return [];
      seen.add(level);
      return [{ level, cost, session }];
    }),
  };
}

function isDecisive({ free, costing }: Found): boolean {
  return costing.some(({ level }) => !free.includes(level));
}

/** Levels that these sessions set apart from others: every other one costs. */
function whatToSet(site: Site, { session, total }: AdvisedSession, found: readonly Found[]): Sentence {
  const { bench, find } = site;
  const matters = found.filter(isDecisive);
  const on = `on the rig ${find.rig(session.rig).name}`;
  if (matters.length === 0)
    return [
      `The lowest total of ${find.body(session.body).name} ${on} is `,
      total,
      `, at ${describeCondition(bench, session)}.`,
    ];
  const levels = matters.map(({ setting, free }) => either(free.map((level) => describeLevel(find, setting, level))));
  const inThese = levelOf(total) === 'condition' ? '' : ' in these sessions';
  return [`For the least delay, set ${listWords(levels)}: `, total, ` ${on}, the lowest measured${inThese}.`];
}

/** Settings of which several levels reach the lowest, and none costs. */
function whatIsFree({ find }: Site, found: readonly Found[]): Sentence {
  const choices = found
    .filter((one) => one.free.length > 1 && !isDecisive(one))
    .map(({ setting, free }) => either(free.map((level) => describeLevel(find, setting, level))));
  return choices.length === 0
    ? []
    : [` ${capitalize(choices.join('; '))}: too close to call, so choose for the picture and the work.`];
}

function whatItCosts({ bench, find }: Site, found: readonly Found[]): Sentence {
  const costs = found
    .flatMap(({ setting, free, costing }) =>
      costing.map(({ level, cost, session }) => ({
        words: `${describeLevel(find, setting, level)}${free.includes(level) ? ` (at ${describeCondition(bench, session)})` : ''}`,
        cost,
      })),
    )
    .sort((x, y) => x.cost.value - y.cost.value)
    .slice(0, MOST_COSTS);
  return costs.length === 0
    ? []
    : [
        ' Changing one thing from there, ',
        ...costs.flatMap(
          ({ words, cost }, index): Sentence => [
            index === 0 ? '' : index === costs.length - 1 ? ' and ' : ', ',
            `${words} costs `,
            cost,
          ],
        ),
        '.',
      ];
}

/** Single sessions may show nothing where all together do: both are said, each with what it is of. */
function whatTheModelSays({ find, figure }: Site, { session }: AdvisedSession, found: readonly Found[]): Sentence {
  return found.flatMap(
    ({ setting, free }): Sentence =>
      free.flatMap((from) =>
        free.flatMap((to): Sentence => {
          const name = [session.body, session.rig, setting, from, to].join('/');
          const [effect, words] = [figure(`effect/${name}`), figure(`effect-verdict/${name}`)];
          const { low = 0, high = 0 } = effect?.interval ?? {};
          if (words === undefined || low * high <= 0) return [];
          const step = `${lowerFirst(find.setting(setting).label)} ${describeLevels(find, setting, from, to)}`;
          return [
            ` Over all sessions on this rig together, and averaged over the other settings, ${step}: `,
            words,
            '.',
          ];
        }),
      ),
  );
}

function whatIsUnknown({ find }: Site, found: readonly Found[], all: readonly AdvisedSession[]): Sentence {
  const unknown = found.filter(
    ({ setting, free, costing }) =>
      free.length < 2 && costing.length === 0 && new Set(all.map(({ session }) => session.settings[setting])).size > 1,
  );
  return unknown.length === 0
    ? []
    : [
        ` From there, no other ${listWords(
          unknown.map(({ setting }) => lowerFirst(find.setting(setting).label)),
          'or',
        )} was measured.`,
      ];
}

/** `bit depth 8 or 10`, `HD 1920 × 1080 or UHD 3840 × 2160`: what all begin or end with is said once. */
function either(words: readonly string[]): string {
  const [first = '', ...rest] = words;
  const all = words.map((word) => word.split(' '));
  const starts = all.every(([start]) => start === all[0]?.[0]) && rest.length > 0;
  const ends = all.every((parts) => parts.at(-1) === all[0]?.at(-1)) && rest.length > 0;
  if (ends) return [...all.slice(0, -1).map((parts) => parts.slice(0, -1).join(' ')), words.at(-1)].join(' or ');
  const common = first.slice(0, first.lastIndexOf(' ') + 1);
  return [first, ...rest.map((word) => (starts && word.startsWith(common) ? word.slice(common.length) : word))].join(
    ' or ',
  );
}
