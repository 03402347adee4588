import { digitsOf, formatDigits, isWhole, keptDigits } from './stamp.ts';

/** A field in which a time is typed by its digits; what stands between them is written by itself. Without an example: any number. */
export class StampField {
  readonly input: HTMLInputElement;
  /** Called when its text changes by hand. */
  onChange: () => void = () => undefined;
  #example: string | undefined;

  constructor(input: HTMLInputElement) {
    this.input = input;
    input.addEventListener('beforeinput', (event) => this.#before(event));
    input.addEventListener('input', () => {
      this.#format();
      this.onChange();
    });
  }

  set example(example: string | undefined) {
    this.#example = example;
    this.input.placeholder = example?.replace(/\d/g, '0') ?? '';
  }

  get text(): string {
    return this.input.value;
  }

  set text(text: string) {
    this.input.value = text;
  }

  /** Digits that stand there already; the next one is typed after them. */
  prefill(digits: string): void {
    this.text = this.#example === undefined ? '' : formatDigits(digits, this.#example);
    this.toEnd();
  }

  get isWhole(): boolean {
    return this.#example === undefined ? /^\d+(?:\.\d+)?$/.test(this.text) : isWhole(this.text, this.#example);
  }

  focus(): void {
    this.input.focus();
    this.toEnd();
  }

  toEnd(): void {
    this.input.setSelectionRange(this.text.length, this.text.length);
  }

  /** Digits are taken away and written over one by one, whatever stands between them. */
  #before(event: InputEvent): void {
    const { selectionStart: at, selectionEnd: to, value } = this.input;
    if (this.#example === undefined || at === null || at !== to) return;
    if (event.inputType === 'deleteContentBackward' && at === value.length) {
      event.preventDefault();
      this.text = formatDigits(digitsOf(value).slice(0, -1), this.#example).replace(/\D$/, '');
      this.onChange();
    } else if (/^\d$/.test(event.data ?? '') && at < value.length && this.isWhole) {
      event.preventDefault();
      const place = at + (/^\D/.test(value.slice(at)) ? 1 : 0);
      this.text = value.slice(0, place) + event.data + value.slice(place + 1);
      this.input.setSelectionRange(place + 1, place + 1);
      this.onChange();
    }
  }

  #format(): void {
    if (this.#example === undefined) {
      this.text = this.text.replace(/[^\d.]/g, '');
      return;
    }
    const { selectionStart, value } = this.input;
    const before = digitsOf(value.slice(0, selectionStart ?? value.length)).length;
    const isAtEnd = selectionStart === value.length;
    this.text = formatDigits(keptDigits(value, this.#example), this.#example);
    if (isAtEnd) {
      this.toEnd();
      return;
    }
    let [at, seen] = [0, 0];
    while (at < this.text.length && seen < before) {
      if (/\d/.test(this.text[at] ?? '')) seen += 1;
      at += 1;
    }
    this.input.setSelectionRange(at, at);
  }
}
