/** Published values that moved, for readers: what kind of thing moved, the important first, each old and new in one line. */
import type { Move } from '../model/ledger.ts';
import { KINDS } from '../register/kinds.ts';
import type { Published } from '../register/published.ts';
import { nameStatement, type StatementName } from './statement-name.ts';

export interface MoveRow extends StatementName {
  readonly id: string;
  /** Without its unit, where the new value has the same: `251.9 ± 8.4`. */
  readonly from: string;
  readonly to: string;
}

export interface MoveGroup {
  /** What kind of thing moved, in words: `What was measured`. */
  readonly title: string;
  /** Of the kind that a reader came for; the others are folded. */
  readonly isImportant: boolean;
  readonly rows: readonly MoveRow[];
}

interface GroupOfKinds {
  readonly title: string;
  readonly isImportant: boolean;
  readonly kinds: RegExp;
  /** Where what is printed stayed, and only what stands behind it moved. */
  readonly isBehind?: true;
  /** Where only numbers in the words moved, which moved by themselves as well. */
  readonly hasSameWords?: true;
}

/** In the order in which they are told, the important before the others; every kind falls under the first that matches. */
const GROUPS: readonly GroupOfKinds[] = [
  { title: 'What bodies and sessions are', isImportant: true, kinds: /^(?:body|session)$/ },
  {
    title: 'What displays, rigs and settings are',
    isImportant: true,
    kinds: /^(?:display|link|rig|facts|setting|level|kind|variation)$/,
  },
  { title: 'Texts revised', isImportant: true, kinds: /^(?:words|report|method|date|site)$/ },
  { title: 'Latency measured', isImportant: true, kinds: /^(?:total|frames)$/ },
  { title: 'Verdicts whose words stay', isImportant: false, kinds: /verdict$/, hasSameWords: true },
  { title: 'Bodies and settings compared', isImportant: true, kinds: /^(?:difference|verdict|cost|later)$/ },
  { title: 'What settings do', isImportant: true, kinds: /^(?:effect|interaction)/ },
  { title: 'How latency goes with the frame rate', isImportant: true, kinds: /^rate-law(?!-lack-of-fit|-floor-test)/ },
  { title: 'Repeats and firmware', isImportant: true, kinds: /^(?:repeat|firmware)/ },
  { title: 'Findings', isImportant: false, kinds: /^finding$/ },
  { title: 'Readings as written', isImportant: false, kinds: /^(?:rows|excluded-rows)$/ },
  { title: 'Ratios', isImportant: false, kinds: /^ratio$/ },
  { title: 'Limits and parts of the chain', isImportant: false, kinds: /^(?:bracket|element)$/ },
  { title: 'Counts and statistics', isImportant: false, kinds: /./ },
  { title: 'Behind the same words', isImportant: false, kinds: /./, isBehind: true },
];

export function moveGroups(moves: readonly Move[], site: Pick<Published, 'bench' | 'figure'>): readonly MoveGroup[] {
  const ranks = Object.keys(KINDS);
  const rank = ({ id }: Move): number => ranks.indexOf(kindOf(id));
  const byGroup = Map.groupBy(
    moves.toSorted((a, b) => rank(a) - rank(b)),
    ({ id, quiet, from, to }) =>
      GROUPS.find(
        ({ kinds, isBehind = false, hasSameWords = false }) =>
          isBehind === (quiet === 'behind') &&
          (!hasSameWords || wordsOf(from) === wordsOf(to)) &&
          kinds.test(kindOf(id)),
      ),
  );
  return GROUPS.flatMap((group): readonly MoveGroup[] => {
    const own = byGroup.get(group) ?? [];
    const { title, isImportant } = group;
    return own.length === 0 ? [] : [{ title, isImportant, rows: own.map((move) => rowOf(move, site)) }];
  }).sort((x, y) => Number(y.isImportant) - Number(x.isImportant));
}

function rowOf({ id, from, to }: Move, site: Pick<Published, 'bench' | 'figure'>): MoveRow {
  return { id, ...nameStatement(id, site), from: withoutUnit(from, to), to };
}

/** `slower by 130 ± 10 ms` → `slower by # ms`. */
function wordsOf(text: string): string {
  return text.replace(/[−\d.,]+(?: ± [\d.]+)?/g, '#');
}

function kindOf(id: string): string {
  return id.split('/')[0] ?? '';
}

/** `251.9 ± 8.4 ms` before `248.8 ± 5.1 ms` → `251.9 ± 8.4`. */
function withoutUnit(from: string, to: string): string {
  const [, number, unit] = /^([−\d.,\s±]+?) (ms|frames)$/u.exec(from) ?? [];
  return number !== undefined && to.endsWith(` ${unit}`) ? number : from;
}
