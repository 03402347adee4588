import type { RecordedVariation } from '../model/bench.ts';
import { checkSchema } from './check-schema.ts';
import type { Folder } from './folder.ts';
import { variationSchema } from './schemas/variation.ts';
import { parseYaml } from './yaml.ts';

/** In `data/`. */
export const VARIATION_FILE = 'variation.yaml';

/** Reads how delays vary on this bench; undefined where nobody has said so yet, or with the mistakes reported. */
export async function readVariation(data: Folder): Promise<RecordedVariation | undefined> {
  if (!(await data.holdsFile(VARIATION_FILE))) return undefined;
  const source = await data.readSource(VARIATION_FILE);
  if (source === undefined) return undefined;
  const yaml = parseYaml(new TextDecoder().decode(source.bytes).replace(/\r\n?/g, '\n'), source.report);
  const stated = yaml && checkSchema(yaml, variationSchema, source.report);
  return stated && { ...stated, file: source.file };
}
