import { createHash } from 'node:crypto';
import type { Bench, Body, Session } from '../model/bench.ts';
import type { Published } from '../model/ledger.ts';
import { rateLabel } from '../model/rate.ts';
import type { Figure, Register } from '../register/register.ts';

/** What is published now, with the names of the files it rests on. */
export interface Statement extends Published {
  readonly sources: readonly string[];
}

const DIGITS = 10;

/**
 * Everything that the ledger holds still: every figure, and what each body and session is. A figure says
 * 300 ms of `session/a`; if that session turns into another body's, the figure has moved although its number has not.
 */
export function statementsOf(bench: Bench, { figures }: Pick<Register, 'figures'>): readonly Statement[] {
  return [...bench.bodies.map(bodyStatement), ...bench.sessions.map(sessionStatement), ...figures.map(figureStatement)];
}

/** Digest of the names, in any order: eight hexadecimal digits. */
export function digestOf(names: readonly string[]): string {
  return createHash('sha256').update(names.toSorted().join('\n')).digest('hex').slice(0, 8);
}

function bodyStatement({ id, name, maker, model, file }: Body): Statement {
  return statement(`body/${id}`, `${name} (${maker}, ${model})`, [file.path]);
}

function sessionStatement({
  id,
  body,
  firmware,
  rig,
  links,
  display,
  method,
  date,
  rate,
  settings,
  file,
}: Session): Statement {
  const levels = Object.entries(settings).map(
    ([setting, level]) => `${setting} ${setting === 'rate' ? rateLabel(rate) : level}`,
  );
  const chain = [rig, ...links, display].join(' → ');
  return statement(
    `session/${id}`,
    [body, ...(firmware === undefined ? [] : [`firmware ${firmware}`]), chain, method, date, ...levels].join(', '),
    [file.path],
  );
}

function figureStatement({ id, text, value, interval, sources }: Figure): Statement {
  return {
    ...statement(
      id,
      text,
      sources.map(({ file }) => file),
    ),
    value: roundedTo(DIGITS, value),
    ...(interval === undefined ? {} : { low: roundedTo(DIGITS, interval.low), high: roundedTo(DIGITS, interval.high) }),
  };
}

function statement(id: string, text: string, sources: readonly string[]): Statement {
  return { id, text, files: digestOf(sources), sources };
}

/** Beyond ten significant digits a number tells nothing of a latency, and a reader of the ledger even less. */
function roundedTo(digits: number, value: number): number {
  return Number(value.toPrecision(digits));
}
