/** Numbers that look like results and were typed into a write-up by hand: they would stay when the data move. */
import type { Bench, Part, Prose, WriteUp } from '../../model/bench.ts';
import { parseRate, rateKey } from '../../model/rate.ts';
import { parseQuantity, type Quantity } from '../claims/quantity.ts';
import type { Finding } from '../../register/register.ts';
import { partNamed } from '../parts.ts';
import { readProps } from '../parts/definition.ts';
import { findNumbers, type NumberFound } from './find-numbers.ts';

const MEANT =
  'Ask for it with <Figure>, bind it to data with <Claim>, or mark it as meant: <Quoted from="…"> for a number from elsewhere, <Setting> for one that was chosen.';

/** Of every method note and report, in the order of their lines. */
export function typedNumbers(bench: Bench): readonly Finding[] {
  const isSetting = settingRates(bench);
  return [...bench.methods, ...bench.reports].flatMap((writeUp) =>
    [...inProse(writeUp), ...writeUp.parts.flatMap(inPart)]
      .filter(({ number }) => number.rate === undefined || !isSetting(number.rate))
      .sort((a, b) => a.line - b.line)
      .map(
        ({ number, line, claimed }): Finding => ({
          rule: 'typed-number',
          severity: 'caution',
          where: { place: `${writeUp.file.path}:${line}` },
          message: claimed
            ? `“${number.text}” stands in the words of a claim, which asserts another number.`
            : `“${number.text}” was typed by hand, so it stays as it is when the data move.`,
          hint: claimed ? 'Let the words and the property say the same.' : MEANT,
        }),
      ),
  );
}

interface Typed {
  readonly number: NumberFound;
  readonly line: number;
  readonly claimed?: boolean;
}

function inProse({ prose }: WriteUp): readonly Typed[] {
  return prose.flatMap((pieces) =>
    findNumbers(pieces.map(({ text }) => text).join('')).map((number) => ({
      number,
      line: lineAt(pieces, number.index),
    })),
  );
}

/** In captions, and in words of a claim that its properties do not say. */
function inPart(part: Part): readonly Typed[] {
  const { line, attributes, words } = part;
  const definition = partNamed(part.name);
  if (definition === undefined) return [];
  const prose = Object.entries(definition.properties)
    .filter(([, { isProse }]) => isProse === true)
    .flatMap(([property]) => {
      const value = attributes[property];
      return value?.known === true && typeof value.value === 'string' ? [value.value] : [];
    });
  const inProperties = prose.flatMap((text) => findNumbers(text).map((number) => ({ number, line })));
  if (definition.says === undefined || words === undefined) return inProperties;
  const props = readProps(definition, part);
  const asserted = props === undefined ? [] : definition.says(props);
  const unasserted = findNumbers(words).filter(({ text }) => !asserted.some((quantity) => isSame(text, quantity)));
  return [...inProperties, ...unasserted.map((number) => ({ number, line, claimed: true }))];
}

function isSame(written: string, { unit, value }: Quantity): boolean {
  const quantity = parseQuantity(
    written
      .replace(/milliseconds?/, 'ms')
      .replace(/per ?cent/, '%')
      .replace(/^[±+]\s?/, ''),
  );
  return quantity?.unit === unit && Math.abs(quantity.value) === Math.abs(value);
}

/** Rates that this bench sets or runs at are settings, whoever types them. */
function settingRates({ settings, displays, rigs }: Bench): (written: string) => boolean {
  const rates = [
    ...settings
      .filter(({ kind }) => kind === 'rate')
      .flatMap(({ levels }) => levels.flatMap(({ id }) => parseRate(id) ?? [])),
    ...displays.map(({ refresh }) => refresh),
    ...rigs.flatMap(({ sourceTimer, observer }) => [sourceTimer?.refresh ?? [], observer?.rate ?? []].flat()),
  ];
  const keys = new Set(rates.map(rateKey));
  return (written) => {
    const rate = parseRate(written);
    return rate !== undefined && keys.has(rateKey(rate));
  };
}

function lineAt(pieces: Prose, index: number): number {
  let start = 0;
  for (const { text, line } of pieces) {
    if (index < start + text.length) return line + (text.slice(0, index - start).match(/\n/g) ?? []).length;
    start += text.length;
  }
  return pieces[0]?.line ?? 1;
}
