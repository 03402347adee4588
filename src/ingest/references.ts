/** The parts, links and prose of a write-up, with their places, so that a build can check them all at once. */
import { mdxToMdast, type MdastNode } from 'satteri';
import type { Part, PartValue, Prose, WriteUpLink } from '../model/bench.ts';
import { imagesOf, type ImageReference } from './illustrations/image-references.ts';
import { checkMarkup } from './markup/check-markup.ts';
import { ELEMENTS } from './markup/elements.ts';
import { literalValue } from './markup/literal-value.ts';
import { sentencesAround } from './markup/sentence-around.ts';
import type { Visited } from './mdx-node.ts';
import { BLOCKS, ProseReader, textOf } from './prose.ts';
import type { Report } from './source.ts';

export interface WriteUpReferences {
  /** JSX elements that are none of HTML's: `<Figure …/>`. */
  readonly parts: readonly Part[];
  readonly links: readonly WriteUpLink[];
  readonly prose: readonly Prose[];
  readonly images: readonly ImageReference[];
  /** Names that the file imports or defines itself. */
  readonly ownNames: readonly string[];
}

/** Quotations, lists and elements within each other, and what they hold: far more than anybody reads. */
const DEEPEST = 100;
/** `5:4: Unexpected character after `<` (mdx-jsx:unexpected-character)` */
const PLACED_ERROR = /^(\d+):(\d+): (.*?)(?: \([\w-]+:[\w-]+\))?$/s;

/**
 * Reads the references of an MDX source. Positions count from the first line of the file, front matter
 * included. Where the text is not MDX, one problem is reported and nothing is returned from it.
 *
 * @param isTrusted whether it may hold code and any markup: the publisher says so for all write-ups
 */
export function parseReferences(source: string, report: Report, isTrusted = false): WriteUpReferences {
  const parts: Part[] = [];
  const links: WriteUpLink[] = [];
  const ownNames: string[] = [];
  const prose = new ProseReader();
  let images: readonly ImageReference[] = [];
  let around: ReturnType<typeof sentencesAround> = new Map();
  const visit = (node: Visited, depth = 0): void => {
    const { line = 1, column = 1 } = node.position?.start ?? {};
    if (depth > DEEPEST) throw new RangeError('nested too deeply');
    if ((node.type === 'link' || node.type === 'definition') && node.url !== undefined)
      links.push({ to: node.url, line, column });
    if (BLOCKS.has(node.type)) around = sentencesAround(node);
    if (node.type === 'mdxjsEsm') ownNames.push(...(String(node.value).match(/\b[A-Z]\w*/g) ?? []));
    if (isPart(node, isTrusted)) {
      const attributes: Record<string, PartValue> = {};
      for (const { type, name, value } of node.attributes ?? []) {
        // A spread can hold anything: what it holds is checked when the part is drawn.
        const property = type === 'mdxJsxAttribute' ? (name ?? '') : '...';
        if (Object.hasOwn(attributes, property) && !isTrusted)
          report({ code: 'duplicate-key', line, column, key: `${node.name} ${property}` });
        attributes[property] = partValue(value);
      }
      const content = node.children ?? [];
      const sentence = around.get(node);
      parts.push({
        name: node.name ?? '',
        line,
        column,
        attributes,
        ...(content.length === 0 ? {} : { words: textOf(content), holds: heldBy(content) }),
        ...(sentence && { sentence }),
      });
    }
    node.children?.forEach((child) => visit(child, depth + 1));
  };
  try {
    const tree = mdxToMdast(source) as MdastNode as Visited;
    visit(tree);
    if (!isTrusted) checkMarkup(tree, report);
    prose.read(tree);
    images = imagesOf(tree, report);
  } catch (error) {
    if (error instanceof RangeError) {
      report({ code: 'mdx-depth' });
      return { parts, links, prose: prose.found, images, ownNames };
    }
    const message = error instanceof Error ? error.message : String(error);
    const [, line = '1', column = '1', says = message] = PLACED_ERROR.exec(message) ?? [];
    report({ code: 'bad-mdx', line: Number(line), column: Number(column), found: says });
  }
  return { parts, links, prose: prose.found, images, ownNames };
}

/** Parts and links within: `<Figure>`, `a link`. */
function heldBy(nodes: readonly Visited[]): readonly string[] {
  return nodes.flatMap(({ type, name, children = [] }) => [
    ...(type === 'link' || name === 'a' ? ['a link'] : /^[A-Z]/.test(name ?? '') ? [`<${name}>`] : []),
    ...heldBy(children),
  ]);
}

/** `"text"`, `{["a", "b"]}` and `{{ a: "b" }}` are read; any other expression is unknown. */
function partValue(value: unknown): PartValue {
  if (value === null || value === undefined) return { known: true, value: true };
  if (typeof value === 'string') return { known: true, value };
  return literalValue(String((value as { value?: unknown }).value ?? ''));
}

/** Trusted write-ups may write any element of HTML: whatever has no capital. */
function isPart({ type, name }: Visited, isTrusted: boolean): boolean {
  if (type !== 'mdxJsxFlowElement' && type !== 'mdxJsxTextElement') return false;
  return name !== null && name !== undefined && (isTrusted ? /^[A-Z]/.test(name) : !ELEMENTS.has(name));
}
