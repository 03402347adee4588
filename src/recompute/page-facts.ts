/** What the page that recomputes says of the publication, for its script: checksums, sessions, families. */
import type { Families } from './answer.ts';

export interface PageFacts extends Families {
  readonly analysis: string;
  readonly files: readonly { readonly path: string; readonly sha256: string }[];
  readonly sessions: readonly { readonly id: string; readonly title: string }[];
}
