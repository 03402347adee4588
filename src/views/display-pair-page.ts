/** What the page of two displays read against each other prints. */
import type { DisplayPair, SourceFile } from '../model/bench.ts';
import { rateLabel } from '../model/rate.ts';
import { methodPath, PATHS } from '../register/paths.ts';
import { describeBasis, describeCoverageLevel } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import { describeBudget, type BudgetText } from './budget.ts';
import { noteOf, type Note } from './note.ts';
import { describeImport } from './imported-from.ts';
import type { ConditionLine } from './session-page.ts';

export interface DisplayPairPage {
  readonly pair: DisplayPair;
  readonly note: Note;
  /** `Pit monitor against Workshop panel`. */
  readonly title: string;
  readonly figure: Figure;
  /** `95 %`. */
  readonly level: string;
  readonly basis: string;
  readonly budget: BudgetText;
  readonly findings: readonly Finding[];
  readonly conditions: readonly ConditionLine[];
  /** What is said of the two displays. */
  readonly described: readonly { readonly name: string; readonly note: Note }[];
  readonly files: readonly SourceFile[];
}

export function displayPairPage({ bench, find, figure, findingsOf }: Published, id: string): DisplayPairPage {
  const pair = find.displayPair(id);
  const found = figure(`display-difference/${id}`);
  if (found === undefined) throw new Error(`no figure of the display pair '${id}'`);
  const [display, against] = [find.display(pair.display), find.display(pair.against)];
  const method = bench.methods.find((note) => note.id === pair.method);
  const chain = (links: readonly string[], last: string): string =>
    [...links.map((link) => find.link(link).name), last].join(', then ');
  const { observer, sourceTimer } = pair;
  return {
    pair,
    note: noteOf(bench, pair.notes, pair.file),
    title: `${display.name} against ${against.name}`,
    figure: found,
    level: describeCoverageLevel(found.interval?.level ?? 0),
    basis: describeBasis(found),
    budget: describeBudget(found),
    findings: findingsOf('display-pair', id),
    conditions: [
      { term: 'Shown', says: chain(pair.links, display.name), path: PATHS.chain },
      { term: 'Source', says: chain(pair.againstLinks, against.name), path: PATHS.chain },
      { term: 'Picture', says: `${sourceTimer.name}, ${rateLabel(sourceTimer.refresh)} Hz` },
      { term: 'Outputs', says: describeOutputs(pair) },
      ...(observer === undefined
        ? []
        : [{ term: 'Observer', says: `${observer.name}, ${rateLabel(observer.rate)} frames/s` }]),
      ...(method === undefined ? [] : [{ term: 'Method', says: method.title, path: methodPath(method.id) }]),
      ...(pair.importedFrom === undefined
        ? []
        : [{ term: 'Readings imported from', says: describeImport(pair.importedFrom) }]),
      ...(pair.room === undefined ? [] : [{ term: 'Room', says: pair.room }]),
    ],
    described: [display, against]
      .filter(({ description }) => description.trim() !== '')
      .map(({ name, description, file }) => ({ name, note: noteOf(bench, description, file) })),
    files: [
      pair.readingsFile,
      pair.file,
      display.file,
      against.file,
      ...[...pair.links, ...pair.againstLinks].map((link) => find.link(link).file),
      ...(bench.workbooks ?? []).filter(({ path }) => path === pair.importedFrom?.path),
    ],
  };
}

function describeOutputs({ outputs: { standardUncertaintyMs: u } }: DisplayPair): string {
  if (u === undefined) return 'two, and nobody compared them';
  return u === 0 ? 'one, through a splitter' : 'two, compared';
}
