/** What stands in the way of an import: all of it at once, each with its place in the workbook and what to do. */

export interface ImportMistake {
  /** `sheet 'Tuesday', B7`; empty for the whole file. */
  readonly where: string;
  /** Ends without a full stop. */
  readonly says: string;
}

export class ImportError extends Error {
  readonly mistakes: readonly ImportMistake[];

  constructor(mistakes: readonly ImportMistake[]) {
    super(mistakes.map(({ where, says }) => `${where}: ${says}`).join('\n'));
    this.mistakes = mistakes;
  }
}

/** The same mistake in many cells is told once, with the first places. */
const SHOWN = 4;

export function describeMistakes(file: string, mistakes: readonly ImportMistake[]): string {
  const groups = [...Map.groupBy(mistakes, ({ says }) => says)];
  const lines = groups.map(([says, all]) => {
    const places = all.map(({ where }) => where).filter((where) => where !== '');
    const more = places.length > SHOWN ? ` and ${places.length - SHOWN} more` : '';
    return `${[file, ...(places.length === 0 ? [] : [`${places.slice(0, SHOWN).join('; ')}${more}`])].join(', ')}: ${says}.`;
  });
  return `${lines.join('\n')}\n\nNothing was written.`;
}
