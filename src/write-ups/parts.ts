/** Every part that an author may write in MDX: what the check of write-ups, the page, the guide and README go by. */
import type { PartDefinition, PropsOfPart } from './parts/definition.ts';
import { advice } from './parts/advice.ts';
import { chainBrackets } from './parts/chain-brackets.ts';
import { claim } from './parts/claim.ts';
import { difference } from './parts/difference.ts';
import { differenceChart } from './parts/difference-chart.ts';
import { differenceTable } from './parts/difference-table.ts';
import { effects } from './parts/effects.ts';
import { figure } from './parts/figure.ts';
import { figureChart } from './parts/figure-chart.ts';
import { figureTable } from './parts/figure-table.ts';
import { highest } from './parts/highest.ts';
import { history } from './parts/history.ts';
import { inPractice } from './parts/in-practice.ts';
import { lowest } from './parts/lowest.ts';
import { methodNote } from './parts/method-note.ts';
import { quoted } from './parts/quoted.ts';
import { ranking } from './parts/ranking.ts';
import { rateLaw } from './parts/rate-law.ts';
import { rateLawSentence } from './parts/rate-law-sentence.ts';
import { ratio } from './parts/ratio.ts';
import { readings } from './parts/readings.ts';
import { setting } from './parts/setting.ts';
import { verdict } from './parts/verdict.ts';

/** In the order of the guide. */
const ALL = [
  figure,
  figureTable,
  figureChart,
  ranking,
  lowest,
  highest,
  readings,
  methodNote,
  difference,
  ratio,
  verdict,
  differenceTable,
  differenceChart,
  effects,
  advice,
  inPractice,
  rateLaw,
  rateLawSentence,
  history,
  chainBrackets,
  claim,
  quoted,
  setting,
] as const;

export const PARTS: readonly PartDefinition[] = ALL;

type Definition = (typeof ALL)[number];
export type PartName = Definition['name'];

/** What an author may write for each part, by name. */
export type PropsByPart = { readonly [D in Definition as D['name']]: PropsOfPart<D> };

const byName = new Map(PARTS.map((part) => [part.name, part]));

/** undefined for what is no part. */
export const partNamed = (name: string): PartDefinition | undefined => byName.get(name);
