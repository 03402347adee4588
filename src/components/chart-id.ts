import { createHash } from 'node:crypto';

/** An id for a chart that is unique on its page and the same in every build: a checksum of what it shows. */
export function chartId(...shows: readonly string[]): string {
  return `chart-${createHash('sha256').update(shows.join('\n')).digest('hex').slice(0, 10)}`;
}
