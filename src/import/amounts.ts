/** Cells → seconds as decimal digits, so that no digit that was typed is lost or made up. */
import { serialDay, timeFormat } from './serials.ts';
import type { Cell } from './sheet.ts';

export type Unit = 's' | 'ms';
export type DecimalMark = 'point' | 'comma';
export type Clock = 'mm:ss' | 'hh:mm';

export interface AmountOptions {
  readonly unit?: Unit | undefined;
  readonly decimal?: DecimalMark | undefined;
  readonly clock?: Clock | undefined;
  readonly decimals?: number | undefined;
}

/** What a cell says: digits as typed with or without colons, or seconds that have still to be given their decimals. */
export type Amount =
  | { readonly kind: 'typed'; readonly text: string; readonly how?: string }
  | {
      readonly kind: 'seconds';
      readonly seconds: number;
      /** How far the stored number may be off. */
      readonly offSeconds: number;
      /** Decimals that the cell shows. */
      readonly shows: number;
      /** The day that is left out. */
      readonly day?: string;
      readonly how: string;
    };

/** Steps of a double near 1, with room for the few operations by which programs make a time. */
const ULPS = 8 * Number.EPSILON;
const DAY_SECONDS = 86_400;

/** What the cell says; otherwise what to do about it, without a full stop. */
export function amountOf(cell: Cell, date1904: boolean, options: AmountOptions): Amount | string {
  if (cell.kind === 'error') return `holds ${cell.text}, no value. Type what was read`;
  if (cell.kind === 'flag') return `holds ${cell.value ? 'TRUE' : 'FALSE'}, no time`;
  if (cell.kind === 'duration') return ofDuration(cell.text);
  if (cell.kind === 'day') return ofDay(cell.text);
  return cell.kind === 'number' ? ofNumber(cell.value, cell.format, date1904, options) : ofText(cell.text, options);
}

/** ISO 8601, as OpenDocument 1.3 writes times (part 3, 19.382). */
function ofDuration(text: string): Amount | string {
  const [found, hours = '0', minutes = '0', seconds = '0'] =
    /^PT(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?$/.exec(text) ?? [];
  if (found === undefined) return `holds ${text}, no time that a timer shows`;
  const [whole = '0', fraction] = seconds.split('.');
  const total = Number(hours) * 3600 + Number(minutes) * 60 + Number(whole);
  return { kind: 'typed', text: clockText(total, fraction), how: 'times of the spreadsheet, by their stored digits' };
}

function ofDay(text: string): Amount {
  const [day = '', time = '00:00:00'] = text.split('T');
  const [hours = '0', minutes = '0', seconds = '0'] = time.split(':');
  const total = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
  return { kind: 'seconds', seconds: total, offSeconds: 1e-9, shows: 0, day, how: SERIAL };
}

const SERIAL = 'times of the spreadsheet, which it stores as fractions of a day';

function ofNumber(value: number, code: string, date1904: boolean, options: AmountOptions): Amount | string {
  const format = timeFormat(code);
  if (format === undefined) return ofPlainNumber(value, options);
  if (value < 0) return `holds ${value}, a time below zero`;
  const offSeconds = 1e-10 + value * DAY_SECONDS * ULPS;
  if (!format.hasSeconds) {
    if (options.clock === undefined)
      return `shows hours and minutes. Say what was typed: --clock mm:ss for minutes and seconds, --clock hh:mm for hours and minutes`;
    const by = options.clock === 'mm:ss' ? 60 : 1;
    const how = by === 60 ? 'hours and minutes of the spreadsheet taken for minutes and seconds' : SERIAL;
    return { kind: 'seconds', seconds: (value * DAY_SECONDS) / by, offSeconds, shows: 0, how };
  }
  const isLong = /\[[hms]+\]/i.test(code);
  const whole = isLong ? 0 : Math.floor(value);
  const day = whole === 0 && !format.hasDay ? {} : { day: serialDay(value, date1904) ?? String(whole) };
  return {
    kind: 'seconds',
    seconds: (value - whole) * DAY_SECONDS,
    offSeconds,
    shows: format.decimals,
    ...day,
    how: SERIAL,
  };
}

/** As many decimals as anybody types; a number with more was computed. */
const TYPED_DECIMALS = 9;

function ofPlainNumber(value: number, options: AmountOptions): Amount | string {
  const text = plainDigits(value);
  if ((text.split('.')[1]?.length ?? 0) <= TYPED_DECIMALS) return ofText(text, { ...options, decimal: 'point' });
  if (options.unit === undefined || value < 0) return ofText('0', options);
  const seconds = options.unit === 'ms' ? value / 1000 : value;
  return { kind: 'seconds', seconds, offSeconds: 1e-10 + seconds * ULPS, shows: 0, how: 'computed numbers' };
}

const CLOCK = /^(?:\d+:)?\d+:\d{2}(?:\.\d+)?$/;
const NUMBER = /^\d+(?:\.\d+)?$/;

function ofText(written: string, { unit, decimal }: AmountOptions): Amount | string {
  const isComma = decimal === 'comma' || (decimal === undefined && /^[\d:]+,\d+$/.test(written));
  if (isComma && written.includes('.')) return `holds '${written}', with a point where --decimal says comma`;
  if (decimal === 'point' && written.includes(','))
    return `holds '${written}', with a comma where the decimal mark is a point`;
  const text = isComma ? written.replace(',', '.') : written;
  const comma = text === written ? {} : { how: 'decimal commas made points' };
  if (CLOCK.test(text)) return { kind: 'typed', text, ...comma };
  if (!NUMBER.test(text)) return `holds '${written}', no time such as 31.482 or 00:31.482`;
  const asked = askedOfNumber(written, unit, decimal);
  if (asked !== undefined) return asked;
  const how = [
    ...(comma.how === undefined ? [] : [comma.how]),
    unit === 'ms' ? 'milliseconds made seconds' : 'plain numbers taken for seconds',
  ];
  return { kind: 'typed', text: unit === 'ms' ? thousandth(text) : text, how: how.join(', ') };
}

/** What cannot be known of a plain number, all of it at once; undefined where nothing is open. */
function askedOfNumber(written: string, unit: Unit | undefined, decimal: DecimalMark | undefined): string | undefined {
  const mark = written.includes(',') ? 'comma' : 'point';
  const isOpen = (as: Unit): boolean => decimal === undefined && isThousands(written, as);
  const threeDigits = `holds a number with three digits behind a ${mark}`;
  const markSays = `its mark stands before decimals: --decimal ${mark}. If it groups thousands, take the groups out of the file`;
  if (unit !== undefined) return isOpen(unit) ? `${threeDigits}. Say whether ${markSays}` : undefined;
  const unitSays = 'Say what it counts: --unit s for seconds, --unit ms for milliseconds';
  if (isOpen('s')) return `${threeDigits}. ${unitSays}; and whether ${markSays}`;
  const forMs = isOpen('ms') ? ` (then also --decimal ${mark}, unless its mark groups thousands)` : '';
  return `holds a plain number. ${unitSays}${forMs}`;
}

/** One mark with three digits behind it may stand before decimals or between thousands. */
function isThousands(written: string, unit: Unit): boolean {
  return unit === 'ms' ? /^[1-9]\d{0,2}[.,]\d{3}$/.test(written) : /^[1-9]\d{0,2},\d{3}$/.test(written);
}

/** `31482.5` → `31.4825`. */
function thousandth(text: string): string {
  const [whole = '', fraction = ''] = text.split('.');
  const digits = whole.padStart(4, '0');
  return `${digits.slice(0, -3)}.${digits.slice(-3)}${fraction}`;
}

/** The shortest digits that are this number, without an exponent. */
function plainDigits(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/0+$/, '') : text;
}

/** `31`, `482` → `00:31.482`; with hours where there are any. */
export function clockText(total: number, fraction: string | undefined): string {
  const two = (value: number): string => String(value).padStart(2, '0');
  const hours = Math.floor(total / 3600);
  const clock = `${two(Math.floor(total / 60) % 60)}:${two(total % 60)}`;
  return `${hours === 0 ? '' : `${two(hours)}:`}${clock}${fraction === undefined || fraction === '' ? '' : `.${fraction}`}`;
}
