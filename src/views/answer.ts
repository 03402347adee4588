/** The first thing a reader asks, which camera lags least, answered from all sessions: one sentence, and what to draw under it. */
import type { Level } from '../analysis/variation.ts';
import { conditionsOf } from '../register/comparisons/body-families.ts';
import { describeCondition } from '../register/comparisons/describe-condition.ts';
import { byTotal, lowestOfBody, type Standing } from '../register/comparisons/lowest-of-body.ts';
import { laterId } from '../register/comparisons/later-figures.ts';
import { listWords } from '../register/comparisons/pair-words.ts';
import { rankFigures } from '../register/comparisons/ranking.ts';
import { standingBodies } from '../register/comparisons/standing.ts';
import { labelSettings } from '../register/labels.ts';
import { bodyPath, PATHS } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { levelOf } from '../register/session-figures.ts';
import type { Sentence } from '../register/sentence.ts';
import type { Session } from '../model/bench.ts';
import { placeOfBody } from './body-place.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface Answer {
  readonly sentence: Sentence;
  /** Every body in the condition in which most were measured, lowest first; undefined where no two bodies share one. */
  readonly chart:
    | {
        readonly caption: string;
        /** The condition, in full. */
        readonly shared: string;
        readonly rows: readonly {
          readonly body: string;
          /** Of the body, among all. */
          readonly place: number;
          readonly session: NamedSession;
          readonly total: Figure;
        }[];
      }
    | undefined;
  /** Where what to set stands: on the page of the body that lags least, where one does. */
  readonly adviceAt: string;
  /** The body that the sentence names first; undefined where it compares nothing. */
  readonly lowest: string | undefined;
}

/** Of what it speaks, where the publication does not tell how other days differ. */
const SPEAKS_OF: Readonly<Record<Level, string>> = {
  clips: ' That is of the clips in these sessions; how much other days differ, nothing here tells yet.',
  day: ' That is of the days of these sessions; how much other days differ, nothing here tells yet.',
  condition: '',
};

type Site = Pick<Published, 'bench' | 'find' | 'figure'>;

export function answerOf(site: Site): Answer {
  const { bench } = site;
  const measured = new Set(bench.sessions.map(({ body }) => body));
  const shared = bestShared(site);
  if (shared !== undefined) return compared(site, shared);
  const lowest = bench.bodies.flatMap(
    ({ id }) => lowestOfBody(bench, id, (session) => site.figure(`total/${session}`)) ?? [],
  );
  const [only] = lowest;
  return {
    sentence:
      only === undefined
        ? ['Nothing has been measured yet.']
        : measured.size === 1
          ? alone(site, only)
          : apart(site, lowest),
    chart: undefined,
    adviceAt: measured.size === 1 && only !== undefined ? bodyPath(only.session.body) : PATHS.bodies,
    lowest: measured.size === 1 ? only?.session.body : undefined,
  };
}

/** The condition that most bodies were measured in; of several, the one with the lowest total. */
function bestShared(site: Site): readonly Standing[] | undefined {
  const [best] = conditionsOf(site.bench)
    .map(({ sessions }) => standingIn(site, sessions))
    .filter((standing) => standing.length > 1)
    .sort((x, y) => y.length - x.length || leastOf(x) - leastOf(y));
  return best;
}

/** One session of each body, lowest total first. */
function standingIn({ bench, figure }: Site, sessions: readonly Session[]): readonly Standing[] {
  return byTotal(standingBodies(bench, sessions), (id) => figure(`total/${id}`));
}

function leastOf([first]: readonly Standing[]): number {
  return first?.total.value ?? Number.POSITIVE_INFINITY;
}

function compared(site: Site, standing: readonly Standing[]): Answer {
  const { bench, find, figure } = site;
  const nameOf = ({ session }: Standing): string => find.body(session.body).name;
  const ranked = new Map(
    rankFigures(standing.map(({ total }) => total)).map(({ figure: { id }, tiedWithBest }) => [id, tiedWithBest]),
  );
  const [best, ...others] = standing;
  if (best === undefined) throw new Error('a condition that is compared has sessions');
  const isTied = ({ total }: Standing): boolean => ranked.get(total.id) === true;
  const [tied, later] = [others.filter(isTied), others.filter((one) => !isTied(one))];
  const laterBy = ({ session }: Standing): Figure | string => figure(laterId(session.id)) ?? '';
  const where = `on the rig ${find.rig(best.session.rig).name}, at ${shortCondition(site, best.session)}`;
  const listed = (of: readonly Standing[], verb: string): Sentence =>
    of.flatMap(
      (one, index): Sentence => [
        index === 0 ? '' : index === of.length - 1 ? ' and ' : ', ',
        `${nameOf(one)} ${verb} `,
        laterBy(one),
        ' later',
      ],
    );
  const after: Sentence = [
    ...(later.length === 0 ? [] : [' ', ...listed(later, 'comes'), '.']),
    SPEAKS_OF[levelOf(best.total)],
  ];
  return {
    sentence:
      tied.length === 0
        ? [`${nameOf(best)} lags least: `, best.total, ` from the event to its picture, ${where}.`, ...after]
        : [
            `Too close to call between ${listWords([best, ...tied].map(nameOf))}: ${nameOf(best)} came out lowest, at `,
            best.total,
            ` from the event to its picture, ${where}, but `,
            ...listed(tied, 'came only'),
            ', which these readings cannot tell from nothing.',
            ...after,
          ],
    chart: {
      caption: `Total latency of ${standing.length === measuredBodies(site) ? 'every body' : `${listWords(standing.map(nameOf))}`} on ${find.rig(best.session.rig).name}`,
      shared: `${describeCondition(bench, best.session)}.`,
      rows: standing.map((one) => ({
        body: nameOf(one),
        place: placeOfBody(bench, one.session.body),
        session: namedSession(bench, one.session.id, undefined),
        total: one.total,
      })),
    },
    adviceAt: tied.length === 0 ? bodyPath(best.session.body) : PATHS.bodies,
    lowest: best.session.body,
  };
}

function measuredBodies({ bench }: Site): number {
  return new Set(bench.sessions.map(({ body }) => body)).size;
}

function alone(site: Site, only: Standing): Sentence {
  const { name } = site.find.body(only.session.body);
  return [
    `${name} is the only body measured so far. Its lowest total is `,
    only.total,
    ` from the event to its picture, ${whereOf(site, only)}.`,
  ];
}

function apart(site: Site, lowest: readonly Standing[]): Sentence {
  return [
    'No two bodies have been measured in the same condition on the same rig, so nothing here says which lags least. By themselves, at their lowest: ',
    ...lowest.flatMap(
      (one, index): Sentence => [
        `${index === 0 ? '' : '; '}${site.find.body(one.session.body).name} `,
        one.total,
        `, ${whereOf(site, one)}`,
      ],
    ),
    '.',
  ];
}

function whereOf(site: Site, { session }: Standing): string {
  return `on the rig ${site.find.rig(session.rig).name}, at ${shortCondition(site, session)}`;
}

/** `59.94 frames/s`, and what sets the condition apart from most on its chain. */
function shortCondition({ bench }: Site, session: Session): string {
  const conditions = conditionsOf(bench);
  const own = conditions.find(({ sessions }) => sessions.some(({ id }) => id === session.id));
  const examples = conditions.filter(({ chain }) => chain === own?.chain).map(({ sessions: [first] }) => first);
  return labelSettings(bench, examples).of.get(own?.sessions[0].id ?? '') ?? describeCondition(bench, session);
}
