/** Quantities that were typed by hand where readers read them: they would stay as they are when the data move. */
import type { Bench, Part, Prose, WriteUp } from '../../model/bench.ts';
import type { Problem } from '../../model/problem.ts';
import { once } from '../../model/once.ts';
import { parseRate, rateKey } from '../../model/rate.ts';
import type { Finding } from '../../register/register.ts';
import { partNamed } from '../parts.ts';
import { findQuantities, type QuantityFound } from './find-quantities.ts';
import { findLooseQuantities } from './loose-quantities.ts';
import { isSameQuantity } from './same-quantity.ts';
import { settingQuantities } from './setting-quantities.ts';

export interface TypedQuantity {
  readonly file: string;
  readonly line: number;
  readonly text: string;
}

/** Of every write-up and note, in the order of the files and of their lines. */
export const typedQuantities: (bench: Bench) => readonly TypedQuantity[] = once((bench) => {
  const isSetting = settingQuantities(bench);
  const { site, bodies, displays, links, rigs, sessions, methods, reports } = bench;
  const notes = [site, ...bodies, ...displays, ...links, ...rigs, ...sessions].map((note) => ({
    file: note.file.path,
    texts: note.prose,
    stated: 'stated' in note ? (note.stated ?? []) : [],
  }));
  const writeUps = [...methods, ...reports].map((writeUp) => ({
    file: writeUp.file.path,
    texts: [...writeUp.prose, ...writeUp.parts.flatMap((part) => ofPart(part, writeUp))],
    stated: [],
  }));
  return [...writeUps, ...notes].flatMap(({ file, texts, stated }) =>
    [...texts, ...acrossBlocks(texts)]
      .flatMap((pieces) => {
        const written = pieces.map(({ text }) => text).join('');
        const quantities = findQuantities(written).filter(
          (quantity) => !isSetting(quantity) && !stated.some((value) => says(value, quantity)),
        );
        const loose = findLooseQuantities(written).filter(({ index }) => !quantities.some((one) => covers(one, index)));
        return [...quantities, ...loose].map(({ index, text }) => ({ file, line: lineAt(pieces, index), text }));
      })
      .sort((a, b) => a.line - b.line),
  );
});

/** As an editor and readers of the data page are told of it. */
export function typedFindings(bench: Bench): readonly Finding[] {
  return typedQuantities(bench).map(({ file, line, text }) => ({
    rule: 'typed-quantity',
    severity: 'caution',
    where: { place: `${file}:${line}` },
    message: `“${text}” was typed by hand, so it stays as it is when the data move.`,
    hint: 'Ask for it with <Figure>, bind it to data with <Claim>, or mark it as meant: <Quoted from="…"> for a number from elsewhere, <Setting> for one that was chosen or planned.',
  }));
}

/** What a strict build refuses. */
export function checkTyped(bench: Bench): readonly Problem[] {
  return typedQuantities(bench).map(({ file, line, text }) => ({ code: 'typed-quantity', file, line, found: text }));
}

/** Texts of a part that readers see: captions; of a component that the write-up brings along, whatever is text. */
function ofPart({ name, line, attributes }: Part, { ownNames }: WriteUp): readonly Prose[] {
  const properties = partNamed(name)?.properties;
  if (properties === undefined && !ownNames.includes(name)) return [];
  return Object.entries(attributes).flatMap(([property, written]) => {
    const isRead = properties === undefined || properties[property]?.isProse === true;
    return isRead && written.known && typeof written.value === 'string' ? [[{ text: written.value, line }]] : [];
  });
}

/** Whether the file that a note belongs to states the same: `60` for 60 Hz, `1/500 s` for 2 ms. */
function says(stated: string, quantity: QuantityFound): boolean {
  if (quantity.rate !== undefined) {
    const [own, other] = [parseRate(quantity.rate), parseRate(stated)];
    return own !== undefined && other !== undefined && rateKey(own) === rateKey(other);
  }
  const [value] = findQuantities(stated);
  return value !== undefined && isSameQuantity(value, quantity);
}

function covers({ index, length }: QuantityFound, place: number): boolean {
  return index <= place && place < index + length;
}

const UNITS = '(ms|msec|µs|s|milliseconds?|seconds?|frames?|%|per cent|fps|Hz)';
const UNIT_AHEAD = new RegExp(`^\\s*${UNITS}(?![\\p{L}\\p{N}])`, 'u');
const UNIT_BEHIND = new RegExp(`(?:\\bin\\s|[/(,[]\\s?)${UNITS}\\s?[)\\]]?[:.]?\\s*$`, 'iu');

/**
 * A number at the end of a block and the unit with which the next begins, as in two cells beside each other; or a unit,
 * and then the number.
 */
function acrossBlocks(texts: readonly Prose[]): readonly Prose[] {
  return texts.slice(1).flatMap((next, at) => {
    const before = texts[at]?.at(-1);
    const [first] = next;
    const number = /[^\s(]*\p{Nd}(?=[\s.)]*$)/u.exec(before?.text ?? '')?.[0];
    // a sentence that begins with such a word begins with a capital
    const unit = UNIT_AHEAD.exec(first?.text ?? '')?.[1];
    if (before !== undefined && number !== undefined && unit !== undefined)
      return [[{ text: `${number} ${unit}`, line: before.line }]];
    // `lag in ms` at the head of a row, and its number beside it
    const unitBefore = UNIT_BEHIND.exec(before?.text ?? '')?.[1];
    const numberAlone = /^\s*([^\s]*\p{Nd}[^\s]*)\s*$/u.exec(next.map(({ text }) => text).join(''))?.[1];
    return first === undefined || unitBefore === undefined || numberAlone === undefined
      ? []
      : [[{ text: `${numberAlone} ${unitBefore}`, line: first.line }]];
  });
}

function lineAt(pieces: Prose, index: number): number {
  let start = 0;
  for (const { text, line } of pieces) {
    if (index < start + text.length) return line + (text.slice(0, index - start).match(/\n/g) ?? []).length;
    start += text.length;
  }
  return pieces[0]?.line ?? 1;
}
