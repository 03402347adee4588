/** Of pages, the indexes and the first of every folder: what is built from one template looks alike. */
export function pagesOfEveryKind(paths: readonly string[]): readonly string[] {
  const kinds = Map.groupBy(paths, (path) => path.replace(/^(\/[^/]+\/).+$/, '$1…'));
  return [...kinds.values()].flatMap(([first]) => first ?? []).sort();
}
