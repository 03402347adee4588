/** The two marks that Markdown notes take, written as in write-ups: `<Setting>2 ms</Setting>`, `<Quoted from="…">…</Quoted>`. */
export type NoteMark =
  | { readonly opens: true; readonly name: 'Setting' }
  /** `from` is as written, character references included, without `"`, `<` and `>`. */
  | { readonly opens: true; readonly name: 'Quoted'; readonly from: string }
  | { readonly opens: false; readonly name: 'Setting' | 'Quoted' };

const OPENING = /^<(?:(Setting)|Quoted\s+from="([^"<>]*\S[^"<>]*)")\s*>$/;
const CLOSING = /^<\/(Setting|Quoted)\s*>$/;

/** Undefined where the HTML is no such mark. */
export function parseNoteMark(html: string): NoteMark | undefined {
  const closing = CLOSING.exec(html)?.[1];
  if (closing === 'Setting' || closing === 'Quoted') return { opens: false, name: closing };
  const [found, setting, from] = OPENING.exec(html) ?? [];
  if (found === undefined) return undefined;
  return setting === undefined ? { opens: true, name: 'Quoted', from: from ?? '' } : { opens: true, name: 'Setting' };
}
