/** RO-Crate 1.1: what each file of the package is, as linked data (schema.org in JSON-LD). */
import { checksum } from '../ingest/files-in-hand.ts';

export const RO_CRATE_FILE = 'ro-crate-metadata.json';

export interface CrateFacts {
  readonly title: string;
  readonly description: string;
  readonly publisher: string;
  /** ISO 8601 day. */
  readonly day: string;
  /** Version of the analysis. */
  readonly version: string;
}

const FORMATS: Readonly<Record<string, string>> = {
  csv: 'text/csv',
  json: 'application/json',
  md: 'text/markdown',
  mdx: 'text/markdown',
  yaml: 'application/yaml',
};

const PUBLISHER = '#publisher';
const TOOL = '#lagfolio';
const RUN = '#analysis';

export function roCrate(files: ReadonlyMap<string, Uint8Array>, facts: CrateFacts): string {
  const id = (path: string) => ({ '@id': path });
  const paths = [...files.keys()];
  const isComputed = (path: string): boolean => !/^(?:data|content)\//.test(path);
  return `${JSON.stringify(
    {
      '@context': 'https://w3id.org/ro/crate/1.1/context',
      '@graph': [
        {
          '@id': RO_CRATE_FILE,
          '@type': 'CreativeWork',
          conformsTo: id('https://w3id.org/ro/crate/1.1'),
          about: id('./'),
        },
        {
          '@id': './',
          '@type': 'Dataset',
          name: facts.title,
          description: facts.description,
          datePublished: facts.day,
          publisher: id(PUBLISHER),
          version: facts.version,
          hasPart: paths.map(id),
          mentions: [id(RUN)],
        },
        { '@id': PUBLISHER, '@type': 'Organization', name: facts.publisher },
        { '@id': TOOL, '@type': 'SoftwareApplication', name: 'Lagfolio', version: facts.version },
        {
          '@id': RUN,
          '@type': 'CreateAction',
          name: 'Every figure, computed from the raw files',
          instrument: id(TOOL),
          object: paths.filter((path) => path.startsWith('data/')).map(id),
          result: paths.filter(isComputed).map(id),
        },
        ...[...files].map(([path, bytes]) => ({
          '@id': path,
          '@type': 'File',
          name: path,
          encodingFormat: FORMATS[path.split('.').at(-1) ?? ''] ?? 'application/octet-stream',
          contentSize: String(bytes.length),
          sha256: checksum(bytes),
        })),
      ],
    },
    null,
    2,
  )}\n`;
}
