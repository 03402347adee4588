/**
 * One run's readings as constraints on the pipeline delay, for each of many possible states of the devices.
 *
 * In one state (a phase and a speed for every device that ticks) a reading allows certain pairs of a capture b
 * and a moment m. Only x = m − b matters for the delay, and the weight of the pair.
 */
export interface ReadingEvidence {
  /** Empty where the state has no tick in the window of the stamp: then the stamp can only be a misread. */
  readonly xMs: readonly number[];
  readonly weights: readonly number[];
}

export interface State {
  /** The readings of one run, in order. */
  readonly readings: readonly ReadingEvidence[];
  /**
   * Widths over which every x moves together, evenly on both sides: the phases that one state stands for. A wider delay
   * is as likely as a narrower one by as much.
   */
  readonly boxesMs: readonly number[];
  /** Prior probability, up to a factor common to all states of a run. */
  readonly weight: number;
}

export interface RunEvidence {
  /** Prior weights sum to 1 or less: what they leave out is impossible. */
  readonly states: readonly State[];
  /** True where the states are a sample of more. */
  readonly sampled?: boolean;
  /** The fewest stamps that any of its states leaves out; 0 where absent. */
  readonly misses?: number;
  /** Once the states are in order: what each counts for among them. */
  readonly shares?: readonly number[];
  /** Width of the window in which the moment lies uniformly from x on; 0 where x holds the moment itself. */
  readonly windowMs: number;
  /** How long one frame stands, where that is not T_d. */
  readonly standsMs?: number;
  /** Variance, per reading, of what the states leave out. */
  readonly extraVarianceMs2: number;
  /** How likely this explanation is before the readings are looked at; those of one run sum to 1. */
  readonly share: number;
}

/** Ways to explain one run. */
export type Explanations = readonly RunEvidence[];
