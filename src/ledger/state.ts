/** What is published at one moment, row by row; inputs are rows like any other. */
import { ANALYSIS_INPUT, inputId, type Inputs, type Ledger, type Published } from '../model/ledger.ts';

/** Every row by its id, inputs among them. */
export type State = ReadonlyMap<string, Published>;

/** Whether a ledger was recorded before entries were chained. */
export function isEarlierForm({ chain, head }: Ledger): boolean {
  return chain.length === 0 && head === undefined;
}

/** What `figures.csv` and `inputs.csv` hold. */
export function recordedState({ figures, ...inputs }: Pick<Ledger, 'figures' | 'analysis' | 'checksums'>): State {
  return new Map([...figures.map(({ line: _, ...row }) => row), ...inputRows(inputs)].map((row) => [row.id, row]));
}

/** Inputs as rows of the state. */
export function inputRows({ analysis, checksums }: Inputs): readonly Published[] {
  return [[ANALYSIS_INPUT, analysis] as const, ...Object.entries(checksums)].map(([name, state]) => ({
    id: inputId(name),
    text: state,
    files: '',
  }));
}
