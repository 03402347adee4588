import type { Bench } from '../model/bench.ts';
import type { Sentence } from '../register/sentence.ts';
import type { ChainRow } from './chain-rows.ts';
import { displayElement, linkElement } from '../register/chain/elements.ts';

/** Whether the parts have latencies of their own, and what they hang on. */
export function describeAnchors(bench: Bench, rows: readonly ChainRow[]): Sentence {
  const stated = [
    ...bench.displays.map((display) => ({ ...display, element: displayElement(display.id) })),
    ...bench.links.map((link) => ({ ...link, element: linkElement(link.id) })),
  ].filter(({ latency, element }) => latency !== undefined && rows.some((row) => row.element === element));
  if (stated.length === 0) {
    return [
      'No latency of any display on this bench is stated. Totals, what a link adds, and differences between bodies or between displays need none; the latency of a body or of a display by itself does.',
    ];
  }
  return [
    stated.map(({ name, latency }) => `${name}: stated, ${latency?.source.trim() ?? ''}.`).join(' '),
    ' The other latencies follow from it through the sessions that share a part, and are as good as that statement; a correction there moves them all.',
  ];
}
