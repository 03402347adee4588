import { partNamed, PARTS } from '../../src/write-ups/parts.ts';

/** The part itself in its example, without the words around it. */
export function tagOf(name: string): string {
  const example = partNamed(name)?.example ?? '';
  const [tag] = new RegExp(`<${name}\\b(?:[^>]*?/>|.*?</${name}>)`, 's').exec(example) ?? [];
  if (tag === undefined) throw new Error(`the example of ${name} does not use it`);
  return tag;
}

/** A report that holds every example of the guide. */
export const EVERY_EXAMPLE = `---
title: Every part
summary: Each example of the guide once.
date: 2026-04-22
---

${PARTS.map(({ example }) => example).join('\n\n')}
`;
