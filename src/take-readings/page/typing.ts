/** The form in which a reading is typed: what stands there already, the latency at once, and what is handed on. */
import { TimerPairs } from '../../ingest/timer-pairs.ts';
import { rate } from '../../model/rate.ts';
import { roundTo } from '../../register/text.ts';
import type { SessionState } from '../session-state.ts';
import type { Here } from './clip-view.ts';
import { byId, memory } from './dom.ts';
import { nextShown, nextSource, type Placed } from './foretell.ts';
import { StampField } from './stamp-field.ts';
import { commonStart, msOf } from './stamp.ts';

interface Draft {
  readonly first: string;
  readonly second: string;
}

export class Typing {
  readonly first = new StampField(byId('first', HTMLInputElement));
  readonly second = new StampField(byId('second', HTMLInputElement));
  readonly #latency = byId('latency', HTMLElement);
  #state: SessionState | undefined;
  #placed: readonly Placed[] = [];
  #here: Here | undefined;
  #run = 1;
  #isTouched = false;

  constructor() {
    this.first.onChange = () => {
      this.#touch();
      if (this.isPair && this.first.isWhole && document.activeElement === this.first.input) this.#onToSecond();
      this.#showLatency();
    };
    this.second.onChange = () => {
      this.#touch();
      this.#showLatency();
    };
    this.second.input.addEventListener('keydown', (event) => {
      if (event.key !== 'Backspace' || this.second.text !== '') return;
      event.preventDefault();
      this.first.focus();
    });
  }

  get isPair(): boolean {
    return this.#state?.method === 'two-timers';
  }

  /** Another session, or the same with other readings; what is being typed stays. */
  enter(state: SessionState, run: number): void {
    const isOther = state.id !== this.#state?.id;
    this.#state = state;
    this.#run = run;
    const [first = '', second = ''] = this.#columns.map((column) => state.names[column] ?? column);
    byId('first-label', HTMLElement).textContent = state.method === 'instrument' ? `${first} in ms` : first;
    byId('second-label', HTMLElement).textContent = second;
    for (const id of ['second-part', 'zoom-second']) byId(id, HTMLElement).hidden = !this.isPair;
    for (const field of [this.first, this.second]) field.example = this.isPair ? state.example : undefined;
    if (!isOther) return;
    this.#isTouched = false;
    const draft = memory.read<Draft>(state.id, 'draft');
    if (draft === undefined) return;
    [this.first.text, this.second.text] = [draft.first, draft.second];
    this.#isTouched = draft.first !== '' || draft.second !== '';
    this.#showLatency();
  }

  /** Where the clip stands, and what was read of it. */
  place(here: Here | undefined, placed: readonly Placed[]): void {
    [this.#here, this.#placed] = [here, placed];
    if (!this.#isTouched) this.#prefillFirst();
  }

  /** Ready for the next reading. */
  next(): void {
    this.#isTouched = false;
    this.second.text = '';
    this.#prefillFirst();
    this.#showLatency();
    if (this.#state !== undefined) memory.write(this.#state.id, 'draft', { first: '', second: '' });
    this.first.focus();
  }

  /** Cells to be changed, or taken back. */
  load(cells: Readonly<Record<string, string>>): void {
    [this.first.text, this.second.text] = [this.#columns[0] ?? '', this.#columns[1] ?? ''].map(
      (name) => cells[name] ?? '',
    ) as [string, string];
    this.#touch();
    this.#showLatency();
    this.first.focus();
  }

  get isWhole(): boolean {
    return this.first.isWhole && (!this.isPair || this.second.isWhole);
  }

  /** What stands in the fields; a half-typed time is none. */
  cells(): Record<string, string> {
    const [first = 'source', second] = this.#columns;
    return {
      [first]: this.first.isWhole ? this.first.text : '',
      ...(second === undefined ? {} : { [second]: this.second.isWhole ? this.second.text : '' }),
    };
  }

  /** To the field that is not filled in yet; whether there is one. */
  toMissing(): boolean {
    if (this.isWhole) return false;
    if (this.first.isWhole) this.second.focus();
    else this.first.focus();
    return true;
  }

  get #columns(): readonly string[] {
    return (this.#state?.columns ?? []).filter((name) => !['run', 'exclude', 'note'].includes(name));
  }

  #touch(): void {
    this.#isTouched = true;
    if (this.#state !== undefined)
      memory.write(this.#state.id, 'draft', { first: this.first.text, second: this.second.text } satisfies Draft);
  }

  #prefillFirst(): void {
    const state = this.#state;
    if (state?.example === undefined) {
      this.first.prefill('');
      return;
    }
    const lastMs = state.readings.findLast(
      ({ run, sourceMs, excluded }) => run === this.#run && sourceMs !== undefined && excluded === undefined,
    )?.sourceMs;
    const between = nextSource(this.#placed, this.#here, lastMs, {
      refreshMs: state.refreshMs ?? 20,
      observerFrameMs: state.observerFrameMs,
    });
    const isPastWrap = between !== undefined && between.highMs >= (state.wrapsAfterMs ?? Infinity);
    this.first.prefill(
      between === undefined || isPastWrap ? '' : commonStart(between.lowMs, between.highMs, state.example),
    );
  }

  #onToSecond(): void {
    const [state, sourceMs] = [this.#state, msOf(this.first.text)];
    if (state?.example !== undefined && sourceMs !== undefined && !this.second.isWhole) {
      const latencies = state.readings.flatMap(({ latencyMs, excluded, remarks }) =>
        latencyMs === undefined || excluded !== undefined || remarks.length > 0 ? [] : [latencyMs],
      );
      const { lowMs, highMs } = nextShown(sourceMs, latencies, state.rangeMs ?? 100, state.signed);
      this.second.prefill(lowMs < 0 ? '' : commonStart(lowMs, highMs, state.example));
    }
    this.second.focus();
  }

  /** By the same reader of pairs as in a build. */
  #showLatency(): void {
    const state = this.#state;
    this.#latency.textContent = '';
    if (state === undefined || !this.isPair || !this.isWhole) return;
    const timer = {
      name: '',
      refresh: rate(60),
      ...(state.wrapsAfterMs === undefined ? {} : { wrapsAfterMs: state.wrapsAfterMs }),
    };
    const { latencyMs } = new TimerPairs(timer, () => undefined, state.signed).parse(
      1,
      ['', this.first.text, this.second.text],
      false,
    );
    const decimals = Math.max(0, (this.first.text.split('.')[1]?.length ?? 0) - 3);
    this.#latency.textContent =
      latencyMs === undefined
        ? 'The display shows more than the timer: not possible.'
        : `${roundTo(latencyMs, decimals)} ms`;
  }
}
