/** Estimates of many sessions before they are asked for, on every core of the machine. */
import { once } from 'node:events';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Estimate } from '../analysis/estimate.ts';
import type { SessionInput } from '../analysis/session-input.ts';
import type { Memory } from '../memory/memory.ts';

type Estimates = Memory<SessionInput, Estimate>;

interface AheadOptions {
  readonly threads?: number;
  readonly report?: (done: number, of: number) => void;
}

/** Sessions for which starting threads costs more than it saves. */
const FEW = 32;
/** Sessions that a thread is sent at a time. */
const BATCH = 8;

/**
 * Lets threads estimate what memory does not hold yet. It is the same whoever estimates what, and in whatever order; a
 * thread that fails leaves its sessions to be estimated when they are asked for.
 */
export async function estimateAhead(
  estimates: Estimates,
  inputs: readonly SessionInput[],
  { threads = availableParallelism(), report = () => {} }: AheadOptions = {},
): Promise<void> {
  const missing = inputs.filter((input) => !estimates.knows(input));
  if (missing.length < FEW || threads < 2) return;
  const waiting = [...missing];
  const take = (): readonly SessionInput[] => waiting.splice(0, BATCH);
  let done = 0;
  const work = async (): Promise<void> => {
    const worker = new Worker(new URL('./estimate-worker.ts', import.meta.url));
    try {
      for (let batch = take(); batch.length > 0; batch = take()) {
        const kept = await answerTo(worker, batch);
        for (const [index, input] of batch.entries()) {
          const one = kept[index];
          if (one !== undefined) estimates.learn(input, one);
        }
        done += batch.length;
        report(done, missing.length);
      }
    } catch {
      // What it had is estimated when it is asked for.
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: threads }, work));
}

async function answerTo(worker: Worker, batch: readonly SessionInput[]): Promise<readonly (Estimate | undefined)[]> {
  const answered = once(worker, 'message');
  worker.postMessage(batch);
  const [kept] = (await answered) as [readonly (Estimate | undefined)[]];
  return kept;
}
