/** The register: the machine-readable list of every published figure. Names are part of the output contract. */

import type { OwnError } from '../analysis/components.ts';
import type { Level } from '../analysis/variation.ts';

export interface FigureSource {
  /** `data/sessions/vennick-uhd25-a.csv` */
  readonly file: string;
  /** Lower-case hexadecimal. */
  readonly sha256: string;
}

export interface Component {
  /** As in the session's budget: `rig phases`, `repeatability`, `observer row skew`. */
  readonly name: string;
  /** Evaluated by statistics of these readings (A) or by other means (B); JCGM 100, 4.2 and 4.3. */
  readonly type: 'A' | 'B';
  readonly distribution: string;
  /** In the unit of the figure. */
  readonly standardUncertainty: number;
  /** null: infinite. */
  readonly degreesOfFreedom: number | null;
  /** Its share of the combined variance, 0 to 1. */
  readonly share: number;
  /** What it is the same for, e.g. `rig:balcony`; null when it is this session's own. */
  readonly shared: string | null;
}

/** A known systematic effect, taken out of the value: `value` was added to it. */
export interface AppliedCorrection {
  readonly name: string;
  /** In the unit of the figure, with its sign. */
  readonly value: number;
  readonly standardUncertainty: number;
}

/** Of a sum of other figures: how much of one is in it. */
export interface Weight {
  /** Id of the other figure. */
  readonly figure: string;
  readonly weight: number;
}

/** What a figure is of. Only the keys that apply are present. */
export type Subject = Readonly<Record<string, string>>;

export interface Figure {
  /** `<kind>/<subject>`, unique: `total/vennick-uhd25-a`. */
  readonly id: string;
  readonly kind: string;
  readonly of: Subject;
  /** `ms`, `frames`, `m`, or `1` for a plain number. */
  readonly unit: string;
  readonly value: number;
  readonly standardUncertainty?: number;
  readonly interval?: { readonly low: number; readonly high: number; readonly level: number };
  /** The lowest and the highest that it can be: limits, not an uncertainty; nothing says where between them it lies. */
  readonly limits?: { readonly low: number; readonly high: number };
  readonly readings: number;
  readonly runs: number;
  readonly excluded: number;
  readonly coverageFactor?: number;
  /** Of what the interval speaks: these clips, their day, or the condition; absent where it is of something else. */
  readonly speaksOf?: Level;
  /** The uncertainty budget (JCGM 100, clauses 4 and 5). */
  readonly components?: readonly Component[];
  /** The error that it shares with no other session, for what is derived from it; computed anew, and not printed. */
  readonly own?: OwnError;
  /** P(error ≥ x) of a figure that rests on several sessions; computed anew, and not printed. */
  readonly errorTail?: (x: number) => number;
  /** The value before `corrections`. */
  readonly uncorrected?: number;
  readonly corrections?: readonly AppliedCorrection[];
  /** Of a value that is a sum of other figures. */
  readonly weights?: readonly Weight[];
  readonly sources: readonly FigureSource[];
  /** What every page prints. Rounded once, here. */
  readonly text: string;
  /** What the figure is, in words: `Total latency`. */
  readonly label: string;
  /** Site path of the entry a reader is led to: `/sessions/vennick-uhd25-a/#total`. */
  readonly entry: string;
  /** Title of the page of entries on which it stands, where that is not its session's page. */
  readonly group?: string;
  /** How it is computed, where that takes more words than its kind has. */
  readonly inWords?: string;
  /** Two-sided p of a true value of 0, of this figure alone. */
  readonly p?: number;
  /** What the data allow to say of a comparison. */
  readonly verdict?: VerdictData;
  /** Why it has no interval, where one would be expected: `no-scatter`, `no-budget`, `unbounded`. */
  readonly reason?: string;
}

/** What a page can print of a figure; an entry tells the rest in words of its own. */
export type PrintedFigure = Pick<
  Figure,
  'id' | 'unit' | 'value' | 'interval' | 'limits' | 'readings' | 'runs' | 'excluded' | 'text' | 'label' | 'entry'
>;

/** A verdict as data; its words are the figure's text. */
export interface VerdictData {
  readonly word: 'slower' | 'faster' | 'same' | 'not-settled' | 'not-estimable';
  /** Half-width of what counts as the same, in ms. */
  readonly marginMs: number;
  readonly family: string;
  /** How many comparisons were adjusted together. */
  readonly familySize: number;
  /** How many statements of claims were adjusted with them; absent for none. */
  readonly claimed?: number;
  /** Holm-adjusted p of no difference. */
  readonly pAdjusted?: number;
  /** Holm-adjusted p of a difference of the margin or more. */
  readonly pSameAdjusted?: number;
  /** On each side, where that many would settle it. */
  readonly furtherRuns?: number;
  /** The same of sessions on other days, where those are less work. */
  readonly furtherSessions?: number;
}

export type Severity = 'note' | 'caution' | 'warning';

export interface Finding {
  readonly rule: string;
  readonly severity: Severity;
  readonly where: Subject;
  readonly message: string;
  readonly hint: string;
}

export interface Register {
  readonly analysis: string;
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/** Degrees of freedom as the register writes them: JSON has no infinity. */
export function finiteOrNull(degreesOfFreedom: number): number | null {
  return Number.isFinite(degreesOfFreedom) ? degreesOfFreedom : null;
}
