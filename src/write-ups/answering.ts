import { standingFamilies } from '../register/comparisons/compile-comparisons.ts';
import type { Published } from '../register/published.ts';
import { methodPath, reportPath } from '../register/paths.ts';
import { askedFamily } from './asked-families.ts';
import type { Answering, Asking } from './parts/definition.ts';
import { adjustedWith } from './read-together.ts';
import { placedWriteUps, type PlacedWriteUp } from './write-up-kind.ts';

/** The site path of a write-up. */
function writeUpPath({ kind, writeUp: { id } }: PlacedWriteUp): string {
  return kind === 'method' ? methodPath(id) : reportPath(id);
}

/** What the parts of one write-up are answered from. */
export function answeringFor(site: Published, placed: PlacedWriteUp): Answering {
  return answer(site, placed, standingFamilies(site.bench));
}

/** The same for every write-up of a site. */
export function answeringAll(site: Published): readonly (PlacedWriteUp & { readonly answering: Answering })[] {
  const families = standingFamilies(site.bench);
  return placedWriteUps(site.bench).map((placed) => ({ ...placed, answering: answer(site, placed, families) }));
}

function answer(site: Published, placed: PlacedWriteUp, families: Asking['families']): Answering {
  const { bench } = site;
  const answering = {
    site,
    bench,
    families,
    path: writeUpPath(placed),
    family: askedFamily(placed, { bench, families }),
  };
  return { ...answering, adjust: adjustedWith(placed, answering) };
}
