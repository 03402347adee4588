/**
 * The register as it is published: what many figures have in common stands once, and they refer to it by its place.
 *
 *     files      each file that figures rest on                                figure.sources ┐
 *     sources    each list of such files, by their places in `files`        ←─────────────────┘
 *     lines      each kind of line of a budget, without its size            ←  figure.components[n][0]
 *     words      sentences and titles                                       ←  figure.inWords, figure.group
 *
 * Each of their items, and each figure, is a line of the file.
 */
import type { Component, Figure, FigureSource, Register } from './register.ts';
import { REGISTER_FORMAT, SCHEMA_FILE } from './register-schema.ts';

type BudgetLine = Omit<Component, 'standardUncertainty' | 'share'>;
type PackedComponent = readonly [line: number, standardUncertainty: number, share: number];

interface PackedFigure extends Omit<Figure, 'sources' | 'components' | 'inWords' | 'group' | 'own'> {
  readonly components?: readonly PackedComponent[];
  readonly sources: number;
  readonly group?: number;
  readonly inWords?: readonly number[];
}

interface PackedRegister extends Omit<Register, 'figures'> {
  readonly $schema: string;
  readonly format: typeof REGISTER_FORMAT;
  readonly files: readonly FigureSource[];
  readonly sources: readonly (readonly number[])[];
  readonly lines: readonly BudgetLine[];
  readonly words: readonly string[];
  readonly figures: readonly PackedFigure[];
}

/** The text of `figures.json`. */
export function renderPacked(register: Register): string {
  const { $schema, format, analysis, ...lists } = pack(register);
  const head = Object.entries({ $schema, format, analysis }).map(
    ([name, value]) => `${JSON.stringify(name)}: ${JSON.stringify(value)}`,
  );
  const { files, sources, lines, words, figures, findings } = lists;
  const bodies = Object.entries({ files, sources, lines, words, figures, findings }).map(
    ([name, items]) =>
      `${JSON.stringify(name)}: [${items.map((item) => `\n${JSON.stringify(item)}`).join(',')}${items.length > 0 ? '\n' : ''}]`,
  );
  return `{\n${[...head, ...bodies].join(',\n')}\n}\n`;
}

/** The register of a `figures.json`, or of what `npm run figures` prints. Throws where it is neither. */
export function readRegister(text: string): Register {
  const stated = JSON.parse(text) as PackedRegister | Register;
  if (!Array.isArray(stated.figures)) throw new Error('it states no figures');
  if (!('format' in stated)) return stated as Register;
  if (stated.format !== REGISTER_FORMAT)
    throw new Error(`it is of format ${String(stated.format)}, and only ${REGISTER_FORMAT} can be read`);
  return unpack(stated);
}

function pack({ analysis, figures, findings }: Register): PackedRegister {
  const files = new Places<FigureSource>(({ file, sha256 }) => `${file} ${sha256}`);
  const sources = new Places<readonly number[]>((list) => list.join());
  const lines = new Places<BudgetLine>((line) => JSON.stringify(line));
  const words = new Places<string>((text) => text);
  const packComponent = (component: Component): PackedComponent => {
    const { name, type, distribution, degreesOfFreedom, shared, standardUncertainty, share } = component;
    return [lines.of({ name, type, distribution, degreesOfFreedom, shared }), standardUncertainty, share];
  };
  const packed = figures.map(
    ({ own: _, sources: from, components, group, inWords, ...figure }): PackedFigure => ({
      ...figure,
      ...(components === undefined ? {} : { components: components.map(packComponent) }),
      sources: sources.of(from.map((source) => files.of(source))),
      ...(group === undefined ? {} : { group: words.of(group) }),
      ...(inWords === undefined ? {} : { inWords: sentencesOf(inWords).map((sentence) => words.of(sentence)) }),
    }),
  );
  return {
    $schema: SCHEMA_FILE,
    format: REGISTER_FORMAT,
    analysis,
    files: files.items,
    sources: sources.items,
    lines: lines.items,
    words: words.items,
    figures: packed,
    findings,
  };
}

function unpack({ analysis, files, sources, lines, words, figures, findings }: PackedRegister): Register {
  const lists = sources.map((list) => list.map((place) => at(files, place)));
  const unpackComponent = ([line, standardUncertainty, share]: PackedComponent): Component => ({
    ...at(lines, line),
    standardUncertainty,
    share,
  });
  return {
    analysis,
    figures: figures.map(({ sources: from, components, group, inWords, ...figure }) => ({
      ...figure,
      ...(components === undefined ? {} : { components: components.map(unpackComponent) }),
      sources: at(lists, from),
      ...(group === undefined ? {} : { group: at(words, group) }),
      ...(inWords === undefined ? {} : { inWords: inWords.map((place) => at(words, place)).join(' ') }),
    })),
    findings,
  };
}

function sentencesOf(text: string): readonly string[] {
  return text.split(/(?<=\.) /);
}

function at<T>(items: readonly T[], place: number): T {
  const item = items[place];
  if (item === undefined) throw new Error(`it refers to item ${place} of ${items.length}`);
  return item;
}

/** Each of several items once, in the order in which they first come. */
class Places<T> {
  readonly items: T[] = [];
  readonly #places = new Map<string, number>();
  readonly #keyOf: (item: T) => string;

  constructor(keyOf: (item: T) => string) {
    this.#keyOf = keyOf;
  }

  of(item: T): number {
    const key = this.#keyOf(item);
    const known = this.#places.get(key);
    if (known !== undefined) return known;
    this.#places.set(key, this.items.length);
    return this.items.push(item) - 1;
  }
}
