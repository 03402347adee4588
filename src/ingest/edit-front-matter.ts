import { renderFrontMatter } from './render-front-matter.ts';

/**
 * Front matter with other values for some of its keys, as text: every other line stays as it is, comments too.
 * `undefined` takes a key out. Only for keys of the first level whose value is a single word or line.
 */
export function editFrontMatter(text: string, values: Readonly<Record<string, string | number | undefined>>): string {
  const ending = text.includes('\r\n') ? '\r\n' : '\n';
  const lines = text.split(ending);
  const close = lines.findIndex((line, index) => index > 0 && line.startsWith('---'));
  if (close < 0) throw new RangeError('front matter has no end');
  const edited = Object.entries(values).reduce<readonly string[]>(
    (block, [key, value]) => set(block, key, value),
    lines.slice(0, close),
  );
  return [...edited, ...lines.slice(close)].join(ending);
}

function set(block: readonly string[], key: string, value: string | number | undefined): readonly string[] {
  const at = block.findIndex((line) => line.startsWith(`${key}:`));
  const written = value === undefined ? [] : [renderFrontMatter({ [key]: value }).trimEnd()];
  if (at >= 0) return [...block.slice(0, at), ...written, ...block.slice(at + 1)];
  const settings = block.findIndex((line) => line.startsWith('settings:'));
  const place = settings < 0 ? block.length : settings;
  return [...block.slice(0, place), ...written, ...block.slice(place)];
}
