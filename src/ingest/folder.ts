import { readdir, realpath } from 'node:fs/promises';
import { join, relative, resolve, sep } from 'node:path';
import type { z } from 'zod';
import type { SourceFile } from '../model/bench.ts';
import { checkTopFolder, listFolder, type Entry } from './list-folder.ts';
import type { NamedSource } from './parse-data.ts';
import type { ProblemList } from './problem-list.ts';
import {
  checksumOf,
  errorCode,
  isInside,
  isListed,
  readBytes,
  readSource,
  type Area,
  type FileBytes,
} from './read-source.ts';
import { parseRecord, type RecordFile } from './record.ts';
import type { Source } from './source.ts';

export interface Records<T> {
  /** Of every file, faulty ones too, sorted. */
  readonly ids: readonly string[];
  /** Of those without a mistake, sorted by id. */
  readonly records: readonly RecordFile<T>[];
}

/** `data/` or `content/`, opened for reading. */
export class Folder {
  readonly area: Area;
  readonly #path: string;
  readonly #problems: ProblemList;

  private constructor(path: string, area: Area, problems: ProblemList) {
    this.#path = path;
    this.area = area;
    this.#problems = problems;
  }

  static async open(root: string, dir: string, problems: ProblemList): Promise<Folder | undefined> {
    const path = resolve(root, dir);
    const inside = isInside(path, resolve(root)) ? relative(resolve(root), path) : path;
    const name = inside.split(sep).join('/') || '.';
    try {
      await readdir(path);
      return new Folder(path, { realFolder: await realpath(path), name }, problems);
    } catch (error) {
      const code = errorCode(error);
      problems.add(
        code === 'ENOENT'
          ? { code: 'missing-folder', file: name }
          : { code: 'unreadable-file', file: name, found: code },
      );
      return undefined;
    }
  }

  list(folder: string, extensions: readonly string[], needed: boolean): Promise<Entry[]> {
    const options = {
      path: join(this.#path, folder),
      published: `${this.area.name}/${folder}`,
      area: this.area,
      extensions,
      needed,
    };
    return listFolder(options, this.#problems);
  }

  /** Whether there is a folder of this name that can be read. Anything else of the name is reported. */
  async holds(folder: string): Promise<boolean> {
    const [path, file] = [join(this.#path, folder), `${this.area.name}/${folder}`];
    try {
      await readdir(path);
      if (isInside(await realpath(path), this.area.realFolder)) return true;
      this.#problems.add({ code: 'link-leads-out', file, expected: `${this.area.name}/` });
    } catch (error) {
      const code = errorCode(error);
      if (code !== 'ENOENT' || (await isListed(path)))
        this.#problems.add({ code: 'unreadable-file', file, found: code });
    }
    return false;
  }

  /** Whether there is anything but a folder of this name. */
  async holdsFile(name: string): Promise<boolean> {
    return (await readdir(this.#path, { withFileTypes: true })).some(
      (entry) => entry.name === name && !entry.isDirectory(),
    );
  }

  /** Reports what stands in a folder beside the names that belong there. */
  checkNames(folder: string, belongs: readonly string[]): Promise<void> {
    return checkTopFolder(join(this.#path, folder), `${this.area.name}/${folder}`, belongs, this.#problems, false);
  }

  readSource(name: string): Promise<Source | undefined> {
    return readSource(join(this.#path, name), `${this.area.name}/${name}`, this.area, this.#problems);
  }

  /** A file of any kind, whole. */
  readBytes(name: string): Promise<FileBytes | undefined> {
    return readBytes(join(this.#path, name), `${this.area.name}/${name}`, this.area, this.#problems);
  }

  /** What stands in a folder; nothing, where there is none that can be read. */
  async namesIn(folder: string): Promise<readonly string[]> {
    return readdir(join(this.#path, folder)).catch((error) => {
      errorCode(error);
      return [];
    });
  }

  /** Path, checksum and size of a file of any kind; undefined where there is none that can be read. */
  checksum(name: string): Promise<SourceFile | undefined> {
    return checksumOf(join(this.#path, name), `${this.area.name}/${name}`, this.area);
  }

  async readOne<T>(name: string, schema: z.ZodType<T>): Promise<Omit<RecordFile<T>, 'id'> | undefined> {
    const source = await this.readSource(name);
    return source && parseRecord(source, schema);
  }

  /** The files of a folder that describe something, sorted by id; one that cannot be read is reported. */
  async readSources(folder: string, extension: string, needed = true): Promise<NamedSource[]> {
    const entries = await this.list(folder, [extension], needed);
    const sources: NamedSource[] = [];
    for (const { id, files } of entries)
      sources.push({ id, source: await this.readSource(`${folder}/${files.get(extension)}`) });
    return sources;
  }

  async readRecords<T>(folder: string, extension: string, schema: z.ZodType<T>, needed = true): Promise<Records<T>> {
    const sources = await this.readSources(folder, extension, needed);
    const records = sources.flatMap(({ id, source }) => {
      const record = source && parseRecord(source, schema);
      return record === undefined ? [] : [{ id, ...record }];
    });
    return { ids: sources.map(({ id }) => id), records };
  }
}
