/** Where a page stands: the pages above it, from the home page down. */
import { PATHS } from '../register/paths.ts';

export interface Crumb {
  readonly name: string;
  readonly path: string;
}

const SECTIONS: readonly Crumb[] = [
  { name: 'Reports', path: PATHS.reports },
  { name: 'Comparison', path: PATHS.comparison },
  { name: 'Bodies', path: PATHS.bodies },
  { name: 'Sessions', path: PATHS.sessions },
  { name: 'Rigs', path: PATHS.rigs },
  { name: 'Method', path: PATHS.method },
  { name: 'Data', path: PATHS.data },
];

/** Pages that stand under a section without having its address. */
const UNDER: Readonly<Record<string, string>> = {
  '/figures/': PATHS.data,
  '/display-pairs/': PATHS.comparison,
  [PATHS.coverage]: PATHS.method,
  [PATHS.glossary]: PATHS.method,
  [PATHS.corrections]: PATHS.data,
  [PATHS.chain]: PATHS.comparison,
};

/** Empty for the home page. */
export function trailOf(path: string, home: string): readonly Crumb[] {
  if (path === PATHS.home) return [];
  const under = Object.entries(UNDER).find(([start]) => path.startsWith(start))?.[1] ?? path;
  const section = SECTIONS.find((each) => under.startsWith(each.path) && each.path !== path);
  return [{ name: home, path: PATHS.home }, ...(section === undefined ? [] : [section])];
}
