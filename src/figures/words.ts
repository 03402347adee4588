import type { Figure } from './register.ts';

/** A computed sentence: words, and the figures among them, so that a page can lead each number to its entry. */
export type Words = readonly (string | Figure)[];

/** The sentence as plain text. */
export function plainWords(words: Words): string {
  return words.map((part) => (typeof part === 'string' ? part : part.text)).join('');
}
