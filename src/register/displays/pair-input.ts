import type { ChainDisplay } from '../../analysis/chain.ts';
import type { PairInput } from '../../analysis/pair-input.ts';
import type { PairSetup } from '../../analysis/plan-pairs.ts';
import type { DisplayPair } from '../../model/bench.ts';
import type { Lookup } from '../lookup.ts';
import { runsOf } from '../session-input.ts';

/** What the analysis needs to know of two displays read against each other. */
export function pairInput(pair: DisplayPair, find: Lookup): PairInput {
  return { ...pairSetup(pair, find), runs: runsOf(pair, pair.sourceTimer.wrapsAfterMs) };
}

/** The same before any reading. */
export function pairSetup(
  pair: Pick<
    DisplayPair,
    'sourceTimer' | 'outputs' | 'observer' | 'resolutionMs' | 'display' | 'against' | 'digitsRow' | 'againstDigitsRow'
  >,
  find: Lookup,
): PairSetup {
  const { sourceTimer, outputs, observer, resolutionMs = 1 } = pair;
  const { standardUncertaintyMs } = outputs;
  const displayOf = (id: string, digitsRow: number | undefined): ChainDisplay => {
    const { refresh, sync, scanOutMs } = find.display(id);
    return {
      refresh,
      sync,
      ...(scanOutMs === undefined ? {} : { scanOutMs }),
      ...(digitsRow === undefined ? {} : { digitsRow }),
    };
  };
  return {
    picture: {
      rate: sourceTimer.refresh,
      ...(sourceTimer.clockTolerancePpm === undefined ? {} : { clockTolerancePpm: sourceTimer.clockTolerancePpm }),
    },
    source: displayOf(pair.against, pair.againstDigitsRow),
    shown: displayOf(pair.display, pair.digitsRow),
    ...(observer === undefined ? {} : { observer }),
    outputs:
      standardUncertaintyMs === undefined ? { kind: 'unknown' } : { kind: 'stated', valueMs: 0, standardUncertaintyMs },
    resolutionMs,
  };
}
