import type { Files } from '../../support/bench-folder.ts';
import type { ProblemCase } from './case.ts';

const FILE = 'data/variation.yaml';
const LEVELS = '{ clip: { change: { 0: 1 }, step: { 0: 1 } }, day: { change: { 0: 1 }, step: { 0: 1 } } }';
const SOUND = `date: 2026-05-02
analysis: "1"
knows: day
reading: { jitter: { 0: 0.8, 0.25: 0.2 }, repeat: { 0: 1 }, misread: { 0.01: 1 } }
others: ${LEVELS}
`;

const edited = (from: string, to: string): Files => ({ [FILE]: SOUND.replace(from, to) });

/** The statement of variation, written by hand. */
export const VARIATION_CASES: readonly ProblemCase[] = [
  { name: 'nothing, when it is sound', changes: { [FILE]: SOUND }, lines: [] },
  {
    name: 'weights that do not sum to 1',
    changes: edited('0.25: 0.2', '0.25: 0.3'),
    lines: [
      `${FILE}:4:20  reading.jitter  expected sizes from 0 on, each with its weight, and weights that sum to 1. Write them like { 0: 0.75, 0.25: 0.25 }, or have npm run variation write the file anew.`,
    ],
  },
  {
    name: 'a size that is no number, and a probability above 1',
    changes: { [FILE]: SOUND.replace('0.25: 0.2', 'some: 0.2').replace('0.01: 1', '1.5: 1') },
    lines: [
      `${FILE}:4:20  reading.jitter  expected sizes from 0 on, each with its weight, and weights that sum to 1. Write them like { 0: 0.75, 0.25: 0.25 }, or have npm run variation write the file anew.`,
      `${FILE}:4:70  reading.misread  expected probabilities from 0 to 1, each with its weight, and weights that sum to 1. Write them like { 0: 0.75, 0.5: 0.25 }, or have npm run variation write the file anew.`,
    ],
  },
  {
    name: 'a level that there is not, and a key that is missing',
    changes: { [FILE]: SOUND.replace('knows: day', 'knows: days').replace(/others.*\n/, '') },
    lines: [
      `${FILE}:1  others  this key is missing. Add it.`,
      `${FILE}:3:8  knows  "days" is not a choice here; expected one of clips, day, condition. Did you mean day?`,
    ],
  },
];
