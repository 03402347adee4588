import type { OwnSpeeds } from '../model/bench.ts';
import { checkSchema } from './check-schema.ts';
import { speedsSchema } from './schemas/speeds.ts';
import type { Source } from './source.ts';
import { parseYaml } from './yaml.ts';

/** In `data/`. */
export const SPEEDS_FILE = 'speeds.yaml';

/** Undefined, with the mistakes reported, where the file holds any. */
export function parseSpeeds({ file, bytes, report }: Source): OwnSpeeds | undefined {
  const yaml = parseYaml(new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n'), report);
  const list = yaml && checkSchema(yaml, speedsSchema, report);
  return list && { list, file };
}
