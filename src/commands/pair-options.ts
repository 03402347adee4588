/** What the commands about two displays take, from text to values. */
import { readdir } from 'node:fs/promises';
import { basename, extname, join } from 'node:path';
import { parseDurationMs } from '../ingest/quantities.ts';
import { PAIR_METHODS, type Bench, type DisplayPair } from '../model/bench.ts';
import { parseRate, type Rate } from '../model/rate.ts';
import type { DescribedPair } from '../ingest/render-display-pair.ts';
import { choose } from './plan-options.ts';
import { CallError, type CommandOptions } from './run.ts';

export const PAIR_OPTIONS = {
  display: { type: 'string' },
  against: { type: 'string' },
  like: { type: 'string' },
  picture: { type: 'string' },
  outputs: { type: 'string' },
  'observer-rate': { type: 'string' },
} as const;

export const PAIR_USAGE = `  --display DISPLAY    the display in question; read under shown
  --against DISPLAY    the one that it is held against; read under source
  --like PAIR          picture, outputs, observer and rows of a comparison that there is already
  --picture RATE       the rate of the picture that both show
  --outputs HOW        splitter; unknown for two outputs that nobody compared; or how far two were found alike: 1 ms
  --observer-rate RATE the rate of the observer`;

/** Whether two displays are asked about. */
export function asksForPair(options: CommandOptions<typeof PAIR_OPTIONS>): boolean {
  return Object.keys(PAIR_OPTIONS).some((name) => options[name as keyof typeof PAIR_OPTIONS] !== undefined);
}

/** The same options; those of a session beside them are a mistake. */
export function withoutSession<O extends CommandOptions<typeof PAIR_OPTIONS>>(
  options: O,
  ofSession: readonly (keyof O & string)[],
): O {
  const [stray] = ofSession.filter((name) => options[name] !== undefined);
  if (stray !== undefined)
    throw new CallError(`--${stray} is of a session, and two displays are compared without any body: leave it out.`);
  return options;
}

/** Ids of comparisons that there are, planned ones included. */
export async function takenIds(root: string): Promise<ReadonlySet<string>> {
  const files = await readdir(join(root, 'data/display-pairs')).catch(() => []);
  return new Set(files.map((file) => basename(file, extname(file))));
}

/** @param method as said; of the comparison that it is to be like, or displays side by side, if left out */
export function readPair(
  options: CommandOptions<typeof PAIR_OPTIONS>,
  bench: Bench,
  method: string | undefined,
): DescribedPair {
  const { id: display } = choose('display', options['display'], bench.displays);
  const { id: against } = choose('against', options['against'], bench.displays, 'display');
  if (display === against) throw new CallError('--display and --against are two displays, not one.');
  const like =
    options['like'] === undefined ? undefined : choose('like', options['like'], bench.displayPairs, 'comparison');
  const known = method ?? like?.method ?? 'side-by-side';
  const way = choose(
    'method',
    known,
    PAIR_METHODS.map((id) => ({ id })),
  ).id;
  if (!bench.methods.some(({ id }) => id === way))
    throw new CallError(`Say first how it is done: write content/methods/${way}.mdx, which readers are led to.`);
  const observerRate = options['observer-rate'];
  const observer =
    observerRate === undefined
      ? like?.observer
      : { name: 'Observer', ...like?.observer, rate: rateOf('observer-rate', observerRate) };
  return {
    method: way,
    display,
    against,
    sourceTimer: timerOf(options['picture'], like),
    outputs: options['outputs'] === undefined ? outputsOf(like, way) : readOutputs(options['outputs']),
    ...(observer === undefined ? {} : { observer }),
    ...(like?.digitsRow === undefined ? {} : { digitsRow: like.digitsRow }),
    ...(like?.againstDigitsRow === undefined ? {} : { againstDigitsRow: like.againstDigitsRow }),
  };
}

function timerOf(picture: string | undefined, like: DisplayPair | undefined): DescribedPair['sourceTimer'] {
  if (picture === undefined && like === undefined)
    throw new CallError(
      'Say at which rate the picture comes: --picture 60; or --like a comparison that there is already.',
    );
  const named = { name: 'Running timer', ...like?.sourceTimer };
  return picture === undefined
    ? { ...named, refresh: named.refresh as Rate }
    : { ...named, refresh: rateOf('picture', picture) };
}

/** Of a mirrored screen the outputs are two; a splitter is what stands between displays side by side. */
function outputsOf(like: DisplayPair | undefined, method: string): DescribedPair['outputs'] {
  if (like !== undefined && like.method === method) return like.outputs;
  return method === 'mirrored-screen' ? {} : { standardUncertaintyMs: 0 };
}

function readOutputs(text: string): DescribedPair['outputs'] {
  if (text === 'unknown') return {};
  const standardUncertaintyMs = text === 'splitter' ? 0 : parseDurationMs(text);
  if (standardUncertaintyMs === undefined)
    throw new CallError(`--outputs is splitter, unknown or a duration such as "1 ms", not '${text}'.`);
  return { standardUncertaintyMs };
}

function rateOf(option: string, text: string): Rate {
  const rate = parseRate(text);
  if (rate === undefined) throw new CallError(`--${option}: '${text}' is no rate; write 60, 59.94 or 60000/1001.`);
  return rate;
}
