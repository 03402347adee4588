/** What the invented team wrote down for one session, before and after taking it; no latency among it. */
import type { MethodId } from '../../src/model/bench.ts';

export interface PlannedRun {
  readonly readings: number;
  /** Mean time from one reading to the next. */
  readonly spacingS: number;
  /** What the source timer shows when the run starts; 0 where absent. */
  readonly startS?: number;
}

/** A reading that was taken and does not count. */
export interface Spoiled {
  /** 1-based, both. */
  readonly run: number;
  readonly reading: number;
  /** Added to the shown time; `unreadable` leaves the cell empty. */
  readonly shownError: number | 'unreadable';
  readonly exclude: string;
  readonly note: string;
}

export interface PlannedSettings {
  readonly resolution: 'hd' | 'uhd';
  readonly rate: '23.976' | '25' | '29.97' | '50' | '59.94' | '119.88';
  readonly 'bit-depth': '8' | '10';
  readonly chroma: '4:2:0' | '4:2:2';
  readonly 'audio-out': 'off' | 'on';
  readonly recording: 'off' | 'on';
}

export type BodyId = 'orrin-v2' | 'tamsel-6' | 'wexley-duo';
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
  /** Markdown. */
  readonly notes: string;
}
