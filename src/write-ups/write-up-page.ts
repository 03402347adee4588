/** What the page of a report or method note prints around and in its text. */
import type { WriteUp } from '../model/bench.ts';
import type { Illustration } from '../model/illustration.ts';
import { readAloudPath, reportPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { reportChanges, type ReportChange } from '../views/corrections-page.ts';
import { illustrationsIn } from '../views/note.ts';
import { readAloud, type SpokenRow } from '../views/read-aloud.ts';
import { answersOf, type Answers } from './answers.ts';
import type { Answering } from './parts/definition.ts';
import { figuresShown, statementsShown } from './statements-shown.ts';
import type { PlacedWriteUp } from './write-up-kind.ts';

export interface WriteUpPage extends Pick<WriteUp, 'title' | 'summary' | 'date' | 'author' | 'draft'> {
  /** Whose text is printed, and its digest. */
  readonly file: string;
  readonly sha256: string;
  readonly answers: Answers;
  readonly illustrations: readonly Illustration[];
  /** What moved after it came out. */
  readonly changes: readonly ReportChange[];
  /** Site path of its numbers for those who speak them; of a report. */
  readonly aloud?: string;
}

export function writeUpPage(site: Published, { kind, writeUp }: PlacedWriteUp, answering: Answering): WriteUpPage {
  const { id, title, summary, date, author, draft, file } = writeUp;
  const shown = statementsShown(writeUp, answering);
  return {
    title,
    summary,
    date,
    ...(author === undefined ? {} : { author }),
    ...(draft === true ? { draft } : {}),
    file: file.path,
    sha256: file.sha256,
    answers: Object.fromEntries(answersOf(writeUp, answering).map(({ key, view }) => [key, view])),
    illustrations: illustrationsIn(site.bench, file.path),
    changes: kind === 'report' ? reportChanges(site, shown, writeUp) : [],
    ...(kind === 'report' ? { aloud: readAloudPath(id) } : {}),
  };
}

/** What the page with the numbers of a report, as they are read aloud, prints. */
export interface ReadAloudPage extends Pick<WriteUp, 'title'> {
  readonly path: string;
  readonly rows: readonly SpokenRow[];
}

export function readAloudPage(site: Published, { writeUp }: PlacedWriteUp, answering: Answering): ReadAloudPage {
  const shown = statementsShown(writeUp, answering);
  const figures = figuresShown(writeUp, answering).filter(({ id }) => shown.has(id));
  return { title: writeUp.title, path: reportPath(writeUp.id), rows: readAloud(site, figures) };
}
