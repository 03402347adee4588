/** Another name for a font, in place: OpenType 1.9.1, “Font tables” and “name: naming table”. */

/** Two words of one length, in ASCII. */
interface Words {
  readonly from: string;
  readonly to: string;
}

/** In bytes. */
const TABLE = { directory: 12, record: 16 };
const NAME = { header: 6, record: 12 };

/**
 * The font, with one word for another in all its names but those of the ids `except`. Its checksums are those of before:
 * a WOFF2 file has none, and what reads one computes them anew.
 *
 * Throws an Error where the words are not of one length, or the font has no table of names.
 */
export function renameFont(font: Uint8Array, { from, to }: Words, except: readonly number[]): Buffer {
  if (from.length !== to.length) throw new Error(`'${from}' and '${to}' are not of one length`);
  const renamed = Buffer.from(font);
  const view = new DataView(renamed.buffer, renamed.byteOffset, renamed.byteLength);
  const table = tableAt(view, 'name');
  const texts = table + view.getUint16(table + 4);
  for (let nth = 0; nth < view.getUint16(table + 2); nth += 1) {
    const record = table + NAME.header + nth * NAME.record;
    if (except.includes(view.getUint16(record + 6))) continue;
    const start = texts + view.getUint16(record + 10);
    const text = renamed.subarray(start, start + view.getUint16(record + 8));
    // Macintosh texts take a byte a letter, all others two.
    const width = view.getUint16(record) === 1 ? 1 : 2;
    replaceWord(text, wordOf(from, width), wordOf(to, width));
  }
  return renamed;
}

function tableAt(view: DataView, tag: string): number {
  for (let nth = 0; nth < view.getUint16(4); nth += 1) {
    const record = TABLE.directory + nth * TABLE.record;
    const read = String.fromCharCode(...[0, 1, 2, 3].map((at) => view.getUint8(record + at)));
    if (read === tag) return view.getUint32(record + 8);
  }
  throw new Error(`the font has no table '${tag}'`);
}

function wordOf(word: string, width: number): Buffer {
  return width === 1 ? Buffer.from(word, 'latin1') : Buffer.from(word, 'utf16le').swap16();
}

function replaceWord(text: Uint8Array, from: Buffer, to: Buffer): void {
  const bytes = Buffer.from(text.buffer, text.byteOffset, text.byteLength);
  for (let at = bytes.indexOf(from); at !== -1; at = bytes.indexOf(from, at + to.length)) to.copy(bytes, at);
}
