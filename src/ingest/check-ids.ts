import type { Problem, ProblemCode } from '../model/problem.ts';
import type { FrontMatter } from './front-matter.ts';
import { nearest } from './nearest.ts';
import type { Report } from './source.ts';

/** Reports a mistake in the value of a top-level key. */
export function reportAtKey(front: FrontMatter, key: string, problem: Omit<Problem, 'file'>, report: Report): void {
  report({ ...front.locate([key]), key, ...problem });
}

/** Reports the value of a top-level key when it is not among the known ids. */
export function checkId(
  front: FrontMatter,
  key: string,
  code: ProblemCode,
  found: string,
  known: readonly string[],
  report: Report,
): void {
  if (!known.includes(found))
    reportAtKey(front, key, { code, found, choices: known, nearest: nearest(found, known) }, report);
}

/** Reports every link that is unknown, or listed twice. */
export function checkLinks(
  front: FrontMatter,
  links: readonly string[],
  known: readonly string[],
  report: Report,
): void {
  links.forEach((found, index) => {
    const here = { ...front.locate(['links', index]), key: `links.${index + 1}`, found };
    if (!known.includes(found))
      report({ code: 'unknown-link', ...here, choices: known, nearest: nearest(found, known) });
    else if (links.indexOf(found) < index) report({ code: 'duplicate-link', ...here });
  });
}
