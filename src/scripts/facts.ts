/**
 * What the script of a page knows of the publication stands in a script of its own, loaded before it: it grows with the
 * publication, and the page does not; and a page that was opened from a disk may load scripts and ask for nothing else.
 */
const FACTS_FILE = 'facts.js';

interface Scope {
  publicationFacts?: unknown;
}

/** The text of that script. */
export function renderFacts(facts: object): string {
  return `globalThis.publicationFacts = ${JSON.stringify(facts)};\n`;
}

/** In the browser. */
export function loadedFacts<Facts>(): Facts {
  const { publicationFacts } = globalThis as Scope;
  if (publicationFacts === undefined) throw new Error(`the page has not loaded its ${FACTS_FILE}`);
  return publicationFacts as Facts;
}
