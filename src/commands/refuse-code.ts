import type { ViteUserConfig } from 'astro';
import { loadSite } from 'lagfolio/site';
import { parseReferences } from '../ingest/references.ts';
import { problemsError } from '../model/problem-text.ts';
import type { Problem } from '../model/problem.ts';
import { publishedPath } from './write-ups.ts';

type Plugin = NonNullable<ViteUserConfig['plugins']>[number];

/**
 * Refuses, once more, write-ups that hold code: whoever asks for one, in a build or in development, and whatever was
 * checked before, its text is read here before anything turns it into a program.
 */
export function refuseCode(): Plugin {
  return {
    name: 'refuse-code',
    enforce: 'pre',
    transform: {
      order: 'pre',
      filter: { id: /\.mdx(?:$|\?)/ },
      async handler(text, id) {
        const { bench } = await loadSite();
        const problems: Problem[] = [];
        parseReferences(
          text,
          (problem) => problems.push({ ...problem, file: publishedPath(id) ?? id }),
          bench.site.writeUpsRunCode,
        );
        if (problems.length > 0) throw problemsError(problems);
      },
    },
  };
}
