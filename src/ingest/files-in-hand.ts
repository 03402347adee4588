/**
 * Files that somebody holds, in whatever folders → the sources of `data/`, so that they are parsed as a build parses
 * them.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { checkEncoding } from './encoding.ts';
import { parseFrontMatter } from './front-matter.ts';
import type { DataSources, NamedSource } from './parse-data.ts';
import { SPEEDS_FILE } from './parse-speeds.ts';
import { VARIATION_FILE } from './parse-variation.ts';
import type { ProblemList } from './problem-list.ts';
import { reportOn, type Source } from './source.ts';

/** A file by whatever path it has where it is: `data/rigs/balcony.md`, `Downloads/balcony.md`. */
export interface FileInHand {
  readonly path: string;
  readonly bytes: Uint8Array;
}

const DESCRIBED = ['bodies', 'displays', 'links', 'rigs'] as const;
const READ = ['sessions', 'display-pairs'] as const;
const FOLDERS: readonly string[] = [...DESCRIBED, ...READ];
const SINGLE: readonly string[] = ['settings.yaml', VARIATION_FILE, SPEEDS_FILE];
const NAME = /(?:^|\/)(?:([^/]+)\/)?([^/]+?)\.(md|csv|yaml)$/;

/** Lower-case hexadecimal SHA-256. */
export function checksum(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/**
 * Where the file stands in a publication: `data/sessions/a.csv`. By the folder it is in, where that has such a name;
 * otherwise by what its front matter states. Undefined for a file that is none of `data/`.
 */
export function publishedPath({ path, bytes }: FileInHand): string | undefined {
  const [, folder = '', stem = '', extension = ''] = NAME.exec(path.replaceAll('\\', '/')) ?? [];
  const name = `${stem}.${extension}`;
  if (SINGLE.includes(name)) return `data/${name}`;
  if (extension === 'csv' && ['ledger', 'sources'].includes(folder)) return undefined;
  if (extension === 'csv') return `data/${folder === 'display-pairs' ? folder : 'sessions'}/${name}`;
  if (extension !== 'md') return undefined;
  if (FOLDERS.includes(folder)) return `data/${folder}/${name}`;
  const kind = folderByContent(bytes);
  return kind && `data/${kind}/${name}`;
}

/** Sources of these files, by their published paths; the last of several with the same path counts. */
export function sourcesInHand(files: ReadonlyMap<string, Uint8Array>, problems: ProblemList): DataSources {
  const sourceOf = (path: string): Source | undefined => {
    const raw = files.get(path);
    if (raw === undefined) return undefined;
    const report = reportOn(path, problems);
    const bytes = checkEncoding(raw, report);
    return bytes && { file: { path, sha256: checksum(raw), bytes: raw.length }, bytes, report };
  };
  const idsIn = (folder: string): readonly string[] => {
    const names = [...files.keys()].filter((path) => path.startsWith(`data/${folder}/`));
    return [...new Set(names.map((path) => path.slice(`data/${folder}/`.length).replace(/\.\w+$/, '')))].sort();
  };
  const described = (folder: string): readonly NamedSource[] =>
    idsIn(folder).map((id) => ({ id, source: sourceOf(`data/${folder}/${id}.md`) }));
  const read = (folder: (typeof READ)[number]) =>
    idsIn(folder).map((id) => ({
      id,
      front: sourceOf(`data/${folder}/${id}.md`),
      readings: sourceOf(`data/${folder}/${id}.csv`),
    }));
  return {
    settings: sourceOf('data/settings.yaml'),
    variation: sourceOf(`data/${VARIATION_FILE}`),
    speeds: sourceOf(`data/${SPEEDS_FILE}`),
    bodies: described('bodies'),
    displays: described('displays'),
    links: described('links'),
    rigs: described('rigs'),
    sessions: read('sessions'),
    displayPairs: read('display-pairs'),
  };
}

/** What only one kind of file states. */
function folderByContent(bytes: Uint8Array): string | undefined {
  const file = { path: '', sha256: '', bytes: bytes.length };
  const value = parseFrontMatter({ file, bytes, report: () => undefined })?.value;
  if (typeof value !== 'object' || value === null) return undefined;
  const states = (key: string): boolean => key in value;
  if (states('rig')) return 'sessions';
  if (states('against')) return 'display-pairs';
  if (states('display')) return 'rigs';
  if (states('refresh')) return 'displays';
  if (states('maker')) return 'bodies';
  return states('name') ? 'links' : undefined;
}
