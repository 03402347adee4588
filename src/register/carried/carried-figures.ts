/**
 * Totals carried to another display, by way of the network: what a body would show there, and how bodies compare that
 * never stood in front of the same one. Whatever both sides rest on, displays above all, is one and the same error in
 * both and cancels.
 */
import { estimateChainElement, estimateChainSum, type ChainEstimate } from '../../analysis/chain-network.ts';
import { differenceOf, type DifferenceResult } from '../../analysis/difference-result.ts';
import { judgeFamily, type Comparison } from '../../analysis/family.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import type { Level } from '../../analysis/variation.ts';
import { intervalMs } from '../../model/rate.ts';
import { basisOf } from '../chain/chain-figures.ts';
import { bodyElement, displayElement, partOf } from '../chain/elements.ts';
import { takeApart, type TakenApart } from '../chain/take-apart.ts';
import { lowestOfBody } from '../comparisons/lowest-of-body.ts';
import type { RunPlan } from '../../analysis/further-runs.ts';
import { planRunsOfFit, type SharedSide } from '../comparisons/run-plan.ts';
import { listWords } from '../comparisons/pair-words.ts';
import { describeDecision, familySizeFigure, verdictData } from '../comparisons/verdict-data.ts';
import { describeVerdict } from '../comparisons/verdict-text.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { anchorOf } from '../entry-groups.ts';
import {
  leastLevel,
  measuredFigure,
  plainFigure,
  type EntryPage,
  type JointSubject,
  type Measured,
} from '../joint-figure.ts';
import type { Figure, Finding, Subject } from '../register.ts';
import { countedRuns } from '../session-input.ts';
import { crossedConditions, type CrossedBody, type CrossedCondition } from './crossed-conditions.ts';

/**
 * The delay of a display that nobody owns, so that totals of different publications can be set side by side; chosen.
 */
const NOMINAL_DISPLAY_MS = 5;
export const NOMINAL_DISPLAY = `a display of ${NOMINAL_DISPLAY_MS} ms`;

const GROUP = 'carried';
const TITLE = 'Totals carried to another display';
const ALPHA = 1 - DEFAULT_LEVEL;

const onNominal = `${NOMINAL_DISPLAY_MS}-ms`;

/** A body where its total is lowest; that id names no session, since which one is lowest may change with the next. */
export const carriedId = (body: string, display?: string): string => `carried/${body}/on/${display ?? onNominal}`;
/** A body in one condition: `body/vennick-q4/1.40/uhd-25-off`. */
export const carriedConditionId = (element: string): string => `carried/${partOf(element).id}/on/${onNominal}`;
export const carriedFamily = ({ id }: CrossedCondition): string => `carried-${id}`;
export const carriedDifferenceId = (condition: CrossedCondition, a: CrossedBody, b: CrossedBody): string =>
  `carried-difference/${pairName(condition, a, b)}`;
export const carriedVerdictId = (condition: CrossedCondition, a: CrossedBody, b: CrossedBody): string =>
  `carried-verdict/${pairName(condition, a, b)}`;

export function compileCarried(compilation: Compilation): Contribution {
  const crossed = crossedConditions(compilation.bench).map((condition) => compared(compilation, condition));
  return {
    figures: [
      ...compilation.bench.bodies.flatMap(({ id }) => lowestCarried(compilation, id)),
      ...crossed.flatMap(({ figures }) => figures),
    ],
    findings: crossed.flatMap(({ findings }) => findings),
  };
}

/**
 * The lowest total of a body on every display of its network that it was not measured on so, and on the nominal one.
 */
function lowestCarried(compilation: Compilation, body: string): readonly Figure[] {
  const { bench, find, session: compiled } = compilation;
  const lowest = lowestOfBody(bench, body, (id) => compiled(id).total);
  if (lowest === undefined) return [];
  const element = bodyElement(lowest.session, bench);
  const [one] = islandsOf(compilation, [element]);
  if (one === undefined) return [];
  const name = `${find.body(body).name}, at its lowest`;
  const page: EntryPage = { name: GROUP, section: body, title: TITLE };
  const measuredOn = displaysOf(compilation, element);
  const real = bench.displays.filter(
    ({ id }) => one.island.elements.includes(displayElement(id)) && !measuredOn.has(id),
  );
  const condition = partOf(element).id;
  return [
    ...nominal(compilation, one, { element, page, id: carriedId(body), name }),
    ...real.flatMap((display) => {
      const estimate = estimateChainSum(one.chain, [element, displayElement(display.id)]);
      if (estimate.kind !== 'estimate') return [];
      return [
        carried(
          compilation,
          one,
          {
            id: carriedId(body, display.id),
            of: { body, condition, display: display.id },
            subject: `${name}, on ${display.name}`,
            page,
          },
          estimate,
        ),
      ];
    }),
  ];
}

/** Displays in front of which a body was measured as it was set, with nothing in between. */
function displaysOf({ bench }: Pick<Compilation, 'bench'>, element: string): ReadonlySet<string> {
  return new Set(
    bench.sessions.flatMap((session) =>
      session.links.length === 0 && bodyElement(session, bench) === element ? [session.display] : [],
    ),
  );
}

function islandsOf(compilation: Compilation, elements: readonly string[]): readonly TakenApart[] {
  return takeApart(compilation).taken.filter(({ island }) =>
    elements.every((element) => island.elements.includes(element)),
  );
}

interface Nominal {
  readonly element: string;
  readonly page: EntryPage;
  readonly id: string;
  readonly name: string;
}

/** What a body itself takes, and a display whose delay is chosen; none where nothing anchors the body. */
function nominal(compilation: Compilation, one: TakenApart, { element, page, id, name }: Nominal): readonly Figure[] {
  const estimate = estimateChainElement(one.chain, element);
  if (estimate.kind !== 'estimate') return [];
  const { value, standardUncertainty, interval } = estimate;
  const { low, high, level } = interval;
  const by = NOMINAL_DISPLAY_MS;
  const condition = partOf(element).id;
  const [body = ''] = condition.split('/');
  return [
    carried(
      compilation,
      one,
      {
        id,
        of: { body, condition, delay: `${by} ms` },
        subject: `${name}, on ${NOMINAL_DISPLAY}`,
        page,
      },
      { ...estimate, value: value + by, standardUncertainty, interval: { low: low + by, high: high + by, level } },
    ),
  ];
}

type Carried = Measured & Pick<Extract<ChainEstimate, { kind: 'estimate' }>, 'from'>;

function carried(
  compilation: Compilation,
  { island }: TakenApart,
  { id, ...rest }: Pick<JointSubject, 'of' | 'subject' | 'page'> & { readonly id: string },
  estimate: Carried,
): Figure {
  return measuredFigure(
    { kind: 'carried', name: id.slice('carried/'.length), ...rest, ...basisOf(estimate.from, island, compilation) },
    estimate,
  );
}

interface Compared {
  readonly a: CrossedBody;
  readonly b: CrossedBody;
  readonly one: TakenApart;
  readonly from: readonly string[];
  readonly difference: DifferenceResult;
  readonly plan: RunPlan;
}

function comparedPair(compilation: Compilation, [a, b]: readonly [CrossedBody, CrossedBody]): Compared | undefined {
  const [one] = islandsOf(compilation, [a.element, b.element]);
  const estimate = one && estimateChainSum(one.chain, [a.element], [b.element]);
  if (one === undefined || estimate?.kind !== 'estimate' || estimate.standardUncertainty === 0) return undefined;
  const plan = planRunsOfFit(estimate.standardUncertainty, [
    sideOf(compilation, one, a, estimate.shares),
    sideOf(compilation, one, b, estimate.shares),
  ]);
  return { a, b, one, from: estimate.from, difference: differenceOf(estimate, DEFAULT_LEVEL), plan };
}

/** The sessions of a body in its condition that have a share in an estimate. */
function sideOf(
  { bench, budgetOf }: Compilation,
  { island }: TakenApart,
  { element }: CrossedBody,
  shares: ReadonlyMap<string, number>,
): readonly SharedSide[] {
  return island.sessions.flatMap((session) => {
    const share = shares.get(session.id);
    if (share === undefined || bodyElement(session, bench) !== element) return [];
    return [{ budget: budgetOf(session.id), runs: countedRuns(session).length, share }];
  });
}

/** Every two bodies of a condition that no chain has in common; what nothing joins is a finding. */
function compared(compilation: Compilation, condition: CrossedCondition): Contribution {
  const asked = condition.pairs.map((pair) => ({ pair, known: comparedPair(compilation, pair) }));
  const known = asked.flatMap((each) => each.known ?? []);
  const open = asked.filter((each) => each.known === undefined).map(({ pair }) => pair);
  const page: EntryPage = { name: GROUP, section: anchorOf(condition.id), title: TITLE };
  const totals = condition.bodies.flatMap(({ element, name }) => {
    const [one] = islandsOf(compilation, [element]);
    const id = carriedConditionId(element);
    const named = `${name} at ${condition.words}`;
    return one === undefined ? [] : nominal(compilation, one, { element, page, id, name: named });
  });
  const judged = judgedFigures(compilation, condition, known, page);
  return {
    figures: [...totals, ...judged],
    findings: open.length === 0 ? [] : [notJoined(compilation, condition, open)],
  };
}

function judgedFigures(
  compilation: Compilation,
  condition: CrossedCondition,
  known: readonly Compared[],
  page: EntryPage,
): readonly Figure[] {
  const [first] = known;
  if (first === undefined) return [];
  const marginMs = intervalMs(first.a.sessions[0].rate) / 2;
  const comparisons = judgeFamily(
    known.map(({ a, b, difference, plan }) => ({ id: pairName(condition, a, b), difference, margin: marginMs, plan })),
    ALPHA,
  );
  const inWords = `every two bodies in ${condition.words} that were never measured through one chain`;
  const family = { family: carriedFamily(condition), familySize: known.length, marginMs };
  const figures = known.flatMap((each, index): readonly Figure[] => {
    const comparison = comparisons[index] as Comparison<DifferenceResult>;
    const { a, b, one, from, difference } = each;
    const data = verdictData(comparison, family);
    const basis = basisOf(from, one.island, compilation);
    const words = describePair(compilation, each, leastLevel(basis.totals));
    const subject = (kind: 'carried-difference' | 'carried-verdict', says: string): JointSubject => ({
      kind,
      name: pairName(condition, a, b),
      of: ofPair(a, b),
      subject: `${a.name} against ${b.name}, at ${condition.words}`,
      page,
      ...basis,
      inWords: says,
    });
    const decided = describeDecision(data, { inWords, isMarginStated: false, alpha: ALPHA }).join(' ');
    const { interval, value, p } = difference;
    const figure = measuredFigure(subject('carried-difference', words), difference);
    return [
      { ...figure, p },
      {
        ...plainFigure(
          subject('carried-verdict', `${words} ${decided}`),
          value,
          describeVerdict({ verdict: comparison.verdict, difference }, marginMs),
        ),
        ...(figure.speaksOf === undefined ? {} : { speaksOf: figure.speaksOf }),
        interval,
        verdict: data,
      },
    ];
  });
  const size = familySizeFigure(
    {
      id: family.family,
      of: { condition: condition.id },
      group: `${GROUP}/${anchorOf(condition.id)}`,
      groupTitle: TITLE,
      inWords,
      size: known.length,
    },
    figures,
  );
  return [...figures, size];
}

function ofPair(a: CrossedBody, b: CrossedBody): Subject {
  return { body: a.sessions[0].body, condition: partOf(a.element).id, than: partOf(b.element).id };
}

/** `uhd-25-off/dunmere-30/5.3/than/vennick-q4/1.40`. */
function pairName({ id }: CrossedCondition, a: CrossedBody, b: CrossedBody): string {
  const bodyName = ({ element }: CrossedBody): string => partOf(element).id.slice(0, -(id.length + 1));
  return `${id}/${bodyName(a)}/than/${bodyName(b)}`;
}

const SPEAKS_OF: Readonly<Record<Level, string>> = {
  clips: ' It speaks of the clips of these sessions: how much other days differ, the bench does not state.',
  day: ' It speaks of the days of these sessions: how much other days differ, the bench does not state.',
  condition: '',
};

function describePair({ find }: Compilation, { a, b }: Compared, level: Level | undefined): string {
  const [own, other] = [a, b].map(({ sessions }) => frontsOf(sessions, find)) as [string, string];
  return `What ${a.name} itself takes, less what ${b.name} does, by way of the chain: the one was measured in front of ${own}, the other in front of ${other}, and never both through one chain. What displays and links take comes from one fit of all sessions that share a part, so that its errors cancel as far as both have them alike.${level === undefined ? '' : SPEAKS_OF[level]}`;
}

type Find = Compilation['find'];

/** `Stage screen and Pit monitor through Radio pair`. */
function frontsOf(sessions: CrossedBody['sessions'], find: Find): string {
  return listWords([
    ...new Set(
      sessions.map(({ display, links }) =>
        [find.display(display).name, ...links.map((link) => find.link(link).name)].join(' through '),
      ),
    ),
  ]);
}

function notJoined({ find }: Compilation, condition: CrossedCondition, open: CrossedCondition['pairs']): Finding {
  const pairs = open.map(
    ([a, b]) =>
      `${a.name} (in front of ${frontsOf(a.sessions, find)}) and ${b.name} (in front of ${frontsOf(b.sessions, find)})`,
  );
  return {
    rule: 'carried-not-joined',
    severity: 'note',
    where: { condition: condition.id },
    message: `At ${condition.words}, nothing says which of these lags less, because no path of sessions tells apart what stands behind them: ${pairs.join('; ')}.`,
    hint: 'Put the two displays side by side, or measure one body, alike in every setting and firmware, in front of both with the same links.',
  };
}
