/** What the network of sessions cannot tell, why, and what would make it so. */
import { estimateChainDifference, estimateChainElement } from '../../analysis/chain-network.ts';
import type { Bench, Display, Session } from '../../model/bench.ts';
import { rateLabel, type Rate } from '../../model/rate.ts';
import type { Compilation } from '../compilation.ts';
import type { Finding } from '../register.ts';
import { describeSignificant, describeValue } from '../text.ts';
import { partOf } from './elements.ts';
import { disagreeing } from './disagreement.ts';
import type { Island } from './network.ts';
import { nextPair, type NextPair } from './next-session.ts';
import type { TakenApart } from './take-apart.ts';

type NameOf = (element: string) => string;

/** Findings about chains carry this key: the island's first display. */
const WHERE = 'chain';

export function chainFindings(
  taken: readonly TakenApart[],
  withoutUncertainty: readonly Session[],
  nameOf: NameOf,
  bench: Pick<Compilation, 'bench' | 'find'>,
): readonly Finding[] {
  return [
    ...taken.flatMap((one) => [
      ...notAnchored(one, nameOf),
      ...linksNotSeparable(one, nameOf),
      ...displaysNotSeparable(one, nameOf),
      ...inconsistent(one),
      ...contradicted(one),
    ]),
    ...notJoined(taken, nameOf),
    ...nextSession(taken, nameOf, bench),
    ...withoutUncertainty.map(
      ({ id }): Finding => ({
        rule: 'chain-no-uncertainty',
        severity: 'caution',
        where: { session: id },
        message:
          'Its readings are all alike, so nothing can say how far to trust it, and it takes no part in taking the chain apart.',
        hint: 'Take further readings, and write every decimal that the timers show.',
      }),
    ),
  ];
}

function notAnchored({ island, chain }: TakenApart, nameOf: NameOf): readonly Finding[] {
  const displays = ofType(island, 'display');
  const open = displays.filter((display) => estimateChainElement(chain, display).kind === 'not-estimable');
  if (open.length === 0) return [];
  return [
    {
      rule: 'chain-not-anchored',
      severity: 'note',
      where: whereOf(island),
      message: `${list(open.map(nameOf))}: no latency of ${open.length === 1 ? 'its' : 'their'} own can be given, nor of the bodies in front of ${open.length === 1 ? 'it' : 'them'}. Any amount could move from the display to every body, and each total would stay what it is.`,
      hint: `Find the latency of ${open.length === 1 ? 'it' : 'any one of them'} and state it in data/displays (latency: value, uncertainty, source); the bodies follow.`,
    },
  ];
}

function linksNotSeparable({ island, chain }: TakenApart, nameOf: NameOf): readonly Finding[] {
  return ofType(island, 'link').flatMap((link): readonly Finding[] =>
    estimateChainElement(chain, link).kind === 'estimate'
      ? []
      : [
          {
            rule: 'chain-link-not-separable',
            severity: 'note',
            where: { ...whereOf(island), link: partOf(link).id },
            message: `${nameOf(link)}: what it adds cannot be told, because no body was measured in one condition both with and without it on displays that can be compared.`,
            hint: 'Repeat one of its sessions without it, on the same display and with everything else alike.',
          },
        ],
  );
}

function displaysNotSeparable({ island, chain }: TakenApart, nameOf: NameOf): readonly Finding[] {
  const displays = ofType(island, 'display');
  return displays.slice(1).flatMap((display): readonly Finding[] => {
    const comparable = displays.some(
      (than) => than !== display && estimateChainDifference(chain, display, than).kind === 'estimate',
    );
    if (comparable) return [];
    return [
      {
        rule: 'chain-display-not-separable',
        severity: 'note',
        where: { ...whereOf(island), display: partOf(display).id },
        message: `${nameOf(display)}: it cannot be compared with another display, because every path to one differs in something else as well.`,
        hint: 'Measure one body, alike in every setting and firmware, on both displays with the same links.',
      },
    ];
  });
}

/** In words, with how many readings. */
function nextSession(
  taken: readonly TakenApart[],
  nameOf: NameOf,
  { bench, find }: Pick<Compilation, 'bench' | 'find'>,
): readonly Finding[] {
  const displayOf = (element: string): Display => find.display(partOf(element).id);
  const next = nextPair(
    taken.map(({ island }) => island),
    (element) => displayOf(element).sync === 'free',
  );
  const [first] = taken;
  if (next === undefined || first === undefined) return [];
  const [display, against] = [displayOf(next.display), displayOf(next.against)];
  return [
    {
      rule: 'chain-next-session',
      severity: 'note',
      where: whereOf(first.island),
      message: `One session would settle most: put ${nameOf(next.display)} and ${nameOf(next.against)} side by side, 16 readings in four clips. ${describeGain(next, nameOf)}`,
      hint: `How that is done is among the methods, under “Two displays side by side”; npm run plan -- --display ${display.id} --against ${against.id} --picture ${rateLabel(pictureFor([display, against], bench))} says more.`,
    },
  ];
}

/**
 * The rate of a picture for both: that of a comparison with one of them, else the refresh of the one that follows it.
 */
function pictureFor(two: readonly [Display, Display], { displayPairs }: Bench): Rate {
  const ids = two.map(({ id }) => id);
  const like = displayPairs.find(({ display, against }) => ids.includes(display) || ids.includes(against));
  return like?.sourceTimer.refresh ?? (two.find(({ sync }) => sync === 'input') ?? two[1]).refresh;
}

/** What the session that would settle most gives, in a sentence. */
function describeGain({ gains, joins, narrows }: NextPair, nameOf: NameOf): string {
  const width = (ms: number): string => `± ${describeSignificant(ms, 2, 'ms')}`;
  if (gains.length > 0) {
    const [only, ...others] = gains;
    const size =
      others.length === 0 && narrows !== undefined && narrows.part === only ? `, to about ${width(narrows.toMs)}` : '';
    return `It gives ${list(gains.map(nameOf))} a latency of ${others.length === 0 ? 'its' : 'their'} own${size}.`;
  }
  if (joins > 0 || narrows === undefined || narrows.fromMs === undefined)
    return 'It tells how far apart they are, whatever either takes.';
  return `It tells the latency of ${nameOf(narrows.part)} to about ${width(narrows.toMs)}, and now that is known to ${width(narrows.fromMs)}.`;
}

function describeDisagreement({ observations, sharedErrors, anchors }: Island): string {
  const { ids, mends } = disagreeing(observations, [...sharedErrors, ...anchors]);
  const names = ids.map((id) => id.replace(/^pair:/, 'the comparison of displays ')).join(', ');
  if (!mends) return `No single one explains it; they agree better without: ${names}.`;
  return ids.length === 1
    ? `They agree once ${names} is left out.`
    : `They agree once one of these is left out: ${names}.`;
}

function inconsistent({ island, chain: { consistency } }: TakenApart): readonly Finding[] {
  if (consistency === undefined || consistency.inflation === 1) return [];
  return [
    {
      rule: 'chain-inconsistent',
      severity: 'caution',
      where: whereOf(island),
      message: `The sessions disagree about the parts of the chain by ${describeValue(consistency.ratio, 1, '1')} times what their uncertainties explain (Birge ratio); the uncertainties of all parts are widened by that much. ${describeDisagreement(island)}`,
      hint: 'Something differs that no setting names: compare the notes of sessions that should agree, or repeat them on one day.',
    },
  ];
}

function contradicted({ island, brackets }: TakenApart): readonly Finding[] {
  if (brackets.kind !== 'contradiction') return [];
  return [
    {
      rule: 'chain-contradiction',
      severity: 'warning',
      where: { ...whereOf(island), session: brackets.session },
      message:
        'Its total cannot be reached by any latencies of its parts that the other sessions leave possible, so no limits are given for them.',
      hint: 'Check its readings and its front matter (links, display, settings), and the readout that its body states.',
    },
  ];
}

function notJoined(taken: readonly TakenApart[], nameOf: NameOf): readonly Finding[] {
  const [first, ...others] = taken;
  if (first === undefined || others.length === 0) return [];
  const displaysOf = ({ island }: TakenApart): string => list(ofType(island, 'display').map(nameOf));
  return others.map((other) => ({
    rule: 'chain-not-joined',
    severity: 'note',
    where: whereOf(other.island),
    message: `${displaysOf(other)} cannot be compared with ${displaysOf(first)}: no body was measured in one and the same condition in front of both.`,
    hint: 'One session on each of two such displays, of one body alike in every setting and firmware, joins them.',
  }));
}

function ofType({ elements }: Island, type: string): readonly string[] {
  return elements.filter((element) => partOf(element).type === type);
}

function whereOf(island: Island): { readonly [WHERE]: string } {
  return { [WHERE]: partOf(ofType(island, 'display')[0] ?? '').id };
}

function list(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
}
