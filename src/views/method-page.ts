/** What the page about the method prints. */
import { methodPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { describeCoverageTable, type CoverageText } from './coverage.ts';
import { findMethodExample, type MethodExample } from './method-example.ts';

export interface MethodPage {
  readonly methods: readonly { readonly title: string; readonly summary: string; readonly path: string }[];
  readonly coverage: Pick<CoverageText, 'level' | 'worst'>;
  readonly example: MethodExample | undefined;
}

export function methodPage({ bench, register }: Published): MethodPage {
  const { level, worst } = describeCoverageTable();
  return {
    methods: bench.methods.map(({ id, title, summary }) => ({ title, summary, path: methodPath(id) })),
    coverage: { level, worst },
    example: findMethodExample(register),
  };
}
