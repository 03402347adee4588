import type { Part } from '../../model/bench.ts';
import { pairOfId, type SessionPair } from '../../register/comparisons/family.ts';
import type { VerdictData } from '../../register/register.ts';
import {
  QUANTITY_NAMES,
  RANK_ASSERTIONS,
  VERDICT_WORDS,
  type QuantityAssertion,
  type RankAssertion,
} from './assertions.ts';
import { parseQuantity, type Quantity } from './quantity.ts';

/** The figures among which one is the lowest or highest: by list, or those of its own kind that match. */
export type Among =
  | readonly string[]
  | ({ readonly [key in 'body' | 'rig' | 'method']?: string } & { readonly where?: Readonly<Record<string, string>> });

/** `<Claim …>words</Claim>`, read. */
export interface Claim {
  /** A figure; or, with `than`, a session. */
  readonly of: string;
  readonly than?: string;
  readonly margin?: string;
  readonly quantities: readonly { readonly assertion: QuantityAssertion; readonly quantity: Quantity }[];
  readonly ranks: readonly { readonly assertion: RankAssertion; readonly among: Among }[];
  readonly verdict?: VerdictData['word'];
}

/** Undefined where a property is not what it should be, which the check of write-ups reports. */
export function readClaim({ attributes }: Pick<Part, 'attributes'>): Claim | undefined {
  const value = (name: string): unknown => {
    const attribute = attributes[name];
    return attribute?.known === true ? attribute.value : undefined;
  };
  const text = (name: string): string | undefined =>
    typeof value(name) === 'string' ? String(value(name)) : undefined;
  const [of, than, margin] = [text('of'), text('than'), text('margin')];
  const verdict = VERDICT_WORDS.find((word) => word === value('verdict'));
  const quantities = QUANTITY_NAMES.filter((name) => name in attributes).map((assertion) => ({
    assertion,
    quantity: parseQuantity(String(value(assertion))),
  }));
  const ranks = RANK_ASSERTIONS.filter((name) => name in attributes).map((assertion) => ({
    assertion,
    among: value(assertion),
  }));
  if (
    of === undefined ||
    !quantities.every(isRead) ||
    !ranks.every(isAmong) ||
    ('verdict' in attributes && verdict === undefined)
  )
    return undefined;
  return {
    of,
    quantities,
    ranks,
    ...(than === undefined ? {} : { than }),
    ...(margin === undefined ? {} : { margin }),
    ...(verdict === undefined ? {} : { verdict }),
  };
}

/** The sessions that a claim compares. */
export function pairOf({ of, than }: Pick<Claim, 'of' | 'than'>): SessionPair | undefined {
  return than === undefined ? pairOfId(of) : { a: of, b: than };
}

function isRead<T extends { readonly quantity: Quantity | undefined }>(
  each: T,
): each is T & { readonly quantity: Quantity } {
  return each.quantity !== undefined;
}

function isAmong<T extends { readonly among: unknown }>(each: T): each is T & { readonly among: Among } {
  return typeof each.among === 'object' && each.among !== null;
}
