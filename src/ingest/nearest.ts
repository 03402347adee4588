import { distance } from 'fastest-levenshtein';

const MOST = 3;

/**
 * The choices a misspelt name most likely means, best first: at most three, and none that differs in more
 * than a third of its letters (one letter is always allowed). Case does not count.
 */
export function nearest(found: string, choices: readonly string[]): readonly string[] {
  const name = found.toLowerCase();
  return choices
    .map((choice) => ({ choice, edits: distance(name, choice.toLowerCase()) }))
    .filter(({ choice, edits }) => edits <= Math.max(1, Math.floor(Math.max(name.length, choice.length) / 3)))
    .filter(({ choice, edits }) => edits < Math.max(name.length, choice.length))
    .sort((a, b) => a.edits - b.edits)
    .slice(0, MOST)
    .map(({ choice }) => choice);
}
