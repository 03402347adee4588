import type { VerdictData } from '../../register/register.ts';
import { QUANTITY_NAMES, RANK_ASSERTIONS, type QuantityAssertion, type RankAssertion } from './assertions.ts';
import { parseQuantity, type Quantity } from './quantity.ts';

/** The figures among which one is the lowest or highest: by list, or those of its own kind that match. */
export type Among =
  | readonly string[]
  | {
      readonly body?: string | undefined;
      readonly rig?: string | undefined;
      readonly method?: string | undefined;
      readonly where?: Readonly<Record<string, string>> | undefined;
    };

interface Subject {
  /** A figure; or, with `than`, a session. */
  readonly of: string;
  readonly than?: string | undefined;
  readonly margin?: string | undefined;
  readonly verdict?: VerdictData['word'] | undefined;
}

/** As an author writes a claim; every quantity is one. */
export type WrittenClaim = Subject & { readonly [K in QuantityAssertion]?: string | undefined } & {
  readonly [K in RankAssertion]?: Among | undefined;
};

/** `<Claim …>words</Claim>`, read. */
export interface Claim extends Subject {
  readonly quantities: readonly { readonly assertion: QuantityAssertion; readonly quantity: Quantity }[];
  readonly ranks: readonly { readonly assertion: RankAssertion; readonly among: Among }[];
}

export function claimOf(written: WrittenClaim): Claim {
  const { of, than, margin, verdict } = written;
  return {
    ...{ of, than, margin, verdict },
    quantities: QUANTITY_NAMES.flatMap((assertion) => {
      const quantity = parseQuantity(written[assertion] ?? '');
      return quantity === undefined ? [] : [{ assertion, quantity }];
    }),
    ranks: RANK_ASSERTIONS.flatMap((assertion) => {
      const among = written[assertion];
      return among === undefined ? [] : [{ assertion, among }];
    }),
  };
}
