import { ANALYSIS_INPUT, type ChainedEntry, type Inputs, type Ledger, type LedgerEntry } from '../model/ledger.ts';
import { checkSchema } from './check-schema.ts';
import type { Folder } from './folder.ts';
import { parseChanges, parseFigures, parseRows } from './ledger-rows.ts';
import { ledgerEntrySchema, toldEntrySchema } from './schemas/ledger-entry.ts';
import type { Source } from './source.ts';
import { parseYaml } from './yaml.ts';

/** Folder in `content/`, and what belongs there. */
export const LEDGER = { folder: 'ledger', figures: 'figures.csv', inputs: 'inputs.csv', entries: 'entries' } as const;
export const INPUT_COLUMNS = ['input', 'state'] as const;
/** The input that is no file either: its state is what the last entry says. */
export const LEDGER_INPUT = 'ledger';

const SHA256 = /^[0-9a-f]{64}$/;

/**
 * Reads what was recorded; undefined where nothing ever was, or with the mistakes reported.
 *
 * @param entriesAlone leaves out the state, which follows from the entries, where a merge has left it in pieces
 */
export async function readLedger(content: Folder, entriesAlone = false): Promise<Ledger | undefined> {
  const { folder } = LEDGER;
  if (!(await content.holds(folder))) return undefined;
  await content.checkNames(folder, [LEDGER.figures, LEDGER.inputs, LEDGER.entries, 'README.md']);
  const path = `${content.area.name}/${folder}/${LEDGER.figures}`;
  const entries = await readEntries(content);
  if (entriesAlone) return { path, figures: [], analysis: '', checksums: {}, ...entries };
  const [figuresSource, inputsSource] = [
    await content.readSource(`${folder}/${LEDGER.figures}`),
    await content.readSource(`${folder}/${LEDGER.inputs}`),
  ];
  const figures = figuresSource && parseFigures(figuresSource);
  const inputs = inputsSource && parseInputs(inputsSource);
  return figures && inputs && { path, figures, ...inputs, ...entries };
}

async function readEntries(content: Folder): Promise<Pick<Ledger, 'chain' | 'told'>> {
  const folder = `${LEDGER.folder}/${LEDGER.entries}`;
  const chain: ChainedEntry[] = [];
  const told: LedgerEntry[] = [];
  for (const { id, files } of await content.list(folder, ['.yaml', '.csv'], false)) {
    const [front, table] = [files.get('.yaml'), files.get('.csv')];
    const source = front === undefined ? undefined : await content.readSource(`${folder}/${front}`);
    const tableSource = table === undefined ? undefined : await content.readSource(`${folder}/${table}`);
    if (front === undefined) tableSource?.report({ code: 'entry-half', expected: `${id}.yaml` });
    const entry = readEntry(id, source, tableSource);
    if (entry === undefined) continue;
    if ('says' in entry) chain.push(entry);
    else told.push(entry);
  }
  return { chain, told };
}

function readEntry(
  id: string,
  source: Source | undefined,
  table: Source | undefined,
): ChainedEntry | LedgerEntry | undefined {
  const changes = table && parseChanges(table);
  const yaml = source && parseYaml(new TextDecoder().decode(source.bytes).replace(/\r\n?/g, '\n'), source.report);
  if (source === undefined || yaml === undefined) return undefined;
  if (table === undefined && isTold(yaml.value)) {
    const told = checkSchema(yaml, toldEntrySchema, source.report);
    return told && { id, ...told };
  }
  const entry = checkSchema(yaml, ledgerEntrySchema, source.report);
  if (table === undefined) source.report({ code: 'entry-half', expected: `${id}.csv` });
  return entry && changes && { id, path: source.file.path, ...entry, changes };
}

/** Whether an entry is from before entries were chained: no digest in it. */
function isTold(written: unknown): boolean {
  return typeof written !== 'object' || written === null || !('says' in written);
}

export function parseInputs(source: Source): (Inputs & Pick<Ledger, 'head'>) | undefined {
  const { report } = source;
  const states = new Map<string, string>();
  const isWhole = parseRows(source, INPUT_COLUMNS, (_line, { input = '', state = '' }, check) => {
    check('input', input, input !== '', 'a file');
    if (input === ANALYSIS_INPUT) check('state', state, state !== '', 'the version of the analysis');
    else check('state', state, SHA256.test(state), 'a SHA-256 checksum, 64 hexadecimal digits');
    states.set(input, state);
  });
  if (!isWhole) return undefined;
  const [analysis, head] = [ANALYSIS_INPUT, LEDGER_INPUT].map((name) => states.get(name));
  for (const name of [ANALYSIS_INPUT, LEDGER_INPUT]) states.delete(name);
  if (analysis === undefined) {
    report({ code: 'missing-key', line: 1, key: ANALYSIS_INPUT });
    return undefined;
  }
  return { analysis, checksums: Object.fromEntries(states), ...(head === undefined ? {} : { head }) };
}
