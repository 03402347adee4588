import { ln } from '../../../analysis/elementary.ts';
import { deviation } from 'd3-array';
import { countedReadings, type CountedReading } from '../../session-input.ts';
import { describeSignificant } from '../../text.ts';
import type { Rule } from '../rule.ts';
import { instrumentStepMs } from './fine-instrument.ts';

/** Where readings agree so often that it takes a longer block, none is looked for. */
const LONGEST = 100;
/** How often a session may come by chance to what is said of it: to a repeated block, and to one repeated reading. */
const [RARE, SELDOM] = [0.01, 0.25];

/**
 * Rows that stand in a file twice make its interval narrower than its film allows. Readings repeat by chance, so a
 * block is named from the length on at which chance would hardly repeat one anywhere in the session.
 */
export const repeatedRows: Rule = ({ session }) => {
  const counted = countedReadings(session);
  const block = repeatedBlock(counted.map(keyOf));
  if (block === undefined)
    return session.method === 'instrument' ? repeatedReading(counted, instrumentStepMs(session)) : undefined;
  const lines = (from: number): string =>
    `lines ${counted[from]?.line ?? 0} to ${counted[from + block.length - 1]?.line ?? 0}`;
  return {
    severity: 'warning',
    message: `The readings of ${lines(block.again)} are those of ${lines(block.first)}, in the same order.`,
    hint: 'If rows were pasted in twice, remove one copy: two clips do not give the same readings.',
  };
};

interface Block {
  readonly first: number;
  readonly again: number;
  readonly length: number;
}

/**
 * The first block of keys that stands a second time behind itself, as long as it goes; none where chance may repeat it.
 */
function repeatedBlock(keys: readonly string[]): Block | undefined {
  const least = leastLength(keys);
  const seen = new Map<string, number>();
  for (let at = 0; at + least <= keys.length; at += 1) {
    const block = keys.slice(at, at + least).join('\n');
    const first = seen.get(block);
    if (first === undefined) seen.set(block, at);
    else if (first + least <= at) {
      let length = least;
      while (first + length < at && at + length < keys.length && keys[first + length] === keys[at + length])
        length += 1;
      return { first, again: at, length };
    }
  }
  return undefined;
}

/**
 * The length at which the expected number of repeated blocks, pairs × agreement ^ length, is `RARE`; none where all
 * agree, or are two.
 */
function leastLength(keys: readonly string[]): number {
  const pairs = (keys.length * (keys.length - 1)) / 2;
  const alike = [...Map.groupBy(keys, (key) => key).values()].reduce(
    (sum, { length }) => sum + (length * (length - 1)) / 2,
    0,
  );
  const agreeing = Math.max(alike, 1);
  if (pairs <= agreeing) return Infinity;
  const length = Math.ceil(ln(RARE / pairs) / ln(agreeing / pairs));
  return length > LONGEST ? Infinity : length;
}

/** One reading of an instrument like the one before it to the last digit, where readings scatter over many digits. */
function repeatedReading(counted: readonly CountedReading[], stepMs: number): ReturnType<Rule> {
  const at = counted.findIndex(({ run, latencyMs }, index) => {
    const before = counted[index - 1];
    return before !== undefined && before.run === run && before.latencyMs === latencyMs;
  });
  const scatterMs = deviation(counted, ({ latencyMs }) => latencyMs) ?? 0;
  // Two normal readings of one scatter differ by less than half a step with this chance: the density of their
  // difference at 0, times the step.
  const chance = ((counted.length - 1) * stepMs) / (2 * Math.sqrt(Math.PI) * scatterMs);
  const [before, again] = [counted[at - 1], counted[at]];
  if (before === undefined || again === undefined || !(chance <= SELDOM)) return undefined;
  return {
    severity: 'note',
    message: `Lines ${before.line} and ${again.line} hold the same reading to the last digit, which chance brings to about ${describeSignificant(100 * chance, 1, '%')} of sessions like this.`,
    hint: 'If the row was pasted in twice, remove one copy.',
  };
}

function keyOf({ sourceMs, shownMs, latencyMs }: CountedReading): string {
  return sourceMs === undefined ? `${latencyMs}` : `${sourceMs} ${shownMs}`;
}
