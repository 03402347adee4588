/**
 * Versions of what the files of a publication hold. `content/site.md` states for which one they were written; a file
 * that a later one has changed is named by every build, and `npm run bring-over` writes it anew.
 *
 * To change the format: raise `FORMAT`, add a step, and a row to the table in `src/documentation/file-formats.md`.
 */
export const FORMAT = 2;
/** Of publications that state none. */
export const FIRST_FORMAT = 1;

interface Rewritten {
  readonly text: string;
  /** Of what is no longer as it should be. */
  readonly line: number;
}

interface FormatStep {
  /** The format that it brings files to, from the one before. */
  readonly to: number;
  /** What is wrong with a file that needs it. */
  readonly says: string;
  /** undefined where a file is as it should be. */
  rewrite(path: string, text: string): Rewritten | undefined;
}

const STEPS: readonly FormatStep[] = [
  {
    to: 2,
    says: 'words of the planner stand in the notes, where they would be published; they belong into comments',
    rewrite: (path, text) => (/\/sessions\/[^/]+\.md$/.test(path) ? plannersWordsAsComments(text) : undefined),
  },
];

export interface NeededChange extends Rewritten {
  /** The format of the step that needs it first. */
  readonly to: number;
  readonly says: string;
}

/** What a file of an earlier format needs, all steps together; undefined where it needs nothing. */
export function neededChange(format: number, path: string, text: string): NeededChange | undefined {
  let needed: NeededChange | undefined;
  for (const { to, says, rewrite } of STEPS.filter((step) => step.to > format)) {
    const rewritten = rewrite(path, needed?.text ?? text);
    if (rewritten !== undefined) needed = { to, says, line: rewritten.line, ...needed, text: rewritten.text };
  }
  return needed;
}

/** As the planner wrote them under the front matter. */
const PLANNERS_WORDS =
  /^(Session \d+ of \d+, in an order drawn at random\. Plan: .+\.)\r?\n((?:Let the body warm up for|Switch the body off for) .+?\.) (If it shows a temperature warning, stop, switch it off and let it cool\.)(?:\r?\n|$)/m;

function plannersWordsAsComments(text: string): Rewritten | undefined {
  const found = PLANNERS_WORDS.exec(text);
  const [opening = ''] = /^---[ \t]*\r?\n(?:#.*\r?\n)*/.exec(text) ?? [];
  if (found === null || opening === '') return undefined;
  const ending = opening.includes('\r\n') ? '\r\n' : '\n';
  const [, plan, pause, warning] = found;
  const comments = [plan, pause, warning].map((words) => `# ${words}${ending}`).join('');
  const rest = text.slice(opening.length, found.index) + text.slice(found.index + found[0].length);
  return { text: opening + comments + rest, line: text.slice(0, found.index).split('\n').length };
}
