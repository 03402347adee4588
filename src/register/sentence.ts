import type { Figure } from './register.ts';

/**
 * A computed sentence: words, and the figures among them in the order in which they are read, so that each leads to its
 * entry.
 */
export type Sentence = readonly (string | Figure)[];

/** The sentence as plain text. */
export function plainSentence(parts: Sentence): string {
  return parts.map((part) => (typeof part === 'string' ? part : part.text)).join('');
}
