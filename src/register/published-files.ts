import type { Bench, SourceFile } from '../model/bench.ts';

/**
 * The files that the site publishes byte for byte, by path: everything that a figure was computed from, and what
 * readings were imported from.
 */
export function publishedFiles(bench: Bench): readonly SourceFile[] {
  return [
    bench.settingsFile,
    ...(bench.variation === undefined ? [] : [bench.variation.file]),
    ...(bench.speeds === undefined ? [] : [bench.speeds.file]),
    ...[bench.bodies, bench.displays, bench.links, bench.rigs].flat().map(({ file }) => file),
    ...(bench.workbooks ?? []),
    ...[...bench.sessions, ...bench.displayPairs].flatMap(({ file, readingsFile }) => [file, readingsFile]),
  ].sort((a, b) => (a.path < b.path ? -1 : 1));
}
