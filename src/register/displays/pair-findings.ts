/** What a careful editor would want to know of two displays read against each other. */
import { intervalMs, rateLabel } from '../../model/rate.ts';
import { longestBeat } from '../../analysis/beat.ts';
import { countedRuns } from '../session-input.ts';
import type { Finding } from '../register.ts';
import type { CompiledPair } from './compile-pairs.ts';

type Found = Pick<Finding, 'rule' | 'severity' | 'message' | 'hint'>;

/** Probability of a misread, and of the stated rates, from which on it is said. */
const MISREAD = 0.5;
const DOUBTFUL = 0.05;
/** Readings of one clip see one phase while a beat lasts for longer. */
const LONG_BEAT_MS = 10_000;

export function pairFindings(pairs: readonly CompiledPair[]): readonly Finding[] {
  return pairs.flatMap((compiled) =>
    [oneClip(compiled), inStep(compiled), outputs(compiled), misread(compiled), rates(compiled)].flatMap((found) =>
      found === undefined ? [] : [{ ...found, where: { 'display-pair': compiled.pair.id } }],
    ),
  );
}

function oneClip({ figure }: CompiledPair): Found | undefined {
  if (figure.runs > 1) return undefined;
  return {
    rule: 'pair-one-clip',
    severity: 'note',
    message: 'One clip only: a display that starts a frame deeper now and then would not be noticed.',
    hint: 'Unplug and plug the splitter, or switch the input, between clips; four clips of four readings are a good plan.',
  };
}

function inStep({ pair: { observer, sourceTimer } }: CompiledPair): Found | undefined {
  if (observer === undefined) return undefined;
  const multiple = Math.max(1, Math.round((intervalMs(sourceTimer.refresh) / intervalMs(observer.rate)) * 1e6) / 1e6);
  if (multiple > 1.5) return undefined;
  const { periodMs } = longestBeat(observer.rate, sourceTimer.refresh, 1);
  if (periodMs < LONG_BEAT_MS) return undefined;
  return {
    rule: 'pair-in-step',
    severity: 'caution',
    message: `The observer at ${rateLabel(observer.rate)} frames/s keeps in step with the picture at ${rateLabel(sourceTimer.refresh)} Hz, so that all readings of a clip see one phase: more of them do not help.`,
    hint: 'Film at a rate that does not divide the picture’s (50 against 60), or at several times it, or take more clips.',
  };
}

function outputs({ pair }: CompiledPair): Found | undefined {
  if (pair.outputs.standardUncertaintyMs !== undefined) return undefined;
  return {
    rule: 'pair-outputs-unknown',
    severity: 'note',
    message:
      'The two displays hang on outputs that nobody compared: the picture may leave one of them up to a frame before the other, and the interval allows for that.',
    hint: 'Feed both through a splitter that converts nothing (outputs: splitter), or swap the outputs and measure again.',
  };
}

/** Whether one reading of a run is more likely misread than not. */
export function isMisread({ estimate }: CompiledPair, run: number, reading: number): boolean {
  return (estimate.misreads[run]?.[reading] ?? 0) > MISREAD;
}

function misread(compiled: CompiledPair): Found | undefined {
  const lines = countedRuns(compiled.pair).flatMap((run, r) =>
    run.flatMap(({ line }, i) => (isMisread(compiled, r, i) ? [line] : [])),
  );
  if (lines.length === 0) return undefined;
  return {
    rule: 'pair-misread',
    severity: 'caution',
    message: `Line ${lines.join(' and line ')} of its readings does not go with the others by more than frames and refreshes explain.`,
    hint: 'Look at the film again: correct the digits, or say under exclude why the reading does not count.',
  };
}

function rates({ estimate }: CompiledPair): Found | undefined {
  if (estimate.ratesProbability > DOUBTFUL) return undefined;
  return {
    rule: 'pair-rates',
    severity: 'caution',
    message: 'The values read contradict the rates that are stated for the picture, the displays or the observer.',
    hint: 'Check the rate of the picture and whether each display follows its input or refreshes on its own clock.',
  };
}
