import type { Bench } from '../model/bench.ts';
import { publishedFiles } from './published-files.ts';
import { bodyPath, filePath, methodPath, PATHS, reportPath, rigPath, sessionPath } from './paths.ts';

/** Every address on the site that a link can lead to. */
export function sitePaths(bench: Bench): readonly string[] {
  return [
    ...Object.values(PATHS),
    ...bench.reports.map(({ id }) => reportPath(id)),
    ...bench.bodies.map(({ id }) => bodyPath(id)),
    ...bench.rigs.map(({ id }) => rigPath(id)),
    ...bench.methods.map(({ id }) => methodPath(id)),
    ...bench.sessions.map(({ id }) => sessionPath(id)),
    ...publishedFiles(bench).map(filePath),
  ];
}
