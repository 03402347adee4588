import type { Display } from '../../src/model/bench.ts';
import { rate } from '../../src/model/rate.ts';

/** A display at 60 Hz that follows its input. */
export function display(id: string, name: string, latency?: Display['latency']): Display {
  return {
    id,
    name,
    invented: true,
    description: '',
    prose: [],
    file: { path: `data/displays/${id}.md`, sha256: '0'.repeat(64), bytes: 1 },
    refresh: rate(60),
    sync: 'input',
    ...(latency === undefined ? {} : { latency }),
  };
}
