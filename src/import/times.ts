/** Cells of times → times as they stand in a session, all with the same decimals, and every conversion by name. */
import { amountOf, clockText, type Amount, type AmountOptions } from './amounts.ts';
import type { ImportMistake } from './mistakes.ts';
import type { Cell } from './sheet.ts';

export interface PlacedCell {
  readonly cell: Cell;
  /** `sheet 'Tuesday', B7`. */
  readonly where: string;
}

export interface Times {
  /** By cell. */
  readonly texts: ReadonlyMap<Cell, string>;
  /** What was done to how many cells. */
  readonly conversions: readonly string[];
  readonly mistakes: readonly ImportMistake[];
}

const MOST_DECIMALS = 6;
/** Of a stored time that is told: what lies beyond is rounding. */
const SHOWN_DECIMALS = 10;

/** Where something stands in the way, what would be asked after the answers is asked with it. */
export function convertTimes(cells: readonly PlacedCell[], date1904: boolean, options: AmountOptions): Times {
  const found = convert(cells, date1904, options);
  const answers = found.mistakes.length === 0 ? undefined : likelyAnswers(cells, options);
  if (answers === undefined) return found;
  const key = ({ where, says }: ImportMistake): string => `${where}\n${says}`;
  const asked = new Set(found.mistakes.map(key));
  const later = convert(cells, date1904, answers).mistakes.filter((mistake) => !asked.has(key(mistake)));
  return { ...found, mistakes: [...found.mistakes, ...later] };
}

/**
 * Those that settle what plain numbers mean, to look further with; undefined where marks of both kinds stand in them.
 */
function likelyAnswers(cells: readonly PlacedCell[], options: AmountOptions): AmountOptions | undefined {
  const has = (mark: string): boolean => cells.some(({ cell }) => cell.kind === 'text' && cell.text.includes(mark));
  if (has(',') && has('.')) return undefined;
  return { ...options, unit: options.unit ?? 's', decimal: options.decimal ?? (has(',') ? 'comma' : 'point') };
}

function convert(cells: readonly PlacedCell[], date1904: boolean, options: AmountOptions): Times {
  const mistakes: ImportMistake[] = [];
  const said = { ...options, decimal: options.decimal ?? (hasDecimalComma(cells) ? 'comma' : undefined) };
  const amounts = cells.flatMap(({ cell, where }): { cell: Cell; where: string; amount: Amount }[] => {
    const amount = amountOf(cell, date1904, said);
    if (typeof amount !== 'string') return [{ cell, where, amount }];
    mistakes.push({ where, says: amount });
    return [];
  });
  if (mistakes.length > 0) return { texts: new Map(), conversions: [], mistakes };

  const days = new Set(amounts.flatMap(({ amount }) => (amount.kind === 'seconds' ? [amount.day ?? ''] : [])));
  if (days.size > 1)
    return refuse(
      amounts[0],
      `times stand on several days (${[...days].map((day) => day || 'none').join(', ')}). A timer shows no day: take it out of the cells`,
    );
  const decimals = options.decimals ?? Math.max(...amounts.map(({ amount }) => decimalsOf(amount)));
  const conversions = new Map<string, number>();
  const count = (what: string): unknown => conversions.set(what, (conversions.get(what) ?? 0) + 1);
  const texts = new Map<Cell, string>();
  for (const { cell, where, amount } of amounts) {
    const text =
      amount.kind === 'typed' ? padded(amount.text, decimals, cell, options) : atDecimals(amount, decimals, options);
    if (text.says !== undefined) mistakes.push({ where, says: text.says });
    else texts.set(cell, text.text);
    for (const how of [amount.how, text.how]) if (how !== undefined) count(how);
  }
  const [day] = days;
  return {
    texts,
    mistakes,
    conversions: [
      ...[...conversions].map(([what, number]) => `${number} ${number === 1 ? 'cell' : 'cells'}: ${what}`),
      ...(day === undefined || day === '' ? [] : [`the day ${day} left out of every time`]),
    ],
  };
}

/** A comma that can only stand before decimals settles what the others are. */
function hasDecimalComma(cells: readonly PlacedCell[]): boolean {
  const texts = cells.flatMap(({ cell }) => (cell.kind === 'text' ? [cell.text] : []));
  return texts.some(
    (text) => /:\d{2},\d+$/.test(text) || /^(?:0|\d{4,}),\d+$/.test(text) || /^\d+,(?!\d{3}$)\d+$/.test(text),
  );
}

/** Decimals that a value has; those of a stored time are the fewest with which it comes out, at least what it shows. */
function decimalsOf(amount: Amount): number {
  if (amount.kind === 'typed') return amount.text.split('.')[1]?.length ?? 0;
  return Math.max(amount.shows, fewestDecimals(amount) ?? 0);
}

function fewestDecimals({ seconds, offSeconds }: Extract<Amount, { kind: 'seconds' }>): number | undefined {
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals += 1) {
    const rounded = Math.round(seconds * 10 ** decimals) / 10 ** decimals;
    if (Math.abs(seconds - rounded) <= offSeconds) return decimals;
  }
  return undefined;
}

interface Written {
  readonly text: string;
  readonly how?: string;
  readonly says?: string;
}

function padded(text: string, decimals: number, cell: Cell, options: AmountOptions): Written {
  const [whole = '', fraction = ''] = text.split('.');
  if (fraction.length === decimals) return { text };
  if (fraction.length > decimals)
    return { text, says: `has ${fraction.length} decimals, more than --decimals ${decimals}` };
  // a number that a spreadsheet stores has no zeros at its end; a text as typed had them, or was read less finely
  if (cell.kind === 'text' && options.decimals === undefined)
    return {
      text,
      says: `has ${fraction.length} decimals where others have ${decimals}. If zeros at the end were dropped, say --decimals ${decimals}`,
    };
  const how = `zeros added at the end, to ${decimals} decimals`;
  return { text: decimals === 0 ? whole : `${whole}.${fraction.padEnd(decimals, '0')}`, how };
}

function atDecimals(amount: Extract<Amount, { kind: 'seconds' }>, decimals: number, options: AmountOptions): Written {
  const { seconds, offSeconds } = amount;
  const steps = Math.round(seconds * 10 ** decimals);
  const isOff = Math.abs(seconds - steps / 10 ** decimals) > offSeconds;
  const digits = String(steps).padStart(decimals + 1, '0');
  const whole = Number(decimals === 0 ? digits : digits.slice(0, -decimals));
  const text = clockText(whole, decimals === 0 ? undefined : digits.slice(-decimals));
  if (!isOff) return { text };
  return options.decimals === undefined
    ? {
        text,
        says: `holds ${String(Number(seconds.toFixed(SHOWN_DECIMALS)))} s, more digits than a timer shows. Say how many decimals count: --decimals 3`,
      }
    : { text, how: `rounded to ${decimals} decimals` };
}

function refuse(first: { readonly where: string } | undefined, says: string): Times {
  return { texts: new Map(), conversions: [], mistakes: [{ where: first?.where ?? '', says }] };
}
