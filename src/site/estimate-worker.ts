/** A thread that estimates sessions, as many as it is sent at a time: answers with what is kept of each, in their order. */
import { parentPort } from 'node:worker_threads';
import { estimateSession, keepEstimate, type Estimate } from '../analysis/estimate.ts';
import type { SessionInput } from '../analysis/session-input.ts';

/** undefined for a session that the analysis refuses: whoever asked finds out why by asking again. */
function tryEstimate(input: SessionInput): Estimate | undefined {
  try {
    return keepEstimate(estimateSession(input));
  } catch {
    return undefined;
  }
}

parentPort?.on('message', (inputs: readonly SessionInput[]) => {
  parentPort?.postMessage(inputs.map(tryEstimate));
});
