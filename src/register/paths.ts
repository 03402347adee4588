/** Where things stand on the site: site paths, each with a leading and a trailing slash. */
import type { SourceFile } from '../model/bench.ts';

export const PATHS = {
  home: '/',
  reports: '/reports/',
  comparison: '/comparison/',
  carried: '/comparison/carried/',
  bodies: '/bodies/',
  sessions: '/sessions/',
  rigs: '/rigs/',
  chain: '/chain/',
  method: '/method/',
  coverage: '/coverage/',
  glossary: '/glossary/',
  data: '/data/',
  guide: '/guide/',
  documentation: '/documentation/',
  corrections: '/corrections/',
  register: '/figures.json',
  recompute: '/recompute/',
  search: '/search/',
  package: '/data-package.zip',
} as const;

/** Folders of files; no pages. */
const CHARTS = '/charts/';
/** Photographs and clips of authors, in the sizes and formats of pages. */
export const ILLUSTRATIONS = '/pictures/';

export const reportPath = (id: string): string => `${PATHS.reports}${id}/`;
/** Its numbers for those who speak them. */
export const readAloudPath = (id: string): string => `${reportPath(id)}read-aloud/`;
export const bodyPath = (id: string): string => `${PATHS.bodies}${id}/`;
/** Files of one part of the data, where they are too many for one page: `alba-one/loft`. */
export const checksumsPath = (part: string): string => `${PATHS.data}checksums/${part}/`;
/** Parts of the comparison that are too long for it: the charts of one chain, and its bodies against each other. */
export const comparisonPartPath = (part: 'on' | 'differences', chain: string): string =>
  `${PATHS.comparison}${part}/${chain}/`;
/** A part of a body's page that is too long for it: `settings/balcony/rate`. */
export const bodySectionPath = (id: string, section: string): string => `${bodyPath(id)}${section}/`;
export const rigPath = (id: string): string => `${PATHS.rigs}${id}/`;
export const DISPLAY_PAIRS = '/display-pairs/';
export const displayPairPath = (id: string): string => `${DISPLAY_PAIRS}${id}/`;
export const methodPath = (id: string): string => `${PATHS.method}${id}/`;
export const sessionPath = (id: string): string => `${PATHS.sessions}${id}/`;

/** Pages of the documentation, in the order in which they are to be read: files of `src/documentation`. */
export const DOCUMENTATION = [
  'publication',
  'sessions',
  'write-ups',
  'ledger',
  'file-formats',
  'troubleshooting',
] as const;
export const documentationPath = (id: string): string => `${PATHS.documentation}${id}/`;

/** Where a figure can be recomputed: with its session, its two sessions, or the whole publication. */
export function recomputePath({
  id,
  of,
}: {
  readonly id: string;
  readonly of: Readonly<Record<string, string>>;
}): string {
  const { session, than } = of;
  const query = session === undefined ? { figure: id } : than === undefined ? { session } : { session, than };
  return `${PATHS.recompute}?${new URLSearchParams(query)}`;
}

/** Counts stand on the data page, each on a row of its own: `count/sessions/a` at `/data/#count-sessions-a`. */
export const countAnchor = (figureId: string): string => figureId.replaceAll('/', '-');

/** Raw files are published under the path at which the author keeps them. */
export const filePath = ({ path }: Pick<SourceFile, 'path'>): string => `/${path}`;

/** Files of one chart: a picture that stands alone, numbers, specification. */
export const chartPath = (id: string): string => `${CHARTS}${id}/`;
export const chartPicture = (id: string): string => `${chartPath(id)}picture.svg`;
export const chartNumbers = (id: string): string => `${chartPath(id)}data.csv`;
export const chartSpecification = (id: string): string => `${chartPath(id)}specification.json`;

/** Beside the pages of reports and bodies: the picture that previews of links show. */
export const CARD_FILE = 'card.png';
export const hasCard = (path: string): boolean => /^\/(?:reports|bodies)\/[^/]+\/$/.test(path);

/** The page that a file of a built site is: `sessions/a/index.html` → `/sessions/a/`. */
export function pageOfFile(file: string): string {
  return `/${file.replace(/(^|\/)index\.html$/, '$1')}`;
}
