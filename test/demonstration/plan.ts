/** What the invented team wrote down for one session, before and after taking it; no latency among it. */
import type { MethodId } from '../../src/model/bench.ts';

export interface PlannedRun {
  readonly readings: number;
  /** Mean time from one reading to the next. */
  readonly spacingS: number;
  /** What the source timer shows when the run starts; 0 where absent. */
  readonly startS?: number;
}

/** Where a reading stands: 1-based, both. */
export interface Place {
  readonly run: number;
  readonly reading: number;
}

/** A reading that was taken and does not count. */
export interface Spoiled extends Place {
  /** Added to the shown time; `unreadable` leaves the cell empty. */
  readonly shownError: number | 'unreadable';
  readonly exclude: string;
  readonly note: string;
}

/** A reading that was typed wrongly, which nobody noticed: it counts. */
export interface Misread extends Place {
  /** Added to the shown time, in ms. */
  readonly shownError: number;
}

export interface PlannedSettings {
  readonly output: 'hd' | 'uhd';
  readonly rate: '23.976' | '25' | '29.97' | '50' | '59.94' | '100';
  readonly stabiliser: 'off' | 'on';
  readonly 'noise-reduction': '0' | '1' | '2' | '3';
  readonly assist: 'off' | 'on';
  readonly fan: 'auto' | 'quiet';
  readonly sync: 'free' | 'genlock';
}

export type BodyId = 'dunmere-30' | 'skelby-dome' | 'vennick-q4';
export type RigId = 'balcony' | 'pit' | 'workshop';

export interface PlannedSession {
  readonly id: string;
  readonly body: BodyId;
  readonly firmware: string;
  readonly rig: RigId;
  /** Where they differ from the rig's own, which are none. */
  readonly links?: readonly 'radio-pair'[];
  readonly method: MethodId;
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly settings: PlannedSettings;
  readonly room: string;
  readonly warmUp: string;
  readonly cutShort?: string;
  readonly runs: readonly PlannedRun[];
  readonly spoiled?: readonly Spoiled[];
  readonly misread?: Misread;
  /** Markdown. */
  readonly notes: string;
}
