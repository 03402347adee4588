import { BODY_PARTS } from './parts/of-bodies.ts';
import { COMPARISON_PARTS } from './parts/of-comparisons.ts';
import type { PartDefinition, PartDefinitions } from './parts/definition.ts';
import { FIGURE_PARTS } from './parts/of-figures.ts';
import { WORD_PARTS } from './parts/of-words.ts';

/** What an author may write in MDX, by name: what the check of write-ups, the authoring guide and README go by. */
export const PARTS: PartDefinitions = { ...FIGURE_PARTS, ...COMPARISON_PARTS, ...BODY_PARTS, ...WORD_PARTS };

/** The names of the properties that a part takes. */
export function propertiesOf({ properties }: PartDefinition): readonly string[] {
  return Object.keys(properties);
}

/** Whether a part cannot do without a property: by itself, or for want of another (`one of`). */
export function needOf({ needs }: PartDefinition, property: string): 'needed' | 'one of' | 'optional' {
  if (needs.includes(property)) return 'needed';
  return needs.some((need) => typeof need !== 'string' && need.includes(property)) ? 'one of' : 'optional';
}
