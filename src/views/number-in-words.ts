/** Numbers as they are read aloud: `300` is “three hundred”, `-0.4` “minus nought point four”, `1234` “one thousand two hundred and thirty-four”. */
const UP_TO_NINETEEN =
  'nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

/** @param decimals digits after the point that are said; zeros at their end are not */
export function numberInWords(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) throw new RangeError(`only a finite number can be read aloud, not ${value}`);
  const [whole = '0', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const said = fraction.replace(/0+$/, '');
  const isNegative = value < 0 && (Number(whole) > 0 || said !== '');
  const digits = [...said].map((digit) => UP_TO_NINETEEN[Number(digit)]);
  const words = [wholeInWords(Number(whole)), ...(digits.length > 0 ? ['point', ...digits] : [])].join(' ');
  return isNegative ? `minus ${words}` : words;
}

function wholeInWords(value: number): string {
  if (value >= 1_000_000) {
    const rest = value % 1_000_000;
    return joined(`${wholeInWords(Math.floor(value / 1_000_000))} million`, rest);
  }
  if (value >= 1000) return joined(`${wholeInWords(Math.floor(value / 1000))} thousand`, value % 1000);
  if (value >= 100) {
    const rest = value % 100;
    const hundreds = `${UP_TO_NINETEEN[Math.floor(value / 100)]} hundred`;
    return rest === 0 ? hundreds : `${hundreds} and ${wholeInWords(rest)}`;
  }
  if (value >= 20) {
    const ten = TENS[Math.floor(value / 10) - 2];
    return value % 10 === 0 ? `${ten}` : `${ten}-${UP_TO_NINETEEN[value % 10]}`;
  }
  return UP_TO_NINETEEN[value] ?? '';
}

/** What is below a hundred is joined with “and”: `one thousand and five`. */
function joined(head: string, rest: number): string {
  if (rest === 0) return head;
  return `${head} ${rest < 100 ? 'and ' : ''}${wholeInWords(rest)}`;
}
