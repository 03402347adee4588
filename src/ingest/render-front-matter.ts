import { stringify } from 'yaml';

/**
 * Front matter that reads back as the same values: text stays text, quoted where YAML would take it for something else.
 */
export function renderFrontMatter(values: Readonly<Record<string, unknown>>): string {
  return stringify(values, { lineWidth: 0 });
}
