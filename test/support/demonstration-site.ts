import { inject } from 'vitest';
import { readBuiltSite, type BuiltSite } from '../../src/verify/built-site.ts';
import { openCopy } from './project-copy.ts';

const known = new Map<string, BuiltSite>();

/** The site of the committed project as it was built once for all tests, its pages parsed once for those of a worker. */
export function demonstrationSite(): BuiltSite {
  const { dist } = openCopy(inject('builtProject'));
  const site = known.get(dist) ?? readBuiltSite(dist);
  known.set(dist, site);
  return site;
}
