/**
 * What the numbers on built pages are held to: everything that a compiled site knows, looked up by what a mark names.
 */
import { hash } from 'node:crypto';
import { earlierValues, entriesOf } from '../ledger/history.ts';
import type { Bench, Reading, Session } from '../model/bench.ts';
import { once } from '../model/once.ts';
import type { PrecisionOfRig } from '../planning/precision-of-rig.ts';
import { inWordsOf } from '../register/kinds.ts';
import { describeBasis, describeProvenance } from '../register/provenance.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { roundTo } from '../register/text.ts';
import { bare } from '../verify/html.ts';
import { describeBudget } from '../views/budget.ts';
import { describeCoverageTable } from '../views/coverage.ts';
import { describeEntry } from '../views/entry.ts';
import { exactLines } from '../views/redo.ts';
import { spokenFigure } from '../views/spoken.ts';
import { describeSoundThresholds, SOUND_EXPLANATION, SOUND_SOURCES } from '../views/sound-thresholds.ts';
import { findQuantities } from '../write-ups/prose/find-quantities.ts';
import { settingQuantities } from '../write-ups/prose/setting-quantities.ts';
import type { PrintedNumber } from './numbers.ts';

type Taken = Pick<Session, 'readings'>;

export interface Site {
  isFigure(id: string): boolean;
  /** The published text of a figure, on one line. */
  textOf(id: string): string | undefined;
  /** Whether a figure or a file of this name is of a session, body or rig: itself, or the one of its session. */
  isOf(source: string, record: string): boolean;
  /** Whether a figure or a file of this name says the number. */
  says(source: string, number: PrintedNumber): boolean;
  findingSays(rule: string, number: PrintedNumber): boolean;
  ledgerSays(number: PrintedNumber): boolean;
  coverageSays(number: PrintedNumber): boolean;
  /** Whether it is what this bench sets or runs at. */
  isSetting(number: PrintedNumber): boolean;
  /** Digest of all that an answer is taken from: with the same one, it is the same answer. */
  digestOf(facts: Facts): string;
}

/** What an answer is taken from: a figure or file by its name, the findings of a rule, the ledger, or what is set. */
export interface Facts {
  readonly of: 'source' | 'finding' | 'ledger' | 'settings';
  readonly name: string;
}

/** The words between two ends of a range differ from page to page, and lines break anywhere. */
export function describeSpread(text: string): string {
  return bare(text).replace(/(?<=\d) (?:and|to|–) (?=[−\d])/gu, ' to ');
}

const SOUND = [describeSoundThresholds(), SOUND_EXPLANATION].map(describeSpread);

export function siteFacts(published: Published, precision: ReadonlyMap<string, PrecisionOfRig>): Site {
  const { bench, register, figure } = published;
  const said = once((figure: Figure) => sayingsOf(figure).map(describeSpread));
  const stated = statedByFile(bench);
  const simulated = new Map(
    bench.rigs.map(
      ({ id, file }) => [file.path, (precision.get(id)?.lines ?? []).flatMap(linesOf).map(describeSpread)] as const,
    ),
  );
  const sessions = new Map(
    [...bench.sessions, ...bench.displayPairs].map((session) => [session.readingsFile.path, session] as const),
  );
  const taken = once(takenIn);
  const byId = new Map(bench.sessions.map((session) => [session.id, session] as const));
  /** Of a figure: what it is of, with body and rig of its sessions; of a file: its name, likewise. */
  const records = (source: string): readonly string[] => {
    const named = figure(source)?.of ?? { file: /([^/]+)\.\w+$/.exec(source)?.[1] ?? source };
    return Object.values(named).flatMap((id) => {
      const session = byId.get(id);
      return session === undefined ? [id] : [id, session.body, session.rig];
    });
  };
  const saidBy = new Map(
    [...Map.groupBy(register.findings, ({ rule }) => rule)].map(([rule, found]) => [
      rule,
      found.flatMap(({ message, hint }) => [message, hint]).map(describeSpread),
    ]),
  );
  const earlier = entriesOf(bench.ledger)
    .flatMap(({ reason, causes, moved, gone }) => [
      reason,
      ...causes,
      ...moved.flatMap(({ from, to }) => [from, to]),
      ...gone.map(({ from }) => from),
    ])
    .map(describeSpread);
  const coverage = coverageLines().map(describeSpread);
  const settings = settingQuantities(bench);
  const isRead = (session: Taken | undefined, { text }: PrintedNumber): boolean =>
    session !== undefined &&
    (taken(session).has(text) ||
      taken(session).has(text.replace(/\s(?:ms|frames?)$/u, '')) ||
      session.readings.some((reading) => remarks(reading).includes(text)));
  return {
    isFigure: (id) => figure(id) !== undefined,
    textOf: (id) => {
      const found = figure(id);
      return found && describeSpread(found.text);
    },
    isOf: (source, record) => records(source).includes(record),
    says(source, number) {
      if (source === SOUND_SOURCES) return holds(SOUND, number);
      const found = figure(source);
      if (found !== undefined) return holds(said(found), number) || holds(past(bench, source), number);
      return (
        (stated.get(source)?.some((value) => isStated(value, number)) ?? false) ||
        holds(simulated.get(source) ?? [], number) ||
        isRead(sessions.get(source), number)
      );
    },
    findingSays: (rule, number) => holds(saidBy.get(rule) ?? [], number),
    ledgerSays: (number) => holds(earlier, number),
    coverageSays: (number) => holds(coverage, number),
    isSetting: (number) => number.unit !== 'other' && settings(number),
    digestOf({ of, name }) {
      const session = sessions.get(name);
      const facts = {
        source: () => {
          const found = figure(name);
          return [
            found && [describeSpread(found.text), said(found), past(bench, name)],
            stated.get(name),
            simulated.get(name),
            session && [[...taken(session)], session.readings.map(remarks)],
            records(name),
          ];
        },
        finding: () => saidBy.get(name),
        ledger: () => earlier,
        settings: () => [bench.settings, bench.rigs, bench.displays],
      };
      return hash('sha256', JSON.stringify(facts[of]() ?? null)).slice(0, 32);
    },
  };
}

const spreadOf = once(({ text }: PrintedNumber) => describeSpread(text));

/** Whether one of these says it, each as `describeSpread` puts it. */
function holds(lines: readonly string[], number: PrintedNumber): boolean {
  const wanted = spreadOf(number);
  return lines.some((line) => {
    const at = line.indexOf(wanted);
    return at >= 0 && !/[\d.,]$/.test(line.slice(0, at));
  });
}

/** Everything that an entry, its budget and a link to it say of a figure. */
function sayingsOf(figure: Figure): readonly string[] {
  const { rows, total, corrections } = describeBudget(figure);
  return [
    figure.id,
    figure.text,
    figure.label,
    inWordsOf(figure),
    describeProvenance(figure),
    ...describeEntry(figure),
    describeBasis(figure),
    ...exactLines(figure),
    spokenFigure(figure),
    corrections.join(' '),
    total.expanded,
    total.uncertainty,
    ...rows.flatMap(({ uncertainty, share }) => [uncertainty, share]),
  ];
}

function past({ ledger }: Bench, id: string): readonly string[] {
  return earlierValues(ledger, id).map(({ text }) => describeSpread(text));
}

/** What each file of the bench states, as written. */
function statedByFile({
  bodies,
  displays,
  links,
  rigs,
  sessions,
  displayPairs,
}: Bench): ReadonlyMap<string, readonly string[]> {
  return new Map(
    [...bodies, ...displays, ...links, ...rigs, ...sessions, ...displayPairs].map(({ file, stated = [] }) => [
      file.path,
      stated,
    ]),
  );
}

/** The same text, or the same value to the digits that are printed: `4.17 ms` of `1/240 s`, `35 %` of `0.35`. */
function isStated(written: string, number: PrintedNumber): boolean {
  const text = bare(written);
  if (text === number.text) return true;
  const [quantity = { unit: 'ratio', value: Number(text) }] = findQuantities(text);
  const printed = /\d(?:[\d.]*\d)?/.exec(number.text)?.[0] ?? '';
  const scale = number.unit === 'ms' || number.unit === 'ratio' ? number.value / Number(printed) : 1;
  if (number.unit === 'rate') return Number(text) === Number(number.rate) || quantity.value === number.value;
  const half = 0.5 * 10 ** -(printed.split('.')[1]?.length ?? 0) * scale;
  if (number.unit === 'other' && /min$/.test(number.text))
    return quantity.unit === 'ms' && Math.abs(quantity.value / 60_000 - number.value) <= 0.005;
  if (number.unit === 'other') return text === number.text || text.startsWith(`${number.text} `);
  return quantity.unit === number.unit && Math.abs(quantity.value - number.value) <= half * (1 + 1e-9);
}

/** Every cell as taken, and the latency that a row comes to, with as many decimals as a page may print. */
function takenIn({ readings }: Taken): ReadonlySet<string> {
  return new Set(
    readings.flatMap(({ cells, latencyMs }) => [
      ...Object.values(cells),
      ...(latencyMs === undefined ? [] : [0, 1, 2, 3, 4].map((decimals) => roundTo(latencyMs, decimals))),
    ]),
  );
}

function remarks({ excluded = '', note = '' }: Reading): string {
  return `${excluded}. ${note}`;
}

function linesOf({ way, points }: PrecisionOfRig['lines'][number]): readonly string[] {
  return [way, ...points.map(({ text }) => text)];
}

function coverageLines(): readonly string[] {
  const { rows, pairs } = describeCoverageTable();
  return [
    ...[...rows, ...pairs].flatMap((row) => [
      row.coverage,
      `± ${row.halfWidth}`,
      row.textbookCoverage,
      `± ${row.textbookHalfWidth}`,
      row.rig,
    ]),
    ...rows.map(({ differenceCoverage }) => differenceCoverage),
  ];
}
