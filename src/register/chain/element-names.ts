import type { Bench, Session } from '../../model/bench.ts';
import type { Lookup } from '../lookup.ts';
import { nameConfigurations } from '../name-configurations.ts';
import { bodyElement, partOf } from './elements.ts';

/** What each part is called in words: `Radio pair`, `Vennick Q4, 59.94 frames/s, UHD 3840 × 2160`. */
export function nameElements(bench: Bench, find: Lookup, elements: readonly string[]): (element: string) => string {
  const examples = new Map<string, Session>();
  for (const session of bench.sessions) {
    const element = bodyElement(session, bench);
    if (!examples.has(element)) examples.set(element, session);
  }
  const bodies = elements.filter((element) => examples.has(element));
  const names = new Map<string, string>();
  // Within its body: what sets the condition apart from the body's others.
  for (const own of Map.groupBy(bodies, (element) => examples.get(element)?.body).values()) {
    const conditions = nameConfigurations(
      bench,
      own.flatMap((element) => examples.get(element) ?? []),
      { body: true, chain: false },
    );
    own.forEach((element, index) => names.set(element, conditions[index] ?? element));
  }
  return (element) => {
    const { type, id } = partOf(element);
    if (type === 'link') return find.link(id).name;
    if (type === 'display') return find.display(id).name;
    return names.get(element) ?? id;
  };
}
