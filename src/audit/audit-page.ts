/** Reads a built page as a reader would, and finds every number with a unit that nothing accounts for. */
import type { Problem } from '../model/problem.ts';
import { bare } from '../verify/html.ts';
import { isAccounted } from './marks.ts';
import { printedNumbers } from './numbers.ts';
import { blocksOf, type Block } from './page-text.ts';
import type { Site } from './site-facts.ts';

/** A number that is no figure, no raw reading, no setting, no quotation and no fact of the file that its mark names. */
export interface Unaccounted {
  /** Site path of the page. */
  readonly page: string;
  readonly number: string;
  /** What stands around it. */
  readonly around: string;
}

export interface PageAudit {
  /** How many numbers with a unit were read. */
  readonly read: number;
  readonly unaccounted: readonly Unaccounted[];
}

const AROUND = 40;

export function auditPage(page: string, html: string, site: Site): PageAudit {
  let read = 0;
  const unaccounted = blocksOf(html).flatMap((block) => {
    const text = block.stretches.map((stretch) => stretch.text).join('');
    return printedNumbers(text, block.unit).flatMap((number) => {
      read += 1;
      if (site.isSetting(number)) return [];
      const isFine = under(block, number.index, number.text.length).every(({ within }) =>
        isAccounted(within, { number, page, heads: block.heads ?? [] }, site),
      );
      if (isFine) return [];
      const around = bare(text.slice(Math.max(0, number.index - AROUND), number.index + number.text.length + AROUND));
      return [{ page, number: number.text, around }];
    });
  });
  return { read, unaccounted };
}

/** The stretches that hold a part of it, blanks aside. */
function under({ stretches }: Block, index: number, length: number): Block['stretches'] {
  let start = 0;
  return stretches.filter(({ text }) => {
    const from = start;
    start += text.length;
    return (
      from < index + length &&
      start > index &&
      text.slice(Math.max(0, index - from), index + length - from).trim() !== ''
    );
  });
}

/** What a strict build refuses. */
export function auditProblems({ unaccounted }: PageAudit): readonly Problem[] {
  return unaccounted.map(({ page, number, around }) => ({
    code: 'unaccounted-number',
    file: page,
    found: number,
    expected: around,
  }));
}
