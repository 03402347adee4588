import { z } from 'zod';
import type { PairOutputs } from '../../model/bench.ts';
import { date, flag, parsed, rowHeight, text } from '../fields.ts';
import { parseDurationMs } from '../quantities.ts';
import { present } from '../present.ts';
import { observer, sourceTimer } from './rig.ts';
import { importedFrom } from './session.ts';

/**
 * `splitter`: one output feeds both; `unknown`: two that nobody compared; `1 ms`: two that were found alike to that.
 */
const outputs = parsed('bad-outputs', (value): PairOutputs | undefined => {
  if (value === 'unknown') return {};
  const standardUncertaintyMs = value === 'splitter' ? 0 : parseDurationMs(value);
  return standardUncertaintyMs === undefined ? undefined : { standardUncertaintyMs };
});

/** Front matter of `data/display-pairs/<id>.md`. */
export const displayPairSchema = z
  .strictObject({
    method: text,
    /** May be missing only while it is planned. */
    date: date.optional(),
    display: text,
    against: text,
    links: z.array(text).optional(),
    'against-links': z.array(text).optional(),
    'source-timer': sourceTimer,
    outputs,
    observer: observer.optional(),
    'digits-row': rowHeight.optional(),
    'against-digits-row': rowHeight.optional(),
    room: text.optional(),
    'imported-from': importedFrom.optional(),
    /** Allows a readings file with nothing but its header. */
    planned: flag,
  })
  .transform(
    ({
      links = [],
      'against-links': againstLinks = [],
      'source-timer': timer,
      'digits-row': digitsRow,
      'against-digits-row': againstDigitsRow,
      'imported-from': from,
      ...rest
    }) =>
      present({ ...rest, links, againstLinks, sourceTimer: timer, digitsRow, againstDigitsRow, importedFrom: from }),
  );
