/**
 * What all sessions together say about the parts of the chain: figures of kind `element` and `bracket`, and what they
 * cannot say.
 */
import type { Bracket } from '../../analysis/chain-brackets.ts';
import { estimateChainDifference, estimateChainElement, type ChainEstimate } from '../../analysis/chain-network.ts';
import { compareText } from '../../model/compare-text.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { measuredFigure, plainFigure, sourceOf, type EntryPage } from '../joint-figure.ts';
import type { Figure, FigureSource, Subject } from '../register.ts';
import { chainFindings } from './chain-findings.ts';
import { bodyOf, isBody, partOf } from './elements.ts';
import { pairId, type Island } from './network.ts';
import { takeApart, type TakenApart } from './take-apart.ts';

const PAGE: EntryPage = { name: 'chain', title: 'The chain, taken apart' };

/** Bodies have many conditions: each body's stand on a page of their own. */
function pageOf(element: string, { find }: Compilation): EntryPage {
  if (!isBody(element)) return PAGE;
  const { id, name } = find.body(bodyOf(element));
  return { name: `chain-${id}`, title: `${PAGE.title}: ${name}` };
}

export function compileChain(compilation: Compilation): Contribution {
  const { taken, withoutUncertainty, nameOf } = takeApart(compilation);
  return {
    figures: [
      ...taken.flatMap((one) => elementFigures(one, nameOf, compilation)),
      ...taken.flatMap((one) => bracketFigures(one, nameOf, compilation)),
    ],
    findings: chainFindings(taken, withoutUncertainty, nameOf, compilation),
  };
}

function elementFigures(
  { island, chain }: TakenApart,
  nameOf: (element: string) => string,
  compilation: Compilation,
): readonly Figure[] {
  const figure = (
    estimate: ChainEstimate,
    name: string,
    of: Subject,
    subject: string,
    inWords?: string,
  ): readonly Figure[] =>
    estimate.kind === 'not-estimable'
      ? []
      : [
          measuredFigure(
            {
              kind: 'element',
              name,
              of,
              subject,
              page: pageOf(name, compilation),
              ...basisOf(estimate.from, island, compilation),
              ...(inWords === undefined ? {} : { inWords }),
            },
            estimate,
          ),
        ];
  // by name, so that which is set against which does not hang on the order of sessions
  const displays = island.elements.filter((element) => partOf(element).type === 'display').sort(compareText);
  const alone = island.elements.flatMap((element) =>
    figure(estimateChainElement(chain, element), element, subjectOf(element), nameOf(element)),
  );
  const apart = displays.flatMap((display, index) =>
    displays
      .slice(index + 1)
      .flatMap((than) =>
        figure(
          estimateChainDifference(chain, display, than),
          `${display}/than/${partOf(than).id}`,
          { display: partOf(display).id, than: partOf(than).id },
          `${nameOf(display)} less ${nameOf(than)}`,
          'How much more latency one display has than another, from every path through the network: no latency of either need be known.',
        ),
      ),
  );
  return [...alone, ...apart];
}

function bracketFigures(
  { island, brackets }: TakenApart,
  nameOf: (element: string) => string,
  compilation: Compilation,
): readonly Figure[] {
  if (brackets.kind === 'contradiction') return [];
  return brackets.brackets.flatMap(({ element, low, high, from }: Bracket): readonly Figure[] => {
    if (high === undefined) return [];
    const subject = {
      kind: 'bracket' as const,
      name: element,
      of: subjectOf(element),
      subject: nameOf(element),
      page: pageOf(element, compilation),
      ...basisOf(from, island, compilation),
    };
    return [{ ...plainFigure(subject, (low + high) / 2, describeLimits(low, high)), limits: { low, high } }];
  });
}

/** `between 12 and 96 ms`: rounded outwards, so that the text holds what the limits hold. */
export function describeLimits(low: number, high: number): string {
  const scale = high - low >= 20 ? 1 : 10;
  const decimals = scale === 1 ? 0 : 1;
  return `between ${(Math.floor(low * scale) / scale).toFixed(decimals)} and ${(Math.ceil(high * scale) / scale).toFixed(decimals)} ms`;
}

function subjectOf(element: string): Subject {
  const { type, id } = partOf(element);
  return type === 'body' ? { body: bodyOf(element), condition: id } : { [type]: id };
}

/** The sessions that have a share in it, and the files of the parts whose stated or least latency has. */
export function basisOf(
  from: readonly string[],
  { sessions, pairs }: Island,
  { find, session }: Compilation,
): { totals: readonly Figure[]; files: readonly FigureSource[] } {
  const ids = new Set(from);
  const stated = from
    .filter((id) => id.includes('/') && !id.startsWith('error/'))
    .map((element) => {
      const { type, id } = partOf(element);
      if (type === 'body') return find.body(bodyOf(element));
      return type === 'link' ? find.link(id) : find.display(id);
    });
  return {
    totals: [
      ...sessions.filter(({ id }) => ids.has(id)).map(({ id }) => session(id).total),
      ...pairs.filter((pair) => ids.has(pairId(pair))).map(({ figure }) => figure),
    ],
    // a body has an element for each of its conditions, and one file
    files: [...new Set(stated)].map(sourceOf),
  };
}
