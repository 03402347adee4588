import type { Inputs, Ledger, LedgerEntry, Recorded } from '../model/ledger.ts';
import { checkSchema } from './check-schema.ts';
import { parseCsv } from './csv.ts';
import type { Folder } from './folder.ts';
import { ledgerEntrySchema } from './schemas/ledger-entry.ts';
import type { Source } from './source.ts';
import { parseYaml } from './yaml.ts';

/** Folder in `content/`, and what belongs there. */
export const LEDGER = { folder: 'ledger', figures: 'figures.csv', inputs: 'inputs.csv', entries: 'entries' } as const;
export const FIGURE_COLUMNS = ['id', 'text', 'value', 'low', 'high', 'files'] as const;
export const INPUT_COLUMNS = ['input', 'state'] as const;
/** The input that is no file: its state is the version of the analysis. */
export const ANALYSIS_INPUT = 'analysis';

const NUMBER = /^-?(?:\d+(?:\.\d+)?(?:e[+-]\d+)?|Infinity)$/;
const ID = /^[^\s/]+(?:\/[^\s/]+)+$/;
const DIGEST = /^[0-9a-f]{8}$/;
const SHA256 = /^[0-9a-f]{64}$/;
/** Left by version control where two records of the same line met. */
const CONFLICT = /^(?:<{7}|={7}|>{7})(?: |$)/;

/** Reads what was recorded; undefined where nothing ever was, or with the mistakes reported. */
export async function readLedger(content: Folder): Promise<Ledger | undefined> {
  const { folder } = LEDGER;
  if (!(await content.holds(folder))) return undefined;
  await content.checkNames(folder, [LEDGER.figures, LEDGER.inputs, LEDGER.entries, 'README.md']);
  const [figuresSource, inputsSource] = [
    await content.readSource(`${folder}/${LEDGER.figures}`),
    await content.readSource(`${folder}/${LEDGER.inputs}`),
  ];
  const figures = figuresSource && parseFigures(figuresSource);
  const inputs = inputsSource && parseInputs(inputsSource);
  const entries: LedgerEntry[] = [];
  for (const { id } of await content.list(`${folder}/${LEDGER.entries}`, ['.yaml'], false)) {
    const source = await content.readSource(`${folder}/${LEDGER.entries}/${id}.yaml`);
    const entry = source && parseEntry(source);
    if (entry) entries.push({ id, ...entry });
  }
  if (!figuresSource || !figures || !inputs) return undefined;
  return {
    path: figuresSource.file.path,
    figures,
    ...inputs,
    entries: entries.sort((a, b) => compare(b.date, a.date) || compare(a.id, b.id)),
  };
}

function parseFigures(source: Source): readonly Recorded[] | undefined {
  const { report } = source;
  const figures: Recorded[] = [];
  const seen = new Set<string>();
  const rows = parseRows(
    source,
    FIGURE_COLUMNS,
    (line, [id = '', text = '', value = '', low = '', high = '', files = '']) => {
      const check = (key: string, found: string, fits: boolean, expected: string): void => {
        if (!fits) report({ code: 'bad-record', line, key, found, expected });
      };
      check('id', id, ID.test(id), 'an id such as total/a');
      check('text', text, text.trim() !== '', 'the published text');
      for (const [key, cell] of [
        ['value', value],
        ['low', low],
        ['high', high],
      ] as const)
        check(key, cell, cell === '' || NUMBER.test(cell), 'a number');
      check('files', files, DIGEST.test(files), 'eight hexadecimal digits');
      if (seen.has(id)) report({ code: 'repeated-record', line, key: 'id', found: id });
      seen.add(id);
      figures.push({
        id,
        text,
        ...number('value', value),
        ...number('low', low),
        ...number('high', high),
        files,
        line,
      });
    },
  );
  return rows === undefined ? undefined : figures;
}

function parseInputs(source: Source): Inputs | undefined {
  const { report } = source;
  const states = new Map<string, string>();
  const rows = parseRows(source, INPUT_COLUMNS, (line, [input = '', state = '']) => {
    if (input === '') report({ code: 'bad-record', line, key: 'input', found: input, expected: 'a file' });
    if (states.has(input)) report({ code: 'repeated-record', line, key: 'input', found: input });
    if (input === ANALYSIS_INPUT ? state === '' : !SHA256.test(state)) {
      report({
        code: 'bad-record',
        line,
        key: 'state',
        found: state,
        expected:
          input === ANALYSIS_INPUT ? 'the version of the analysis' : 'a SHA-256 checksum, 64 hexadecimal digits',
      });
    }
    states.set(input, state);
  });
  if (rows === undefined) return undefined;
  const analysis = states.get(ANALYSIS_INPUT);
  states.delete(ANALYSIS_INPUT);
  if (analysis === undefined) report({ code: 'missing-key', line: 1, key: ANALYSIS_INPUT });
  return analysis === undefined ? undefined : { analysis, checksums: Object.fromEntries(states) };
}

function parseEntry(source: Source): Omit<LedgerEntry, 'id'> | undefined {
  const yaml = parseYaml(new TextDecoder().decode(source.bytes).replace(/\r\n?/g, '\n'), source.report);
  return yaml && checkSchema(yaml, ledgerEntrySchema, source.report);
}

/** Marks of a merge that is not finished are reported as that, not as rows with too few cells. */
function parseRows(
  { bytes, report }: Source,
  columns: readonly string[],
  onRow: (line: number, cells: readonly string[]) => void,
): number | undefined {
  const lines = new TextDecoder().decode(bytes).split('\n');
  const conflict = lines.findIndex((line) => CONFLICT.test(line));
  if (conflict < 0) return parseCsv(bytes, columns, report, ({ line, cells }) => onRow(line, cells));
  report({ code: 'merge-conflict', line: conflict + 1 });
  return undefined;
}

function number<K extends string>(key: K, cell: string): Partial<Record<K, number>> {
  return (cell === '' ? {} : { [key]: Number(cell) }) as Partial<Record<K, number>>;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
