import type { Bench, Session } from '../model/bench.ts';
import { traitsOf } from './traits.ts';

const BODY = 0;
const RATE = 1;

export interface Saying {
  /** Say the body even where all have the same. */
  readonly body?: boolean;
  /** Leave the rate out: the configurations hold several. */
  readonly rate?: boolean;
  /** Leave the chain (links, rig, display, method) out: the element is the body alone. */
  readonly chain?: boolean;
}

/**
 * Names for groups of sessions, one session standing for each: what sets each group apart from the others, in words.
 * `Vennick Q4, UHD 3840 × 2160, sync genlock`. Where nothing does, the body.
 */
export function nameConfigurations(bench: Bench, examples: readonly Session[], say: Saying = {}): readonly string[] {
  const rows = examples.map((session) => traitsOf(session, bench));
  // Traits stand in a fixed order: body, rate, settings, firmware, links, rig, display, method; then the last resorts.
  const chainFrom = 2 + bench.settings.filter(({ id }) => id !== 'rate').length + 1;
  const isSaid = (index: number): boolean => {
    if (index === BODY && say.body) return true;
    if (index === RATE && say.rate === false) return false;
    if (index >= chainFrom && say.chain === false) return false;
    return new Set(rows.map((row) => row[index]?.key)).size > 1;
  };
  return rows.map((row) => {
    const words = row
      .filter(({ role, short }, index) => role !== 'last-resort' && short !== '' && isSaid(index))
      .map(({ short }) => short);
    return words.length > 0 ? words.join(', ') : (row[BODY]?.short ?? '');
  });
}
