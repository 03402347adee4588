/** What the home page prints. */
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { answerOf, type Answer } from './answer.ts';
import { inPractice, type InPractice } from './in-practice.ts';
import { noteOf, type Note } from './note.ts';
import { reportLines, type ReportLine } from './lists.ts';

export interface HomePage {
  readonly title: string;
  readonly tagline: string;
  readonly introduction: Note;
  readonly answer: Answer;
  /** Of the body that the answer names first. */
  readonly practice: InPractice | undefined;
  readonly reports: readonly ReportLine[];
  readonly totals: Totals | undefined;
}

interface Totals {
  readonly bodies: Figure;
  readonly sessions: Figure;
  readonly readings: Figure;
  readonly excluded: Figure;
}

export function homePage(site: Published): HomePage {
  const { title, tagline, introduction, file } = site.bench.site;
  const answer = answerOf(site);
  return {
    title,
    tagline,
    introduction: noteOf(site.bench, introduction, file),
    answer,
    practice: answer.lowest === undefined ? undefined : inPractice(site, answer.lowest),
    reports: reportLines(site.bench),
    totals: totalsOf(site),
  };
}

/** How much was measured in all; undefined before the first session. */
function totalsOf({ figure }: Pick<Published, 'figure'>): Totals | undefined {
  const [bodies, sessions, readings, excluded] = ['bodies', 'sessions', 'readings', 'excluded'].map((name) =>
    figure(`count/${name}`),
  );
  return bodies && sessions && readings && excluded ? { bodies, sessions, readings, excluded } : undefined;
}
