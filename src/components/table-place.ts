import { hash } from 'node:crypto';

export interface TablePlace {
  readonly id: string;
  readonly caption: string;
}

const CHARACTERS: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
  '&amp;': '&',
};

/**
 * Where a table stands on its page, by what heads it and its rows and not by its numbers, so that the place stays when
 * these move; and what it is called. @param taken places of the page so far: a table that comes again gets a number
 */
export function placeTable(html: string, taken: Map<string, number>): TablePlace {
  const textOf = (inside: string): string =>
    inside
      .replace(/<span class="shared">[\s\S]*?<\/span>/g, '')
      .replace(/<[^>]*>/g, '')
      .replace(/&(?:lt|gt|quot|#39|amp);/g, (entity) => CHARACTERS[entity] ?? entity)
      .replace(/\s+/g, ' ')
      .trim();
  const [, caption = ''] = /<caption\b[^>]*>([\s\S]*?)<\/caption>/.exec(html) ?? [];
  const heads = [...html.matchAll(/<th\b[^>]*>([\s\S]*?)<\/th>/g)].map(([, inside = '']) => textOf(inside));
  const [, head = ''] = /<thead\b[^>]*>([\s\S]*?)<\/thead>/.exec(html) ?? [];
  const columns = [...head.matchAll(/<th\b[^>]*>([\s\S]*?)<\/th>/g)].map(([, inside = '']) => textOf(inside));
  const name = textOf(caption) || columns.filter(Boolean).join(', ');
  const digest = hash('sha256', [name, ...heads].join('\n')).slice(0, 10);
  const before = taken.get(digest) ?? 0;
  taken.set(digest, before + 1);
  return { id: `table-${digest}${before === 0 ? '' : `-${before + 1}`}`, caption: name };
}
