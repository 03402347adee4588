import type { PageAudit } from '../audit/audit-page.ts';
import type { Changes } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { describeCount, roundTo } from '../register/text.ts';
import type { Finding, Register } from '../register/register.ts';
import { alikeFindings } from './describe-to-do.ts';
import type { Bench } from '../model/bench.ts';
import { typedQuantities } from '../write-ups/prose/typed-quantities.ts';

export interface BuildSummary {
  readonly bench: Bench;
  readonly register: Register;
  /** Since the last record. */
  readonly changes: Changes;
  /** Which reports these touch, a line each. */
  readonly byReport: string;
  /** Of every number with a unit on the finished pages. */
  readonly audit: PageAudit;
  readonly pages: number;
  readonly seconds: number;
}

/** What a build compiled, one thing a line; what an editor should look at; what moved since the last record, and in which report. */
export function describeSummary({ bench, register, changes, byReport, audit, pages, seconds }: BuildSummary): string {
  const value = (id: string): number => register.figures.find((figure) => figure.id === id)?.value ?? 0;
  const planned = bench.planned.length + bench.plannedPairs.length;
  const rows: readonly (readonly [string, string])[] = [
    ['sessions', describeCount(bench.sessions.length)],
    ...(planned > 0 ? [['planned', describeCount(planned)] as const] : []),
    ...(bench.drafts === undefined ? [] : [['drafts', describeCount(bench.drafts.length)] as const]),
    ['readings', describeCount(value('count/readings'))],
    ['excluded', describeCount(value('count/excluded'))],
    ['figures', describeCount(register.figures.length)],
    ['findings', describeCount(register.findings.length)],
    ['pages', describeCount(pages)],
    ['numbers', describeCount(audit.read)],
    ['seconds', roundTo(seconds, 1)],
  ];
  const width = Math.max(...rows.map(([, text]) => text.length));
  const counts = rows.map(([name, text]) => `  ${name.padEnd(10)}${text.padStart(width)}`).join('\n');
  return [
    counts,
    describeFindings(register.findings),
    describeTyped(bench),
    describeAudit(audit),
    describeChanges(changes),
    byReport,
  ]
    .filter(Boolean)
    .join('\n\n');
}

const FINDINGS_SHOWN = 8;

/** All of them, however many: a strict build refuses each. */
function describeTyped(bench: Bench): string {
  const typed = typedQuantities(bench);
  if (typed.length === 0) return '';
  const heading = `Typed by hand, which a strict build refuses: ${describeCount(typed.length)}`;
  return [heading, ...typed.map(({ file, line, text }) => `  ${file}:${line}  ${text}`)].join('\n');
}

/** Each number on a page that is no figure, reading, setting, quotation or fact of the file that its mark names. */
function describeAudit({ unaccounted }: PageAudit): string {
  if (unaccounted.length === 0) return '';
  const heading = `Numbers on pages that nothing accounts for, which a strict build refuses: ${describeCount(unaccounted.length)}`;
  return [heading, ...unaccounted.map(({ page, number, around }) => `  ${page}  ${number}, in “${around}”`)].join('\n');
}

/** The gravest first, those that say the same together; `npm run to-do` lists them all. */
function describeFindings(all: readonly Finding[]): string {
  const findings = all.filter(({ rule }) => rule !== 'typed-quantity');
  const alike = alikeFindings(findings);
  const shown = alike.slice(0, FINDINGS_SHOWN);
  const lines = shown.map(({ where, message, hint }) => `  ${where.join('; ')}\n    ${message} ${hint}`);
  const more = findings.length - shown.reduce((sum, { where }) => sum + where.length, 0);
  return [...lines, ...(more > 0 ? [`  and ${describeCount(more)} more: npm run to-do`] : [])].join('\n');
}
