import type { PageAudit } from '../audit/audit-page.ts';
import type { Changes } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { describeCount } from '../register/text.ts';
import type { Finding, Register } from '../register/register.ts';
import type { BuildReport } from './build-report.ts';
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
}

/** What a build says of what it compiled. */
export function reportOf({ bench, register, changes, byReport, audit, pages }: BuildSummary): BuildReport {
  const value = (id: string): number => register.figures.find((figure) => figure.id === id)?.value ?? 0;
  const planned = bench.planned.length + bench.plannedPairs.length;
  const counts: readonly (readonly [string, number])[] = [
    ['sessions', bench.sessions.length],
    ...(planned > 0 ? [['planned', planned] as const] : []),
    ...(bench.drafts === undefined ? [] : [['drafts', bench.drafts.length] as const]),
    ['readings', value('count/readings')],
    ['excluded', value('count/excluded')],
    ['figures', register.figures.length],
    ['findings', register.findings.length],
    ['pages', pages],
    ['numbers', audit.read],
  ];
  return {
    title: bench.site.title,
    counts: counts.map(([what, count]) => [what, describeCount(count)]),
    paragraphs: [
      describeFindings(register.findings),
      describeTyped(bench),
      describeAudit(audit),
      describeChanges(changes),
      byReport,
    ].filter(Boolean),
  };
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
