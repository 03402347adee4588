/**
 * One question being worked on: its files as published, what was changed of them, and the figures of both.
 *
 *     ask → gather and verify → recompute → set beside the published → change → recompute
 */
import { estimateSession } from '../../analysis/estimate.ts';
import type { Bench } from '../../model/bench.ts';
import { readRegister } from '../../register/packed-register.ts';
import type { Figure } from '../../register/register.ts';
import { sessionInput } from '../../register/session-input.ts';
import { lookup } from '../../register/lookup.ts';
import type { Estimator } from '../../register/session-figures.ts';
import { answer, sessionsNeeded, type Question } from '../answer.ts';
import { benchInHand } from '../bench-in-hand.ts';
import { applyChanges, placeOf, type Change } from '../changes.ts';
import { gather, type CheckedFile } from '../gather.ts';
import type { PageFacts } from '../page-facts.ts';
import { estimatorAt } from '../recompute-sessions.ts';
import type { RawFiles } from './raw-files.ts';

/** The level at which everything is published. */
export const PUBLISHED_LEVEL = 0.95;

export class Desk {
  readonly facts: PageFacts;
  readonly #raw: RawFiles;
  readonly #estimates = new Map<string, ReturnType<Estimator>>();
  #published: readonly Figure[] | undefined;

  constructor(facts: PageFacts, raw: RawFiles) {
    this.facts = facts;
    this.#raw = raw;
  }

  /** Every published figure. */
  async published(): Promise<readonly Figure[]> {
    const read = async (): Promise<readonly Figure[]> => {
      const text = new TextDecoder().decode(await this.#raw.read('figures.json'));
      return readRegister(text).figures;
    };
    this.#published ??= await read();
    return this.#published;
  }

  gather(question: Question): Promise<readonly CheckedFile[]> {
    const stated = new Map(this.facts.files.map(({ path, sha256 }) => [path, sha256]));
    return gather(sessionsNeeded(question, this.facts), stated, (path) => this.#raw.read(path));
  }

  /** The bench of these files with these changes. Throws a ProblemsError where they make no sense. */
  bench(files: readonly CheckedFile[], changes: ReadonlyMap<string, Change>): Bench {
    return benchInHand(applyChanges(new Map(files.map(({ path, bytes }) => [path, bytes])), [...changes.values()]));
  }

  /** Session by session, so that the page can say how far it is. */
  async figures(
    bench: Bench,
    question: Question,
    progress: (done: number, of: number) => Promise<void>,
  ): Promise<readonly Figure[]> {
    const estimator = this.#remembering(question.level);
    const find = lookup(bench);
    for (const [done, session] of bench.sessions.entries()) {
      await progress(done, bench.sessions.length);
      try {
        estimator(sessionInput(session, find));
      } catch {
        // Told below, with the row that explains it.
        break;
      }
    }
    return answer(bench, question, this.facts, estimator);
  }

  #remembering(level: number): Estimator {
    const estimator = level === PUBLISHED_LEVEL ? estimateSession : estimatorAt(level);
    return (input) => {
      const key = JSON.stringify([level, input]);
      const estimate = this.#estimates.get(key) ?? estimator(input);
      this.#estimates.set(key, estimate);
      return estimate;
    };
  }
}

/** With one more change: another of the same place takes its place, and one that changes nothing takes it away. */
export function withChange(changes: ReadonlyMap<string, Change>, change: Change): ReadonlyMap<string, Change> {
  const next = new Map(changes);
  if (change.from === change.to) next.delete(placeOf(change));
  else next.set(placeOf(change), change);
  return next;
}
