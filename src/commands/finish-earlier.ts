import { complain } from './say.ts';
import { finishWriting } from './write-all.ts';

/** Finishes what a command before this one was killed in the middle of, and says so. Returns the files. */
export async function finishEarlier(root: string): Promise<readonly string[]> {
  const finished = await finishWriting(root);
  if (finished.length > 0)
    complain(`A command before was cut short; what it wrote is whole now: ${finished.join(', ')}.\n`);
  return finished;
}
