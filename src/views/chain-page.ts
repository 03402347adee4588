/** What the page about the chain prints. */
import { displayPairPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { briefRows, chainRows, type ChainRow } from './chain-rows.ts';
import { describeAnchors } from './chain-words.ts';

export interface ChainPage {
  /** Every part but the bodies. */
  readonly parts: readonly ChainRow[];
  /** Displays, links, and each body at its fastest. */
  readonly brief: readonly ChainRow[];
  readonly bodies: readonly { readonly name: string; readonly rows: readonly ChainRow[] }[];
  /** Of displays that one body was measured in front of. */
  readonly displays: readonly DisplayDifference[];
  /** Of displays read against each other. */
  readonly pairs: readonly DisplayDifference[];
  readonly anchors: Sentence;
  readonly findings: readonly Finding[];
}

export interface DisplayDifference {
  readonly display: string;
  readonly than: string;
  /** Where the two were read against each other; undefined where their difference follows from sessions. */
  readonly path?: string;
  readonly figure: Figure;
}

export function chainPage({ bench, find, register, figure: figureOf }: Published): ChainPage {
  const rows = chainRows(bench, find, register.figures);
  const bodies = Map.groupBy(
    rows.filter(({ type }) => type === 'body'),
    ({ element }) => element.split('/')[1] ?? '',
  );
  return {
    parts: rows.filter(({ type }) => type !== 'body'),
    brief: briefRows(rows, find),
    bodies: [...bodies].map(([body, ofBody]) => ({ name: find.body(body).name, rows: ofBody })),
    displays: register.figures.flatMap((figure) => {
      const { display, than } = figure.of;
      return figure.kind === 'element' && display !== undefined && than !== undefined
        ? [{ display: find.display(display).name, than: find.display(than).name, figure }]
        : [];
    }),
    pairs: bench.displayPairs.flatMap(({ id, display, against }) => {
      const figure = figureOf(`display-difference/${id}`);
      const names = { display: find.display(display).name, than: find.display(against).name };
      return figure === undefined ? [] : [{ ...names, path: displayPairPath(id), figure }];
    }),
    anchors: describeAnchors(bench, rows),
    findings: register.findings.filter(({ rule }) => rule.startsWith('chain-')),
  };
}
