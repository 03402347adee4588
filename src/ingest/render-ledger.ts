/** The files of the ledger, as text: sorted, one figure or input a line, so that they diff well. */
import { renderCsv } from '../model/csv-text.ts';
import { Document, isMap, isSeq, visit } from 'yaml';
import { compareText } from '../model/compare-text.ts';
import { ANALYSIS_INPUT, type Cause, type ChainedEntry, type Inputs, type Published } from '../model/ledger.ts';
import { CHANGE_COLUMNS, FIGURE_COLUMNS } from './ledger-rows.ts';
import { INPUT_COLUMNS, LEDGER_INPUT } from './read-ledger.ts';

export function renderFigures(figures: readonly Published[]): string {
  const rows = figures
    .toSorted((a, b) => compareText(a.id, b.id))
    .map((figure) => FIGURE_COLUMNS.map((column) => String(figure[column] ?? '')));
  return renderCsv(FIGURE_COLUMNS, rows);
}

/** @param head what the last entry says */
export function renderInputs({ analysis, checksums }: Inputs, head: string): string {
  return renderCsv(INPUT_COLUMNS, [
    [ANALYSIS_INPUT, analysis],
    [LEDGER_INPUT, head],
    ...Object.entries(checksums).sort(([a], [b]) => compareText(a, b)),
  ]);
}

/** As YAML; what is empty is left out. */
export function renderEntry({
  date,
  reason,
  analysis,
  before,
  says,
  causes,
}: Omit<ChainedEntry, 'id' | 'path' | 'changes'>): string {
  const document = new Document({
    date,
    reason,
    analysis,
    ...(before === undefined ? {} : { before }),
    says,
    ...(causes.length > 0 ? { causes: causes.map((set) => set.map(writeCause)) } : {}),
  });
  visit(document, {
    // everything below the causes stands on one line each
    Collection(_key, node, path) {
      if ((isSeq(node) || isMap(node)) && path.length > 3) node.flow = true;
    },
  });
  return document.toString({ lineWidth: 0 });
}

/** The table beside an entry, in the order given. */
export function renderChanges(changes: ChainedEntry['changes']): string {
  return renderCsv(
    CHANGE_COLUMNS,
    changes.map(({ id, was, now, cause }) =>
      CHANGE_COLUMNS.map((column) =>
        String((column === 'id' ? id : column === 'was' ? was : column === 'cause' ? cause : now?.[column]) ?? ''),
      ),
    ),
  );
}

function writeCause(cause: Cause): Readonly<Record<string, unknown>> {
  switch (cause.kind) {
    case 'changed':
    case 'new':
    case 'gone':
      return { [cause.kind]: cause.file, ...(cause.own ? {} : { aside: true }) };
    case 'renamed':
    case 'analysis':
      return { [cause.kind]: [cause.from, cause.to] };
    case 'regrouped':
      return { regrouped: true };
    case 'code':
      return { code: cause.analysis };
  }
}
