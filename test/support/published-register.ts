/**
 * The figures of a published `figures.json`, spelled out from what its schema says and from nothing of `src`: files,
 * lists of them, lines of budgets and words stand once, and a figure names their places.
 */
interface Source {
  readonly file: string;
  readonly sha256: string;
}

interface Line {
  readonly name: string;
  readonly shared: string | null;
}

interface Stated {
  readonly format: number;
  readonly analysis: string;
  readonly files: readonly Source[];
  readonly sources: readonly (readonly number[])[];
  readonly lines: readonly Line[];
  readonly words: readonly string[];
  readonly figures: readonly (Readonly<Record<string, unknown>> & {
    readonly sources: number;
    readonly components?: readonly (readonly [line: number, standardUncertainty: number, share: number])[];
    readonly group?: number;
    readonly inWords?: readonly number[];
  })[];
}

/** @param Figure what the caller looks at */
export function readPublishedRegister<Figure>(text: string): {
  readonly analysis: string;
  readonly figures: readonly Figure[];
} {
  const { format, analysis, files, sources, lines, words, figures } = JSON.parse(text) as Stated;
  if (format !== 2) throw new Error(`a register of format ${format}`);
  return {
    analysis,
    figures: figures.map(
      ({ sources: list, components, group, inWords, ...rest }) =>
        ({
          ...rest,
          sources: sources[list]?.map((place) => files[place]),
          ...(components && {
            components: components.map(([line, standardUncertainty, share]) => ({
              ...lines[line],
              standardUncertainty,
              share,
            })),
          }),
          ...(group !== undefined && { group: words[group] }),
          ...(inWords && { inWords: inWords.map((place) => words[place]).join(' ') }),
        }) as Figure,
    ),
  };
}
