/** What the guide for authors prints: every part, by its definition. */
import type { Bench } from '../model/bench.ts';
import { needOf, type PartDefinition, type PartGroup } from './parts/definition.ts';
import { GUIDE_REPORT } from './parts/worked-example.ts';
import { PARTS } from './parts.ts';

export interface GuidePart {
  readonly name: string;
  /** `<Claim>…</Claim>`, `<Figure />`. */
  readonly written: string;
  readonly shows: string;
  readonly properties: readonly {
    readonly name: string;
    readonly need: string;
    readonly means: string;
    readonly accepts: string;
  }[];
  readonly example: string;
  readonly failure: { readonly written: string; readonly says: string };
}

export interface GuidePage {
  /** A whole report. */
  readonly report: string;
  /** Of all parts, sorted. */
  readonly names: readonly string[];
  readonly groups: readonly {
    readonly id: PartGroup;
    readonly heading: string;
    readonly parts: readonly GuidePart[];
  }[];
  /** What parts can be asked for in this publication: `bodies`, then their ids; of a setting its levels. */
  readonly own: readonly { readonly name: string; readonly ids: readonly string[] }[];
}

const HEADINGS: Readonly<Record<PartGroup, string>> = {
  figures: 'Figures of sessions',
  comparisons: 'Sessions compared',
  bodies: 'Bodies, settings and the chain',
  words: 'Words bound to data, and numbers that are meant',
};

export function guidePage({ bench }: { readonly bench: Bench }): GuidePage {
  return {
    report: GUIDE_REPORT,
    names: PARTS.map(({ name }) => name).toSorted(),
    groups: (['figures', 'comparisons', 'bodies', 'words'] as const).map((id) => ({
      id,
      heading: HEADINGS[id],
      parts: PARTS.filter(({ group }) => group === id).map(guidePart),
    })),
    own: ownIds(bench),
  };
}

function ownIds({ bodies, rigs, displays, links, settings }: Bench): GuidePage['own'] {
  const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  return [
    { name: 'bodies', ids: ids(bodies) },
    { name: 'rigs', ids: ids(rigs) },
    { name: 'displays', ids: ids(displays) },
    { name: 'links', ids: ids(links) },
    ...settings.map(({ id, levels }) => ({ name: `setting ${id}`, ids: ids(levels) })),
  ].filter((kind) => kind.ids.length > 0);
}

function guidePart(part: PartDefinition): GuidePart {
  const { name, shows, example, failure } = part;
  return {
    name,
    written: part.marksWords ? `<${name}>…</${name}>` : `<${name} />`,
    shows,
    properties: Object.entries(part.properties).map(([property, { means, accepts }]) => ({
      name: property,
      need: needOf(part, property),
      means,
      accepts,
    })),
    example,
    failure,
  };
}
