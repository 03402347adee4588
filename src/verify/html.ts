/** The few questions that checks ask of a parsed page. */
import { parse, type DefaultTreeAdapterTypes } from 'parse5';

export type Node = DefaultTreeAdapterTypes.Node;
export type Element = DefaultTreeAdapterTypes.Element;

export const parsePage = (html: string): Node => parse(html);

/** All nodes at and under this one, in document order. */
export function nodesOf(node: Node): readonly Node[] {
  const found: Node[] = [];
  const gather = (one: Node): void => {
    found.push(one);
    if ('childNodes' in one) one.childNodes.forEach(gather);
  };
  gather(node);
  return found;
}

export function elementsOf(node: Node, test: (element: Element) => boolean = () => true): readonly Element[] {
  return nodesOf(node).filter((one): one is Element => 'tagName' in one && test(one));
}

export function attributeOf({ attrs }: Element, name: string): string | undefined {
  return attrs.find((attribute) => attribute.name === name)?.value;
}

export function hasClass(element: Element, name: string): boolean {
  return (attributeOf(element, 'class') ?? '').split(/\s+/).includes(name);
}

/** The text of a node and of everything in it, exactly. */
export function textOf(node: Node): string {
  return nodesOf(node)
    .map((one) => ('value' in one && one.nodeName === '#text' ? one.value : ''))
    .join('');
}

/** The same words with single spaces. */
export function bare(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}
