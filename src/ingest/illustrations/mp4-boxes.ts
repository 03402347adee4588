/**
 * The boxes of an MP4 file (ISO/IEC 14496-12:2022, 4.2): each begins with its length in four bytes, big-endian, and
 * its type in four letters. A length of 1 says that eight bytes of length follow the type, 0 that it ends the file.
 */
export interface Mp4Box {
  readonly type: string;
  /** Where its content begins and ends, in bytes of the file; its type stands in the four bytes at `typeAt`. */
  readonly start: number;
  readonly end: number;
  readonly typeAt: number;
}

/** Boxes that hold boxes, of those that lead to what a film says of itself. */
const HOLDS_BOXES = new Set(['moov', 'trak', 'mdia', 'moof', 'traf']);

/** Every box of a file, at any depth; of what is damaged, as far as it can be read. */
export function boxesOf(bytes: Uint8Array): readonly Mp4Box[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const within = (from: number, to: number): readonly Mp4Box[] => {
    const found: Mp4Box[] = [];
    for (let at = from; at + 8 <= to; ) {
      const short = view.getUint32(at);
      const isLong = short === 1 && at + 16 <= to;
      const length = isLong ? Number(view.getBigUint64(at + 8)) : short === 0 ? to - at : short;
      const start = at + (isLong ? 16 : 8);
      if (at + length > to || start > at + length) break;
      const box = { type: lettersAt(bytes, at + 4), start, end: at + length, typeAt: at + 4 };
      found.push(box, ...(HOLDS_BOXES.has(box.type) ? within(box.start, box.end) : []));
      at += length;
    }
    return found;
  };
  return within(0, bytes.length);
}

/** Whether a file ends before its last box does. */
export function isCutOff(bytes: Uint8Array): boolean {
  return Math.max(0, ...boxesOf(bytes).map(({ end }) => end)) !== bytes.length;
}

/** What the tracks of a file carry, as their handlers say: `vide`, `soun`, `meta`. ISO/IEC 14496-12:2022, 8.4.3. */
export function trackKinds(bytes: Uint8Array): readonly string[] {
  return boxesOf(bytes)
    .filter(({ type, start, end }) => type === 'hdlr' && end - start >= 12)
    .map(({ start }) => lettersAt(bytes, start + 8));
}

function lettersAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
