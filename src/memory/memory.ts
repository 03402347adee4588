/**
 * Results that were computed before, by what they were computed from: kept while the program runs, and on disk from one
 * run to the next where a command has said in which folder. That folder can be deleted at any time.
 *
 * Imported by its name in package.json, `lagfolio/memory`, where pages use it: they and the command then have one.
 */
import { hash } from 'node:crypto';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { codeVersion } from './code-version.ts';
import { Shelf } from './shelf.ts';

const MEBIBYTE = 2 ** 20;
const LIMIT_BYTES = 128 * MEBIBYTE;

interface Keeping {
  readonly folder: string;
  /** Whether what is there is passed over: everything is computed, and kept anew. */
  readonly fresh: boolean;
  /** Whether what is computed is put there. */
  readonly writes: boolean;
}

export interface Remembered<Input, Result, Kept> {
  /** Of the folder in which its results are kept. */
  readonly name: string;
  /** Folders of the tool that decide what comes out: results of other code are not used. */
  readonly code: readonly string[];
  readonly compute: (input: Input) => Result;
  /** What is kept of a result on disk, as plain data, and how it is made of that again. */
  readonly keep: (result: Result) => Kept;
  readonly restore: (kept: Kept, input: Input) => Result;
}

let keeping: Keeping | undefined;

export { codeVersion } from './code-version.ts';

/** Keeps results in a folder from now on; without one, only as long as the program runs. */
export function keepResultsIn(folder: string | undefined, { fresh = false } = {}): void {
  keeping = folder === undefined ? undefined : { folder, fresh, writes: true };
}

/** Takes results over from a folder from now on, and leaves it as it is. */
export function recallResultsFrom(folder: string): void {
  keeping = { folder, fresh: false, writes: false };
}

/** Keeps within bounds what is there, kind by kind. */
export function sweepResults(): void {
  if (keeping === undefined || !existsSync(keeping.folder)) return;
  for (const kind of readdirSync(keeping.folder)) new Shelf(join(keeping.folder, kind), LIMIT_BYTES).sweep();
}

/** The name of a result by what it is computed from: plain data. Numbers that JSON has no word for stay apart. */
export function nameOf(version: string, input: unknown): string {
  const text = JSON.stringify(input, (_key, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? { number: String(value) } : value,
  );
  return hash('sha256', `${version}\n${text}`);
}

/** Where the results of one kind are kept on disk; undefined where none are. */
export class Store {
  readonly #name: string;
  readonly #code: readonly string[];
  #version: string | undefined;
  #opened: { readonly folder: string; readonly shelf: Shelf } | undefined;

  constructor(name: string, code: readonly string[]) {
    this.#name = name;
    this.#code = code;
  }

  nameOf(input: unknown): string {
    this.#version ??= codeVersion(this.#code);
    return nameOf(this.#version, input);
  }

  get(name: string): unknown {
    if (keeping?.fresh !== false) return undefined;
    const bytes = this.#shelf?.get(name);
    return bytes && deserialize(bytes);
  }

  put(name: string, kept: unknown): void {
    if (keeping?.writes === true) this.#shelf?.put(name, serialize(kept));
  }

  get #shelf(): Shelf | undefined {
    if (keeping === undefined) return undefined;
    if (this.#opened?.folder !== keeping.folder)
      this.#opened = { folder: keeping.folder, shelf: new Shelf(join(keeping.folder, this.#name), LIMIT_BYTES) };
    return this.#opened.shelf;
  }
}

/** A pure function that remembers. */
export class Memory<Input, Result, Kept = Result> {
  readonly #function: Remembered<Input, Result, Kept>;
  readonly #store: Store;
  readonly #known = new Map<string, Result>();
  readonly #used = new Set<string>();

  constructor(remembered: Remembered<Input, Result, Kept>) {
    this.#function = remembered;
    this.#store = new Store(remembered.name, remembered.code);
  }

  readonly recall = (input: Input): Result => {
    const name = this.#store.nameOf(input);
    const result = this.#known.get(name) ?? this.#restored(name, input) ?? this.#computed(name, input);
    this.#known.set(name, result);
    this.#used.add(name);
    return result;
  };

  /** Whether a result is there without being computed. */
  knows(input: Input): boolean {
    const name = this.#store.nameOf(input);
    const result = this.#known.get(name) ?? this.#restored(name, input);
    if (result !== undefined) this.#known.set(name, result);
    return result !== undefined;
  }

  /** Takes over a result that was computed elsewhere, as it is kept. */
  learn(input: Input, kept: Kept): void {
    const name = this.#store.nameOf(input);
    this.#known.set(name, this.#function.restore(kept, input));
    this.#store.put(name, kept);
  }

  /** Forgets what nobody has asked for since this was last called. */
  forgetUnused(): void {
    for (const name of this.#known.keys()) if (!this.#used.has(name)) this.#known.delete(name);
    this.#used.clear();
  }

  #restored(name: string, input: Input): Result | undefined {
    const kept = this.#store.get(name);
    return kept === undefined ? undefined : this.#function.restore(kept as Kept, input);
  }

  #computed(name: string, input: Input): Result {
    const result = this.#function.compute(input);
    this.#store.put(name, this.#function.keep(result));
    return result;
  }
}
