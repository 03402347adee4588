import { roundTo } from '../register/text.ts';

/** What a build says of what it compiled: plain data, so that it can be said again where nothing has changed. */
export interface BuildReport {
  /** Of the publication. */
  readonly title: string;
  /** What there is of what, each as it is printed. */
  readonly counts: readonly (readonly [what: string, count: string])[];
  /** What an editor should look at; what moved since the last record, and in which report. */
  readonly paragraphs: readonly string[];
}

/** The counts, one a line, with the time that it took, in s; and then what there is to say. */
export function describeReport({ counts, paragraphs }: BuildReport, seconds: number): string {
  const rows = [...counts, ['seconds', roundTo(seconds, 1)] as const];
  const width = Math.max(...rows.map(([, count]) => count.length));
  const lines = rows.map(([what, count]) => `  ${what.padEnd(10)}${count.padStart(width)}`);
  return [lines.join('\n'), ...paragraphs].join('\n\n');
}
