import type { RecordedVariation } from '../model/bench.ts';
import { checkSchema } from './check-schema.ts';
import { variationSchema } from './schemas/variation.ts';
import type { Source } from './source.ts';
import { parseYaml } from './yaml.ts';

/** In `data/`. */
export const VARIATION_FILE = 'variation.yaml';

/** How delays vary on this bench; undefined, with the mistakes reported, where the file does not say so. */
export function parseVariation({ file, bytes, report }: Source): RecordedVariation | undefined {
  const yaml = parseYaml(new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n'), report);
  const stated = yaml && checkSchema(yaml, variationSchema, report);
  return stated && { ...stated, file };
}
