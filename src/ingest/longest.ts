/** Longer than any chain takes, and far shorter than the periods after which timers start again; in ms. */
export const LONGEST_MS = 10_000;
