/** Downloaded files → a bench of them, as far as figures need one: what a write-up or the site's own words say is left out. */
import { sourcesInHand } from '../ingest/files-in-hand.ts';
import { parseData } from '../ingest/parse-data.ts';
import { ProblemList } from '../ingest/problem-list.ts';
import { METHODS, type Bench, type SourceFile } from '../model/bench.ts';

const NO_FILE: SourceFile = { path: '', sha256: '', bytes: 0 };
const NO_SITE: Bench['site'] = {
  title: '',
  tagline: '',
  publisher: '',
  writeUpsRunCode: false,
  introduction: '',
  prose: [],
  file: NO_FILE,
};

/** Throws one ProblemsError with every mistake of the files; `missingFiles` are to be asked for before. */
export function benchInHand(files: ReadonlyMap<string, Uint8Array>): Bench {
  const problems = new ProblemList();
  const sources = sourcesInHand(files, problems);
  const parsed = parseData(sources, { methods: METHODS, readProse: () => [] });
  problems.throwIfAny();
  const { settings, variation, ...rest } = parsed;
  if (settings === undefined || sources.settings === undefined)
    throw new Error('a file that was not read was not reported');
  return {
    site: NO_SITE,
    settings,
    settingsFile: sources.settings.file,
    ...rest,
    methods: [],
    reports: [],
    ...(variation === undefined ? {} : { variation }),
  };
}
