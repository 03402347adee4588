/** Edits of a publication, one after the other, built each time from what earlier builds left, and from nothing. */
import { seededRandom } from '../../src/analysis/random.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';
import { writeGeneratedBench } from '../bench/generated-bench.ts';
import { EDITS, RECORD, type Change } from './edits.ts';

export interface Outcome {
  readonly edit: string;
  /** Whether it could be built; if not, it was taken back. */
  readonly isBuilt: boolean;
  /** Files that differ from those of the build from nothing; undefined where none was made. */
  readonly stale: readonly string[] | undefined;
}

interface RunOptions {
  readonly seed: number;
  readonly edits: number;
  /** After how many edits it is also built from nothing; after the last in any case. */
  readonly every?: number;
  readonly report?: (outcome: Outcome) => void;
}

const SESSIONS = 8;
const WRITE_UPS = 2;

export function runEdits({ seed, edits, every = edits, report = () => {} }: RunOptions): readonly Outcome[] {
  const random = seededRandom(seed).uniform;
  using kept = copyProject({ name: 'kept' });
  using anew = copyProject({ name: 'anew' });
  const both = [kept, anew];
  for (const { root } of both) writeGeneratedBench(root, { sessions: SESSIONS, writeUps: WRITE_UPS });
  const texts = readTexts(kept);
  build(kept, 'its first state');
  const names = [...Object.keys(EDITS), RECORD];
  const outcomes: Outcome[] = [];
  for (let count = 1; count <= edits; count += 1) {
    const { name, change } = drawEdit(names, texts, random, () => record(kept, texts, count));
    const before = Object.fromEntries(Object.keys(change).map((path) => [path, texts.get(path)]));
    apply(change, texts, both);
    const isBuilt = kept.run('build').code === 0;
    if (!isBuilt) {
      apply(before, texts, both);
      build(kept, `${name} was taken back`);
    }
    const stale = count % every === 0 || count === edits ? differences(kept, anew) : undefined;
    const outcome = { edit: name, isBuilt, stale };
    outcomes.push(outcome);
    report(outcome);
  }
  return outcomes;
}

function drawEdit(names: readonly string[], texts: Map<string, string>, random: () => number, recorded: () => Change) {
  for (;;) {
    const name = names[Math.floor(random() * names.length)] ?? '';
    const change = name === RECORD ? recorded() : EDITS[name]?.(texts, random);
    if (change !== undefined && Object.entries(change).some(([path, text]) => texts.get(path) !== text))
      return { name, change };
  }
}

/** Records, and says which files that wrote. */
function record(copy: ProjectCopy, texts: ReadonlyMap<string, string>, count: number): Change {
  const day = `2026-06-${String(1 + (count % 28)).padStart(2, '0')}`;
  copy.run('record', ['--reason', `Edit ${count}`, '--date', day]);
  const written = projectFiles('content/ledger', copy.root).map((path) => [path, copy.read(path)] as const);
  return Object.fromEntries(written.filter(([path, text]) => texts.get(path) !== text));
}

function apply(change: Change, texts: Map<string, string>, copies: readonly ProjectCopy[]): void {
  for (const [path, text] of Object.entries(change)) {
    if (text === undefined) {
      texts.delete(path);
      for (const copy of copies) copy.remove(path);
    } else {
      texts.set(path, text);
      for (const copy of copies) copy.write(path, text);
    }
  }
}

function readTexts(copy: ProjectCopy): Map<string, string> {
  const tool = ['src/register/kinds.ts', 'src/components/page/Measurand.astro'];
  const written = projectFiles('', copy.root).filter((path) => /^(?:data|content)\//.test(path));
  return new Map([...written, ...tool].map((path) => [path, copy.read(path)]));
}

/** By the list of checksums that each build writes. */
function differences(kept: ProjectCopy, anew: ProjectCopy): readonly string[] {
  build(anew, 'what was edited', ['--fresh']);
  const [one, other] = [kept, anew].map((copy) => new Set(copy.read('dist/lagfolio.sha256').split('\n')));
  return [...(one ?? new Set<string>()).symmetricDifference(other ?? new Set<string>())];
}

function build(copy: ProjectCopy, what: string, words: readonly string[] = []): void {
  const { code, stdout, stderr } = copy.run('build', words);
  if (code !== 0) throw new Error(`${what} was not built\n${stdout}${stderr}`);
}
