import { readdir } from 'node:fs/promises';
import { describeCount, roundTo } from '../figures/text.ts';
import type { Register } from '../figures/register.ts';
import type { Bench } from '../model/bench.ts';

export interface BuildSummary {
  readonly bench: Bench;
  readonly register: Register;
  readonly pages: number;
  readonly seconds: number;
}

/** How many HTML pages a built site has. */
export async function countPages(dist: string): Promise<number> {
  const files = await readdir(dist, { recursive: true });
  return files.filter((name) => name.endsWith('.html')).length;
}

/** What a build compiled, one thing a line. */
export function describeSummary({ bench, register, pages, seconds }: BuildSummary): string {
  const value = (id: string): number => register.figures.find((figure) => figure.id === id)?.value ?? 0;
  const rows: readonly (readonly [string, string])[] = [
    ['sessions', describeCount(bench.sessions.length)],
    ['readings', describeCount(value('count/readings'))],
    ['excluded', describeCount(value('count/excluded'))],
    ['figures', describeCount(register.figures.length)],
    ['findings', describeCount(register.findings.length)],
    ['pages', describeCount(pages)],
    ['seconds', roundTo(seconds, 1)],
  ];
  const width = Math.max(...rows.map(([, text]) => text.length));
  return rows.map(([name, text]) => `  ${name.padEnd(10)}${text.padStart(width)}`).join('\n');
}
