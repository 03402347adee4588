/** A text as a reader takes it in, and where in the text as written each of its characters comes from. */
export interface PlainText {
  readonly text: string;
  /** Index in the text as written; one more than there are characters, for the end. */
  readonly from: readonly number[];
}

/** Characters that nobody sees: soft hyphens, joiners, marks of direction. */
const UNSEEN = /[\p{Cf}\p{Mn}]/u;
/** Letters of other scripts that look like those of units. */
const LOOKS_LIKE: Readonly<Record<string, string>> = { ѕ: 's', ꜱ: 's', м: 'm', а: 'a', е: 'e', о: 'o', ο: 'o', с: 'c' };
const DIGIT = /\p{Nd}/u;
/** The zero of each script’s ten digits, which stand in a row (Unicode Standard, 4.6). */
const valueOfDigit = (char: string): number => {
  let zero = char.codePointAt(0) ?? 0;
  for (let value = 0; value < 10; value += 1, zero -= 1) if (!DIGIT.test(String.fromCodePoint(zero - 1))) return value;
  return 0;
};

/**
 * Full-width and other digits, units written as one character, fractions (`½`), blanks and hyphens of every kind come
 * out as the plain characters that they read as; what nobody sees is left out.
 */
export function plainText(written: string): PlainText {
  let text = '';
  const from: number[] = [];
  let index = 0;
  for (const char of written) {
    const plain = plainOf(char, text);
    text += plain;
    for (let count = 0; count < plain.length; count += 1) from.push(index);
    index += char.length;
  }
  return { text, from: [...from, index] };
}

function plainOf(char: string, before: string): string {
  if (char.length === 1 && char >= ' ' && char <= '~') return char;
  if (UNSEEN.test(char)) return '';
  if (DIGIT.test(char)) return String(valueOfDigit(char.normalize('NFKC')) % 10);
  if (/\s/u.test(char)) return ' ';
  if (/[‐‑]/.test(char)) return '-';
  if (/[’ʼ]/.test(char)) return "'";
  const plain = LOOKS_LIKE[char] ?? char.normalize('NFKC').replace('⁄', '/');
  // `7½` is seven and a half, not 71/2
  return /^\d+\/\d+$/.test(plain) && /\d$/.test(before) ? ` ${plain}` : plain;
}
