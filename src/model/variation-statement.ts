/** `data/variation.yaml`: how delays vary on a bench, as learnt from its sessions on a day or stated by its author. */

/** Sizes with weights that sum to 1. */
export type StatedSizes = readonly { readonly size: number; readonly weight: number }[];

export interface StatedLevel {
  /** Standard deviations, as fractions of the body's frame interval. */
  readonly change: StatedSizes;
  /** Probabilities of a whole frame more. */
  readonly step: StatedSizes;
}

export interface StatedLevels {
  readonly clip: StatedLevel;
  readonly day: StatedLevel;
}

export interface VariationStatement {
  /** ISO 8601 calendar date on which it was learnt or stated. */
  readonly date: string;
  /** Version of the analysis that learnt it. */
  readonly analysis: string;
  /** The highest level of which there is evidence. */
  readonly knows: 'clips' | 'day' | 'condition';
  /** Where the sizes come from, if not from these sessions. */
  readonly stated?: string;
  readonly reading: { readonly jitter: StatedSizes; readonly repeat: StatedSizes; readonly misread: StatedSizes };
  readonly bodies: Readonly<Record<string, StatedLevels>>;
  /** Of a body that is not among them. */
  readonly others: StatedLevels;
  /** The sessions it was learnt from, by id, each with the beginnings of the checksums of its two files. */
  readonly sessions: Readonly<Record<string, string>>;
}

/** What is stated of one body. */
export function statedOf(
  { bodies, others }: Pick<VariationStatement, 'bodies' | 'others'>,
  body: string,
): StatedLevels {
  return (Object.hasOwn(bodies, body) ? bodies[body] : undefined) ?? others;
}
