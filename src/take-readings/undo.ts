import type { Change } from './session-files.ts';
import type { SessionTexts } from './session-state.ts';

interface Step {
  readonly before: SessionTexts;
  /** Of the files after the change. */
  readonly after: string;
  readonly what: string;
}

/** What was changed through this server, session by session, so that the last change can be taken back while it is the last. */
export class UndoSteps {
  readonly #steps = new Map<string, Step[]>();

  add(id: string, before: SessionTexts, after: string, what: string): void {
    this.#steps.set(id, [...(this.#steps.get(id) ?? []), { before, after, what }]);
  }

  /** What undoing would take back; undefined where the files are no longer what the last change made of them. */
  last(id: string, digest: string): string | undefined {
    const step = this.#steps.get(id)?.at(-1);
    return step?.after === digest ? step.what : undefined;
  }

  /** The files as they were before it. */
  takeBack(id: string, digest: string): Change | undefined {
    const steps = this.#steps.get(id) ?? [];
    const step = steps.at(-1);
    if (step === undefined || step.after !== digest) return undefined;
    return { front: step.before.front, readings: step.before.readings, isUndo: true };
  }

  forgetLast(id: string): void {
    this.#steps.get(id)?.pop();
  }
}
