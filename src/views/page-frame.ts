import type { Published } from '../register/published.ts';
import { recordedOn } from './earlier-values.ts';

/** What stands around the content of every page. */
export interface PageFrame {
  readonly title: string;
  readonly publisher: string;
  /** Where the site stands on the web. */
  readonly address: string | undefined;
  readonly writeUpsRunCode: boolean;
  readonly hasDocumentation: boolean;
  readonly analysis: string;
  /** The day of the latest record: `11 April 2026`. */
  readonly recorded: string | undefined;
  /** Said on every page where bodies are invented. */
  readonly invented: string | undefined;
}

export function pageFrame({ bench, register }: Pick<Published, 'bench' | 'register'>): PageFrame {
  const { title, publisher, address, writeUpsRunCode, documentation } = bench.site;
  const invented = bench.bodies.filter((body) => body.invented).map(({ name }) => name);
  return {
    title,
    publisher,
    address,
    writeUpsRunCode,
    hasDocumentation: documentation,
    analysis: register.analysis,
    recorded: recordedOn(bench),
    invented: describeInvented(invented, bench.bodies.length),
  };
}

function describeInvented(names: readonly string[], bodies: number): string | undefined {
  if (names.length === 0) return undefined;
  return names.length === bodies
    ? 'Demonstration. Every body, rig and reading on this site is invented.'
    : `Demonstration data: ${names.join(', ')} ${names.length === 1 ? 'is' : 'are'} invented.`;
}
