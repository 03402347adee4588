/** The photographs and clips of all texts: each file is read once, whatever shows it. */
import { posix } from 'node:path';
import type { Clip, Illustration, Photograph } from '../../model/illustration.ts';
import { checkSchema } from '../check-schema.ts';
import type { Folder } from '../folder.ts';
import { nearest } from '../nearest.ts';
import type { ProblemList } from '../problem-list.ts';
import type { FileBytes } from '../read-source.ts';
import { clipSchema } from '../schemas/clip.ts';
import { reportOn, type Report, type Source } from '../source.ts';
import { parseYaml } from '../yaml.ts';
import { wordsOfCaptions } from './captions.ts';
import type { ImageReference } from './image-references.ts';
import { CLIPS, endsIn, PHOTOGRAPHS } from './names.ts';
import { readClip } from './read-clip.ts';
import { readPhotograph } from './read-photograph.ts';

/** What texts ask for, by the published path of the text. */
export type References = ReadonlyMap<string, readonly ImageReference[]>;

/**
 * Everything that texts show, in their order; what cannot be shown is reported, where it stands or where the text asks
 * for it.
 *
 * @param folders `data` and `content`: from the texts of either, files of both may be shown
 */
export async function readIllustrations(
  folders: readonly Folder[],
  references: References,
  problems: ProblemList,
): Promise<readonly Illustration[]> {
  const reader = new Reader(folders, problems);
  const found: Illustration[] = [];
  for (const [text, asked] of references) {
    const named = new Map(asked.map((reference) => [reference.to, reference]));
    for (const reference of named.values()) {
      const at = { line: reference.line, column: reference.column };
      const report: Report = (problem) => problems.add({ ...problem, file: text, ...at });
      const shows = await reader.read(posix.join(posix.dirname(text), reference.to), reference.to, report);
      if (shows !== undefined) found.push({ text, to: reference.to, shows });
    }
  }
  return found;
}

class Reader {
  readonly #folders: readonly Folder[];
  readonly #problems: ProblemList;
  readonly #known = new Map<string, Promise<Photograph | Clip | undefined>>();

  constructor(folders: readonly Folder[], problems: ProblemList) {
    this.#folders = folders;
    this.#problems = problems;
  }

  /** @param report of the place that asks for it */
  async read(path: string, asked: string, report: Report): Promise<Photograph | Clip | undefined> {
    const isClip = endsIn(path, CLIPS);
    if (!isClip && !endsIn(path, PHOTOGRAPHS)) {
      report({ code: 'unknown-picture', found: asked, choices: [...PHOTOGRAPHS, ...CLIPS] });
      return undefined;
    }
    if (!(await this.#isThere(path, asked, isClip ? CLIPS : PHOTOGRAPHS, report))) return undefined;
    const known = this.#known.get(path) ?? (isClip ? this.#clip(path) : this.#photograph(path));
    this.#known.set(path, known);
    return known;
  }

  async #photograph(path: string): Promise<Photograph | undefined> {
    const file = await this.#bytes(path);
    return file && readPhotograph(file, reportOn(path, this.#problems));
  }

  /** With what stands beside it, in `pan.mp4.yaml`. */
  async #clip(path: string): Promise<Clip | undefined> {
    const file = await this.#bytes(path);
    const facts = file && (await readClip(file, reportOn(path, this.#problems)));
    const beside = `${path}.yaml`;
    const isMissing: Report = () =>
      this.#problems.add({ code: 'clip-without-words', file: path, expected: posix.basename(beside) });
    if (!(await this.#isThere(beside, posix.basename(beside), [], isMissing))) return undefined;
    const source = await this.#source(beside);
    if (source === undefined) return undefined;
    const yaml = parseYaml(new TextDecoder().decode(source.bytes).replace(/\r\n?/g, '\n'), source.report);
    const said = yaml && checkSchema(yaml, clipSchema, source.report);
    if (yaml === undefined || said === undefined) return undefined;
    const beneath = (key: 'poster' | 'captions', to: string) => ({
      path: posix.join(posix.dirname(path), to),
      report: (problem: Parameters<Report>[0]) => source.report({ key, ...problem, ...yaml.locate([key]) }),
    });
    if (said.captions === undefined && said.inWords === undefined) {
      source.report({ code: 'clip-without-words', line: 1 });
      return undefined;
    }
    const place = beneath('poster', said.poster);
    const poster = await this.read(place.path, said.poster, place.report);
    if (poster?.kind === 'clip') place.report({ code: 'unknown-picture', found: said.poster, choices: PHOTOGRAPHS });
    const captions = said.captions === undefined ? undefined : await this.#captions(beneath('captions', said.captions));
    if (file === undefined || facts === undefined || poster?.kind !== 'photograph') return undefined;
    if (said.captions !== undefined && captions === undefined) return undefined;
    return {
      kind: 'clip',
      file: file.file,
      ...facts,
      poster,
      ...(captions === undefined ? {} : { captions: { file: captions.file, language: said.language ?? 'en' } }),
      inWords: said.inWords ?? captions?.words ?? '',
      flashes: said.flashes,
    };
  }

  async #captions({ path, report }: { readonly path: string; readonly report: Report }) {
    if (!(await this.#isThere(path, posix.basename(path), ['.vtt'], report))) return undefined;
    const source = await this.#source(path);
    if (source === undefined) return undefined;
    const words = wordsOfCaptions(new TextDecoder().decode(source.bytes), source.report);
    return words === undefined ? undefined : { file: source.file, words };
  }

  async #bytes(path: string): Promise<FileBytes | undefined> {
    const { folder, name } = this.#place(path);
    return folder?.readBytes(name);
  }

  async #source(path: string): Promise<Source | undefined> {
    const { folder, name } = this.#place(path);
    return folder?.readSource(name);
  }

  /** @param endings of the files that may have been meant */
  async #isThere(path: string, asked: string, endings: readonly string[], report: Report): Promise<boolean> {
    const { folder, name } = this.#place(path);
    if (folder === undefined) {
      report({ code: 'picture-outside', found: asked });
      return false;
    }
    const names = await folder.namesIn(posix.dirname(name));
    if (names.includes(posix.basename(name))) return true;
    const alike = names.filter((each) => endsIn(each, endings));
    report({ code: 'missing-picture', found: asked, nearest: nearest(posix.basename(name), alike) });
    return false;
  }

  #place(path: string): { readonly folder: Folder | undefined; readonly name: string } {
    const folder = this.#folders.find(({ area }) => path.startsWith(`${area.name}/`));
    return { folder, name: folder === undefined ? path : path.slice(folder.area.name.length + 1) };
  }
}
