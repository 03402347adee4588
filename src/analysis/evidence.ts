/**
 * One run's readings as constraints on the pipeline delay, for each of many possible states of the devices.
 *
 * In one state (a phase and a speed for every device that ticks) a reading allows certain pairs of a capture b
 * and a moment m. Only x = m − b matters for the delay, and the weight of the pair.
 */
export interface ReadingEvidence {
  readonly xMs: readonly number[];
  readonly weights: readonly number[];
}

/** The readings of one run, in order, in one state of the devices. */
export type StateEvidence = readonly ReadingEvidence[];

export interface RunEvidence {
  /** Each as likely as the other before the readings are looked at. */
  readonly states: readonly StateEvidence[];
  /** Width of the window in which the moment lies uniformly from x on; 0 where x holds the moment itself. */
  readonly windowMs: number;
  /** Variance, per reading, of what the states leave out. */
  readonly extraVarianceMs2: number;
  /** How likely this explanation is before the readings are looked at; those of one run sum to 1. */
  readonly share: number;
}

/** Ways to explain one run. */
export type Explanations = readonly RunEvidence[];
