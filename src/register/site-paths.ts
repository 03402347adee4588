import type { Inventory } from '../ingest/inventory.ts';
import type { Bench } from '../model/bench.ts';
import { publishedFiles } from './published-files.ts';
import {
  bodyPath,
  DOCUMENTATION,
  displayPairPath,
  documentationPath,
  filePath,
  methodPath,
  PATHS,
  readAloudPath,
  reportPath,
  rigPath,
  sessionPath,
} from './paths.ts';

/** Every address on the site that a link can lead to: pages and files. */
export function sitePaths(bench: Bench): readonly string[] {
  return [...pagePathsOf(bench), ...publishedFiles(bench).map(filePath)];
}

/** The address of every page of a bench. */
export function pagePathsOf(bench: Bench): readonly string[] {
  const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  const { reports, bodies, rigs, methods, sessions, displayPairs, site } = bench;
  const pages = pagePaths({
    reports: ids(reports),
    bodies: ids(bodies),
    rigs: ids(rigs),
    methods: ids(methods),
    sessions: ids(sessions),
    displayPairs: ids(displayPairs),
  });
  return pages.filter((path) => site.documentation || !path.startsWith(PATHS.documentation));
}

/** The address of every page. */
export function pagePaths({
  reports,
  bodies,
  rigs,
  methods,
  sessions,
  displayPairs,
}: Pick<Inventory, 'reports' | 'bodies' | 'rigs' | 'methods' | 'sessions' | 'displayPairs'>): readonly string[] {
  return [
    ...Object.values(PATHS),
    ...DOCUMENTATION.map(documentationPath),
    ...reports.flatMap((id) => [reportPath(id), readAloudPath(id)]),
    ...bodies.map(bodyPath),
    ...rigs.map(rigPath),
    ...methods.map(methodPath),
    ...sessions.map(sessionPath),
    ...displayPairs.map(displayPairPath),
  ];
}
