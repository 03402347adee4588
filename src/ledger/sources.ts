/**
 * Every file on which a figure rests, those of its words and of its family among them: causes are looked for there
 * first.
 */
import type { Bench } from '../model/bench.ts';
import type { Figure, Register } from '../register/register.ts';

/** The sources of a figure, and besides: what names it, who asked for it, and what it is adjusted together with. */
export function sourcesOf(
  { bodies, sessions, settingsFile, reports, methods }: Bench,
  { figures }: Pick<Register, 'figures'>,
): (figure: Figure) => readonly string[] {
  const bodyFiles = new Map(bodies.map(({ id, file }) => [id, file.path]));
  const bodyOf = new Map(sessions.flatMap(({ file, body }) => [[file.path, bodyFiles.get(body) ?? ''] as const]));
  const askedBy = new Map(
    [
      ...methods.map((writeUp) => ['method', writeUp] as const),
      ...reports.map((writeUp) => ['report', writeUp] as const),
    ].map(([kind, { id, file }]) => [`${kind}/${id}`, file.path]),
  );
  const familyFiles = new Map<string, Set<string>>();
  const writeUpOf = new Map<string, string>();
  for (const { kind, id, of, sources } of figures) {
    if (kind !== 'family') continue;
    const family = id.slice('family/'.length);
    familyFiles.set(family, new Set(sources.map(({ file }) => file)));
    const asked = Object.entries(of).flatMap(([what, which]) => askedBy.get(`${what}/${which}`) ?? []);
    if (asked[0] !== undefined) writeUpOf.set(family, asked[0]);
  }
  return (figure) => {
    const own = figure.sources.map(({ file }) => file);
    if (!isNamed(figure)) return own;
    const family = figure.verdict?.family ?? (figure.kind === 'family' ? figure.id.slice('family/'.length) : '');
    const together = figure.verdict === undefined ? [] : [...(familyFiles.get(family) ?? [])];
    const asked = writeUpOf.get(family);
    const all = [...own, ...together];
    const named = all.flatMap((file) => bodyOf.get(file) ?? []);
    return [...new Set([...all, ...named, settingsFile.path, ...(asked === undefined ? [] : [asked])])];
  };
}

/** Figures of one session say no name, and a count none but what it counts. */
function isNamed({ kind, of }: Figure): boolean {
  return kind !== 'count' && (of['session'] === undefined || of['than'] !== undefined || kind === 'cost');
}
