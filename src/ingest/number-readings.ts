import type { Rate } from '../model/rate.ts';
import type { ReadingParser } from './reading-parser.ts';
import type { Report } from './source.ts';

const NUMBER = /^-?\d{1,9}(?:\.\d{1,9})?$/;

/** Readings counted in frames of the observer: frames × 1 / rate, one division of the exact rate. */
export function parseFrames({ frames: rateFrames, seconds }: Rate, report: Report): ReadingParser {
  return {
    columns: ['frames'],
    parse(line, cells, excluded) {
      const frames = parseNumber(line, 'frames', cells[1] ?? '', excluded, report);
      return frames === undefined ? {} : { frames, latencyMs: (frames * 1000 * seconds) / rateFrames };
    },
  };
}

/** Readings of an instrument, in milliseconds. */
export function parseLatencies(report: Report): ReadingParser {
  return {
    columns: ['latency'],
    parse(line, cells, excluded) {
      const latencyMs = parseNumber(line, 'latency', cells[1] ?? '', excluded, report);
      return latencyMs === undefined ? {} : { latencyMs };
    },
  };
}

/** A number that counts; undefined for the empty or negative cell that an excluded reading may have. */
function parseNumber(line: number, key: string, cell: string, excluded: boolean, report: Report): number | undefined {
  if (cell === '') {
    if (!excluded) report({ code: 'empty-cell', line, key });
    return undefined;
  }
  if (!NUMBER.test(cell)) {
    report({ code: 'bad-number', line, key, found: cell });
    return undefined;
  }
  const value = Number(cell);
  if (!cell.startsWith('-')) return value;
  if (!excluded) report({ code: 'negative-value', line, key, found: cell });
  return undefined;
}
