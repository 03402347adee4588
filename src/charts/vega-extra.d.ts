// exported by vega 6 at run time, missing from its type declarations
import 'vega';

declare module 'vega' {
  export const textMetrics: {
    width: (item: { fontSize?: number; fontWeight?: number | string }, text: unknown) => number;
  };
  export function setRandom(random: () => number): void;
  export function randomLCG(seed: number): () => number;
}
