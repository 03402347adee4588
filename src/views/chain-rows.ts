/** The parts of the chain as pages list them: each with its limits, and its latency where one can be given. */
import type { Bench } from '../model/bench.ts';
import type { Lookup } from '../register/lookup.ts';
import type { Figure } from '../register/register.ts';
import { nameElements } from '../register/chain/element-names.ts';
import { partOf, type PartType } from '../register/chain/elements.ts';

export interface ChainRow {
  readonly element: string;
  readonly type: PartType;
  readonly name: string;
  readonly bracket: Figure | undefined;
  readonly latency: Figure | undefined;
}

/** Displays, then links, then bodies; each in the order of the register. */
export function chainRows(bench: Bench, find: Lookup, figures: readonly Figure[]): readonly ChainRow[] {
  const ofKind = (kind: string): ReadonlyMap<string, Figure> =>
    new Map(
      figures.filter((figure) => figure.kind === kind).map((figure) => [figure.id.slice(kind.length + 1), figure]),
    );
  const [brackets, latencies] = [ofKind('bracket'), ofKind('element')];
  const elements = [...new Set([...brackets.keys(), ...latencies.keys()])].filter(
    (element) => !element.includes('/than/'),
  );
  const nameOf = nameElements(bench, find, elements);
  const rows = elements.map(
    (element): ChainRow => ({
      element,
      type: partOf(element).type,
      name: nameOf(element),
      bracket: brackets.get(element),
      latency: latencies.get(element),
    }),
  );
  return (['display', 'link', 'body'] as const).flatMap((type) => rows.filter((row) => row.type === type));
}

/** Displays, links, and each body in the condition in which it can be told to be fastest. */
export function briefRows(rows: readonly ChainRow[], find: Lookup): readonly ChainRow[] {
  const high = ({ bracket }: ChainRow): number => bracket?.limits?.high ?? Infinity;
  const bodies = Map.groupBy(
    rows.filter(({ type }) => type === 'body'),
    ({ element }) => partOf(element).id.split('/')[0] ?? '',
  );
  return [
    ...rows.filter(({ type }) => type !== 'body'),
    ...[...bodies].flatMap(([body, conditions]) => {
      const [fastest] = conditions.toSorted((a, b) => high(a) - high(b));
      return fastest ? [{ ...fastest, name: `${find.body(body).name}, at its fastest` }] : [];
    }),
  ];
}
