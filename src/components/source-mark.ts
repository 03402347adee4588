/**
 * The value of `data-from`, the light mark of numbers that are no link: the figures (by id) and files (by path) that they
 * come from, a line each. What it says is checked after every build (`src/audit/`).
 */
export function sourceMark(sources: readonly string[]): string {
  return [...new Set(sources)].join('\n');
}
