import type { Bench, SourceFile } from '../model/bench.ts';
import type { ParsedData } from './parse-data.ts';
import type { Source } from './source.ts';

const NO_FILE: SourceFile = { path: '', sha256: '', bytes: 0 };
const NO_SITE: Bench['site'] = {
  title: '',
  tagline: '',
  publisher: '',
  writeUpsRunCode: false,
  documentation: false,
  introduction: '',
  prose: [],
  file: NO_FILE,
};

/** A bench of nothing but `data/`, as far as figures need one; undefined where its settings cannot be read. */
export function benchOfData(parsed: ParsedData, settingsSource: Source | undefined): Bench | undefined {
  const { settings, variation, speeds, ...rest } = parsed;
  if (settings === undefined || settingsSource === undefined) return undefined;
  return {
    site: NO_SITE,
    settings,
    settingsFile: settingsSource.file,
    ...rest,
    methods: [],
    reports: [],
    ...(variation === undefined ? {} : { variation }),
    ...(speeds === undefined ? {} : { speeds }),
  };
}
