/** What `npm run import` takes, from text to values. */
import type { Clock, DecimalMark, Unit } from '../import/amounts.ts';
import { CLIP_MANNERS } from '../import/clips.ts';
import { ROLES, type Role } from '../import/columns.ts';
import { SEPARATORS } from '../import/read-delimited.ts';
import type { ImportOptions } from '../import/understand.ts';
import type { MethodId } from '../model/bench.ts';
import { CallError, type CommandOptions } from './run.ts';

export const READING_OPTIONS = {
  sheet: { type: 'string' },
  'heading-row': { type: 'string' },
  column: { type: 'string', multiple: true },
  rows: { type: 'string' },
  clips: { type: 'string' },
  unit: { type: 'string' },
  decimal: { type: 'string' },
  decimals: { type: 'string' },
  clock: { type: 'string' },
  reason: { type: 'string' },
  computed: { type: 'boolean' },
  separator: { type: 'string' },
  encoding: { type: 'string' },
} as const;

export const READING_USAGE = `Where the workbook leaves something open, one of these says it:

  --sheet NAME          the sheet, where several hold readings
  --heading-row NUMBER  the row of the headings; 0 where there is none
  --column ROLE=NAME    which column holds what: ${ROLES.join(', ')}; by its heading or letter
  --rows FROM-TO        read these rows only, as the sheet counts them
  --clips HOW           ${CLIP_MANNERS.join(', ')}: how rows belong to clips
  --unit UNIT           what plain numbers count: s, ms
  --decimal MARK        what stands before decimals: point, comma
  --decimals NUMBER     how many decimals every time has
  --clock FORM          what times that show hours and minutes mean: mm:ss, hh:mm
  --reason TEXT         why readings are left out that are only marked
  --computed            readings may be computed by formulas
  --separator NAME      what separates columns of text: ${Object.keys(SEPARATORS).join(', ')}
  --encoding NAME       how letters of text are stored: utf-8, windows-1252, …`;

const MOST_DECIMALS = 9;

export function readImportOptions(options: CommandOptions<typeof READING_OPTIONS>, method: MethodId): ImportOptions {
  const headingRow = options['heading-row'];
  choice('separator', options['separator'], Object.keys(SEPARATORS));
  return {
    method,
    sheet: options['sheet'],
    said: new Map((options['column'] ?? []).map(columnOf)),
    headingRow: headingRow === undefined ? undefined : whole('heading-row', headingRow),
    rows: rowsOf(options['rows']),
    clips: choice('clips', options['clips'], CLIP_MANNERS),
    unit: choice<Unit>('unit', options['unit'], ['s', 'ms']),
    decimal: choice<DecimalMark>('decimal', options['decimal'], ['point', 'comma']),
    decimals: decimalsOf(options['decimals']),
    clock: choice<Clock>('clock', options['clock'], ['mm:ss', 'hh:mm']),
    reason: options['reason'],
    computed: options['computed'],
  };
}

function columnOf(text: string): readonly [Role, string] {
  const [, name = '', said = ''] = /^([^=]*)=(.*)$/s.exec(text) ?? [];
  const role = ROLES.find((each) => each === name.trim());
  if (role === undefined || said.trim() === '')
    throw new CallError(
      `--column says which column holds what, as in --column source="Timer (s)": one of ${ROLES.join(', ')}, then a heading or a letter; not '${text}'.`,
    );
  return [role, said];
}

function rowsOf(text: string | undefined): readonly [number, number] | undefined {
  if (text === undefined) return undefined;
  const [, from, to] = /^(\d+)-(\d+)$/.exec(text.trim()) ?? [];
  if (from === undefined || to === undefined || Number(from) < 1 || Number(to) < Number(from))
    throw new CallError(`--rows takes the first and the last row, as in --rows 5-24, not '${text}'.`);
  return [Number(from), Number(to)];
}

function decimalsOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const decimals = whole('decimals', text);
  if (decimals > MOST_DECIMALS) throw new CallError(`--decimals is at most ${MOST_DECIMALS}.`);
  return decimals;
}

function whole(option: string, text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new CallError(`--${option} is a whole number, not '${text}'.`);
  return Number(text);
}

function choice<T extends string>(option: string, text: string | undefined, choices: readonly T[]): T | undefined {
  if (text === undefined) return undefined;
  const found = choices.find((each) => each === text);
  if (found === undefined) throw new CallError(`--${option} is ${choices.join(' or ')}, not '${text}'.`);
  return found;
}
