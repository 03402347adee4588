import { nearest } from '../nearest.ts';
import type { Visited } from '../mdx-node.ts';
import type { Report } from '../source.ts';
import { attributesOf, ELEMENTS } from './elements.ts';
import { isComment, literalValue } from './literal-value.ts';

const SCHEMES = ['https:', 'http:', 'mailto:'] as const;

/**
 * What a write-up may not do by itself, one problem for each: run code when the site is built (import, export,
 * expressions), lead a reader to anything but a page, or dress text up as something that it is not (attributes). Which
 * elements and parts there are is checked with all parts.
 */
export function checkMarkup(node: Visited, report: Report): void {
  const { line = 1, column = 1 } = node.position?.start ?? {};
  const at = { line, column };
  switch (node.type) {
    case 'mdxjsEsm':
      report({ code: 'code-in-write-up', ...at, found: firstLine(node.value), expected: 'statement' });
      break;
    case 'mdxFlowExpression':
    case 'mdxTextExpression':
      if (!isComment(String(node.value ?? '')))
        report({ code: 'code-in-write-up', ...at, found: `{${firstLine(node.value)}}`, expected: 'expression' });
      break;
    case 'link':
    case 'definition':
      checkLink(node.url ?? '', at, report);
      break;
    case 'mdxJsxFlowElement':
    case 'mdxJsxTextElement':
      checkAttributes(node, at, report);
      break;
  }
  for (const child of node.children ?? []) checkMarkup(child, report);
}

type Place = { readonly line: number; readonly column: number };

export function checkLink(to: string, at: Place, report: Report): void {
  const found = refusedStart(to);
  if (found !== undefined) report({ code: 'refused-link', ...at, found });
}

function checkAttributes({ name, attributes = [] }: Visited, at: Place, report: Report): void {
  const element = name ?? '';
  for (const { type, name: attribute = '...', value } of attributes) {
    const isSpread = type !== 'mdxJsxAttribute';
    if (isSpread || !isPlain(value))
      report({ code: 'not-plain', ...at, key: element, found: isSpread ? '{...}' : attribute });
    else if (ELEMENTS.has(element)) {
      const choices = attributesOf(element);
      if (!choices.includes(attribute))
        report({
          code: 'refused-attribute',
          ...at,
          key: element,
          found: attribute,
          choices,
          nearest: nearest(attribute, choices),
        });
      else if (attribute === 'href') checkLink(textOf(value), at, report);
    }
  }
}

/** As satteri gives it: a text, nothing at all, or `{ value: 'the expression' }`. */
function isPlain(value: unknown): boolean {
  return typeof value !== 'object' || value === null || literalValue(expressionOf(value)).known;
}

function textOf(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value ?? '');
  const literal = literalValue(expressionOf(value));
  return literal.known ? String(literal.value) : '';
}

function expressionOf(value: object): string {
  return String((value as { value?: unknown }).value ?? '');
}

function firstLine(value: unknown): string {
  const [line = '', ...more] = String(value ?? '').split('\n');
  return more.length > 0 ? `${line} …` : line;
}

/**
 * What a link begins with, where that is no page of this site and no scheme that a link may have: `javascript:`, `//`.
 * Browsers pass over blanks and control characters before and within a scheme, and take `\` for `/`.
 */
function refusedStart(link: string): string | undefined {
  const bare = link.replace(/[\p{Cc}\p{Cf}\p{Z}]/gu, '').replaceAll('\\', '/');
  if (bare.startsWith('//')) return '//';
  const scheme = /^[^/?#]*?:/.exec(bare)?.[0].toLowerCase();
  return scheme === undefined || SCHEMES.some((known) => known === scheme) ? undefined : scheme;
}
