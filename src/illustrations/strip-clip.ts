import { boxesOf } from '../ingest/illustrations/mp4-boxes.ts';

/** Boxes that say where, when, by whom and with what a film was taken, and nothing of how it is played. */
const SAYS_MORE = new Set(['udta', 'meta', 'uuid']);
/** Boxes that begin with a version, and with the times at which they were made and changed. */
const DATED = new Set(['mvhd', 'tkhd', 'mdhd']);

/**
 * The same film without what it says of its place, time and maker. Nothing moves: such a box becomes free space, and
 * days become the first of their calendar (ISO/IEC 14496-12:2022, 8.1.2, 8.2.2, 8.3.2 and 8.4.2).
 */
export function stripClip(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const stripped = new Uint8Array(bytes);
  for (const { type, start, end, typeAt } of boxesOf(bytes)) {
    if (SAYS_MORE.has(type)) {
      stripped.set(new TextEncoder().encode('free'), typeAt);
      stripped.fill(0, start, end);
    }
    if (DATED.has(type)) {
      const isLong = bytes[start] === 1;
      stripped.fill(0, start + 4, Math.min(end, start + (isLong ? 20 : 12)));
    }
  }
  return stripped;
}
