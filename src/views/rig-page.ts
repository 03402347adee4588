/** What the page of one rig prints. */
import type { Rig, SourceFile } from '../model/bench.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import { inBenchOrder } from '../register/select.ts';
import { namedSession, type NamedSession } from './named-session.ts';
import { noteOf, type Note } from './note.ts';
import { rigFacts, type RigFact } from './rig-facts.ts';

export interface RigPage {
  readonly rig: Rig;
  readonly note: Note;
  readonly facts: readonly RigFact[];
  /** Links and displays that have a description, those included that single sessions put in place of the rig's own. */
  readonly described: readonly {
    readonly name: string;
    readonly note: Note;
    readonly isOwn: boolean;
  }[];
  readonly sessions: readonly NamedSession[];
  /** What they have in common. */
  readonly shared: string;
  readonly files: readonly SourceFile[];
}

export function rigPage({ bench, find }: Published, id: string): RigPage {
  const rig = find.rig(id);
  const sessions = inBenchOrder(
    bench,
    bench.sessions.filter((session) => session.rig === id),
  );
  const labels = labelSessions(bench, sessions);
  const links = [...new Set([...rig.links, ...sessions.flatMap((session) => session.links)])].map(find.link);
  const displays = [...new Set([rig.display, ...sessions.map(({ display }) => display)])].map(find.display);
  const chain = [...links, ...displays];
  return {
    rig,
    note: noteOf(bench, rig.description, rig.file),
    facts: rigFacts(rig, find),
    described: chain
      .filter(({ description }) => description.trim() !== '')
      .map(({ id: part, name, description, file }) => ({
        name,
        note: noteOf(bench, description, file),
        isOwn: rig.links.includes(part) || rig.display === part,
      })),
    sessions: sessions.map(({ id: of }) => namedSession(bench, of, labels.of.get(of))),
    shared: labels.shared,
    files: [rig.file, ...chain.map(({ file }) => file)],
  };
}
