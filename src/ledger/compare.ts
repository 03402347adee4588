import { filesShown } from '../model/illustration.ts';
import type { Bench } from '../model/bench.ts';
import {
  ANALYSIS_INPUT,
  inputId,
  isInputId,
  type Cause,
  type Inputs,
  type Ledger,
  type Move,
  type Withdrawal,
} from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { publishedFiles } from '../register/published-files.ts';
import type { Register } from '../register/register.ts';
import { causeFinder } from './causes.ts';
import { describeMove, isSame } from './moves.ts';
import { renamedId, renamesBetween, type Rename } from './renames.ts';
import { recordedState, type State } from './state.ts';
import { replay } from './replay.ts';
import { statementsOf, type Statement } from './statements.ts';
import { namesOfRenamed, underNames } from './under-names.ts';

interface Explained {
  /** Of `content/ledger/figures.csv`, where it stands there. */
  readonly line?: number;
  /** At least one. */
  readonly causes: readonly Cause[];
}

/** What is published now against what was recorded. */
export interface Changes {
  readonly moved: readonly (Move & Explained)[];
  readonly gone: readonly (Withdrawal & Explained)[];
  /** Ids of what is new. */
  readonly added: readonly string[];
  readonly unchanged: number;
  /** What was renamed, and every statement that has another id by it, moved or not. */
  readonly renames: readonly Rename[];
  readonly renamed: readonly { readonly id: string; readonly was: string }[];
  /** Where the ledger itself does not hold together, or has the form of before. */
  readonly faults: readonly Problem[];
}

/** Compares a bench and its register with the ledger; where there is none, everything is new. Pure. */
export function compareWithLedger(bench: Bench, register: Register): Changes {
  const statements = statementsOf(bench, register);
  const { ledger } = bench;
  if (ledger === undefined)
    return {
      moved: [],
      gone: [],
      added: statements.map(({ id }) => id),
      renames: [],
      renamed: [],
      unchanged: 0,
      faults: [],
    };
  const { faults } = replay(ledger);
  const changes = compareWithState(baseOf(ledger), statements, inputsOf(bench, register));
  const lines = new Map(ledger.figures.map(({ id, line }) => [id, line]));
  const placed = <Each extends { readonly id: string }>(each: Each): Each & { readonly line?: number } => {
    const line = lines.get(each.id);
    return line === undefined ? each : { ...each, line };
  };
  return { ...changes, moved: changes.moved.map(placed), gone: changes.gone.map(placed), faults };
}

/** What the site said last: by the entries where they can be replayed, else by the list of figures. */
export function baseOf(ledger: Ledger): State {
  const { state, faults } = replay(ledger);
  return faults.every(({ code }) => ROW_FAULTS.has(code)) ? state : recordedState(ledger);
}

const ROW_FAULTS = new Set<Problem['code']>(['row-missing', 'row-edited', 'row-unrecorded']);

/** The same against any state of the past. */
export function compareWithState(base: State, statements: readonly Statement[], inputs: Inputs): Changes {
  const recorded = inputsOfState(base);
  const known = alsoRecorded(recorded, inputs);
  const renames = renamesBetween(recorded, known);
  const causes = causeFinder(recorded, known, renames);
  const published = new Set(statements.map(({ id }) => id));
  const lost = [...base.keys()].filter((id) => !isInputId(id) && !published.has(id));
  const formerOf = new Map(
    renames.length === 0
      ? []
      : lost.flatMap((was) => {
          const id = renamedId(was, renames, (one) => published.has(one) && !base.has(one));
          return id === undefined ? [] : [[id, was] as const];
        }),
  );
  const renamed = [...formerOf].map(([id, was]) => ({ id, was }));
  const names = namesOfRenamed(renamed);
  const moved = statements.flatMap((now) => {
    const was = formerOf.get(now.id);
    const before = base.get(was ?? now.id);
    if (before === undefined || isSame(underNames(before, names), now)) return [];
    const said = { id: now.id, ...(was === undefined ? {} : { was }), ...describeMove(before, now) };
    return [{ ...said, causes: causes.ofMoved(now, before) }];
  });
  const taken = new Set(formerOf.values());
  const gone = lost
    .filter((id) => !taken.has(id))
    .flatMap((id) => base.get(id) ?? [])
    .map((before) => ({ id: before.id, from: before.text, causes: causes.ofGone(before) }));
  const added = statements.filter(({ id }) => !base.has(id) && !formerOf.has(id)).map(({ id }) => id);
  return {
    moved,
    gone,
    added,
    renamed,
    renames,
    unchanged: statements.length - moved.length - added.length,
    faults: [],
  };
}

/** Without write-ups where these were no inputs yet: then they are none that changed. */
function alsoRecorded({ checksums: recorded }: Inputs, now: Inputs): Inputs {
  const isWritten = (path: string): boolean => path.endsWith('.mdx') || path.endsWith('/site.md');
  if (Object.keys(recorded).some(isWritten)) return now;
  return { ...now, checksums: Object.fromEntries(Object.entries(now.checksums).filter(([path]) => !isWritten(path))) };
}

export function inputsOf(bench: Bench, { analysis }: Pick<Register, 'analysis'>): Inputs {
  // write-ups and the words of the site say numbers and choose margins, and are published as pages
  const written = [bench.site, ...bench.methods, ...bench.reports].map(({ file }) => file);
  const shown = (bench.illustrations ?? []).flatMap(({ shows }) => filesShown(shows));
  const files = [...publishedFiles(bench), ...written, ...shown];
  return { analysis, checksums: Object.fromEntries(files.map(({ path, sha256 }) => [path, sha256])) };
}

/** The inputs among the rows of a state. */
export function inputsOfState(state: State): Inputs {
  const files = [...state.values()]
    .filter(({ id }) => isInputId(id) && id !== inputId(ANALYSIS_INPUT))
    .map(({ id, text }) => [id.slice(inputId('').length), text]);
  return { analysis: state.get(inputId(ANALYSIS_INPUT))?.text ?? '', checksums: Object.fromEntries(files) };
}

/** Whether nothing moved, went or came. */
export function isUnchanged({ moved, gone, added, renames }: Changes): boolean {
  return moved.length + gone.length + added.length + renames.length === 0;
}
