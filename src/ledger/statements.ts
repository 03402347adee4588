import { inWordsOf, KINDS } from '../register/kinds.ts';
import type { Bench } from '../model/bench.ts';
import type { Published } from '../model/ledger.ts';
import type { Figure, Finding, Register } from '../register/register.ts';
import { benchStatements } from './bench-statements.ts';
import { digestOf } from './digest.ts';
import { statesBesides } from './figure-parts.ts';
import { sourcesOf } from './sources.ts';

/** What is published now, with the names of the files it rests on. */
export interface Statement extends Published {
  readonly sources: readonly string[];
}

const DIGITS = 10;

/**
 * Everything that the ledger holds still, because a reader relies on it: every figure with all that it states, the
 * findings, what the kinds of figures are, and what the files say of bodies, displays, links, rigs, sessions and
 * settings. A figure says 300 ms of `session/a`; if that session turns into another body's, it has moved although its
 * number has not.
 */
export function statementsOf(bench: Bench, register: Pick<Register, 'figures' | 'findings'>): readonly Statement[] {
  const sources = sourcesOf(bench, register);
  return [
    ...benchStatements(bench).map(({ id, text, files }) =>
      statement(
        id,
        text,
        files.map(({ path }) => path),
      ),
    ),
    ...kindStatements(register),
    ...findingStatements(bench, register),
    ...register.figures.map((figure) => figureStatement(figure, sources(figure))),
  ];
}

/** Of the kinds that are published: what each is and how it is computed. No file says so, but the code. */
function kindStatements({ figures }: Pick<Register, 'figures'>): readonly Statement[] {
  const used = new Map(figures.map((figure) => [figure.kind, figure]));
  return [...used].flatMap(([kind, { unit }]) => {
    const known = Object.entries(KINDS).find(([name]) => name === kind)?.[1];
    if (known === undefined) return [];
    return [statement(`kind/${kind}`, `${known.label} (${unit}): ${inWordsOf({ kind })}`, [])];
  });
}

/** What several findings of one rule say of one place stands together: none of them has a name of its own. */
function findingStatements(bench: Bench, { findings }: Pick<Register, 'findings'>): readonly Statement[] {
  const files = new Map(bench.sessions.map(({ id, file, readingsFile }) => [id, [file.path, readingsFile.path]]));
  const alike = Map.groupBy(findings, ({ rule, where }) => ['finding', rule, ...placesOf(where)].join('/'));
  return [...alike].map(([id, all]) => {
    const text = all.map(({ severity, message, hint }) => `${severity}: ${message} ${hint}`).join(' ');
    const places = all.flatMap(({ where }) => placesOf(where));
    return statement(id, text, [
      ...new Set(places.flatMap((place) => files.get(place) ?? (isFile(place) ? [place] : []))),
    ]);
  });
}

/** Lines move with whatever is written above them, and are no part of what is said. */
function placesOf(where: Finding['where']): readonly string[] {
  return Object.values(where).map((place) => place.replace(/:\d+$/, ''));
}

function isFile(place: string): boolean {
  return /^(?:data|content)\//.test(place);
}

function figureStatement(figure: Figure, sources: readonly string[]): Statement {
  const { id, text, value, interval } = figure;
  return {
    ...statement(id, text, sources),
    also: statesBesides(figure),
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
