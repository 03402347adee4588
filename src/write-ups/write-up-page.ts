/** What the page of a report or method note prints around and in its text. */
import type { WriteUp } from '../model/bench.ts';
import type { Illustration } from '../model/illustration.ts';
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
  /** Its numbers for those who speak them; of a report. */
  readonly aloud: readonly SpokenRow[];
}

export function writeUpPage(site: Published, { kind, writeUp }: PlacedWriteUp, answering: Answering): WriteUpPage {
  const { title, summary, date, author, draft, file } = writeUp;
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
    aloud:
      kind === 'report'
        ? readAloud(
            site,
            figuresShown(writeUp, answering).filter(({ id }) => shown.has(id)),
          )
        : [],
  };
}
