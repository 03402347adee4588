import { hash } from 'node:crypto';

/** An id for a chart that is unique on its page and the same in every build: a checksum of what it shows. */
export function chartId(...shows: readonly string[]): string {
  return `chart-${hash('sha256', shows.join('\n')).slice(0, 10)}`;
}
