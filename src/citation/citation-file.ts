import { stringify } from 'yaml';
import type { Bench } from '../model/bench.ts';
import { PATHS } from '../register/paths.ts';
import { absolute } from './absolute.ts';
import { lastDay } from './record-state.ts';

/** `CITATION.cff`: how the publication is cited, as the Citation File Format 1.2.0 has it. */
export function renderCitationFile(bench: Bench): string {
  const { title, tagline, publisher, licence, identifier } = bench.site;
  const [url, day] = [absolute(bench.site, PATHS.home), lastDay(bench)];
  const named = identifierKeys(identifier);
  return stringify({
    'cff-version': '1.2.0',
    message: 'Please cite these figures by what stands here, and each figure by the line under its entry.',
    type: 'dataset',
    title,
    ...(tagline.trim() === '' ? {} : { abstract: tagline }),
    authors: [{ name: publisher.trim() || title }],
    ...(day === undefined ? {} : { 'date-released': day }),
    ...(licence === undefined ? {} : { license: licence }),
    ...(url === undefined ? {} : { url }),
    ...named,
    keywords: ['latency', 'camera', 'display', 'measurement uncertainty'],
  });
}

function identifierKeys(identifier: string | undefined): object {
  if (identifier === undefined) return {};
  if (identifier.startsWith('10.')) return { doi: identifier };
  return { identifiers: [{ type: /^https?:/.test(identifier) ? 'url' : 'other', value: identifier }] };
}
