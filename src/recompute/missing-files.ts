/** Which files a session cannot do without, so that who lacks one is told its name and not what follows from that. */
import { parseFrontMatter } from '../ingest/front-matter.ts';

const SINGLE = { body: 'bodies', rig: 'rigs', display: 'displays' } as const;

/**
 * Published paths that sessions and rigs refer to and that are not among the files, and `data/settings.yaml`; sorted.
 */
export function missingFiles(files: ReadonlyMap<string, Uint8Array>): readonly string[] {
  const needed = new Set<string>(['data/settings.yaml']);
  for (const [path, bytes] of files) {
    if (!/^data\/(?:sessions|rigs)\/.*\.(?:md|csv)$/.test(path)) continue;
    if (path.startsWith('data/sessions/'))
      needed.add(path.replace(/\.\w+$/, '.md')).add(path.replace(/\.\w+$/, '.csv'));
    if (path.endsWith('.md')) for (const file of referredTo(bytes)) needed.add(file);
  }
  return [...needed].filter((path) => !files.has(path)).sort();
}

function referredTo(bytes: Uint8Array): readonly string[] {
  const file = { path: '', sha256: '', bytes: bytes.length };
  const value = parseFrontMatter({ file, bytes, report: () => undefined })?.value;
  if (typeof value !== 'object' || value === null) return [];
  const stated = value as Readonly<Record<string, unknown>>;
  return [
    ...Object.entries(SINGLE).flatMap(([key, folder]) => pathsOf(folder, [stated[key]])),
    ...pathsOf('links', Object.values(stated['links'] ?? [])),
  ];
}

function pathsOf(folder: string, ids: readonly unknown[]): readonly string[] {
  return ids.flatMap((id) => (typeof id === 'string' ? [`data/${folder}/${id}.md`] : []));
}
