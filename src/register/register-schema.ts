/** JSON Schema of `figures.json` (draft 2020-12): what a program that reads the register may rely on. */

import { KINDS } from './kinds.ts';

export const SCHEMA_FILE = 'figures.schema.json';

const text = (description: string) => ({ type: 'string', description });
const number = (description: string) => ({ type: 'number', description });
const count = (description: string) => ({ type: 'integer', minimum: 0, description });
const probability = (description: string) => ({ type: 'number', minimum: 0, maximum: 1, description });
const UNITS = [...new Set(Object.values(KINDS).map(({ unit }) => unit))].sort();
const subject = { type: 'object', additionalProperties: { type: 'string' } };

function object(
  description: string,
  properties: Readonly<Record<string, object>>,
  optional: readonly string[] = [],
): object {
  return {
    type: 'object',
    description,
    properties,
    required: Object.keys(properties).filter((name) => !optional.includes(name)),
    additionalProperties: false,
  };
}

const interval = object('Interval in the unit of the value.', {
  low: number('Its low end.'),
  high: number('Its high end.'),
  level: probability('Coverage probability.'),
});
const limits = object('The lowest and the highest that it can be: limits, no uncertainty.', {
  low: number('The lowest.'),
  high: number('The highest.'),
});
const component = object('A line of the uncertainty budget (JCGM 100, clauses 4 and 5).', {
  name: text('What the uncertainty comes from.'),
  type: { enum: ['A', 'B'], description: 'By statistics of these readings (A), or by other means (B).' },
  distribution: text('rectangular, normal or numerical.'),
  standardUncertainty: number('In the unit of the figure.'),
  degreesOfFreedom: { type: ['number', 'null'], description: 'null: infinite.' },
  share: number('Its share of the combined variance.'),
  shared: { type: ['string', 'null'], description: 'What it is the same for; null: this figure’s own.' },
});
const correction = object('A known systematic effect, already in the value.', {
  name: text('The effect.'),
  value: number('What was added, in the unit of the figure.'),
  standardUncertainty: number('Of that.'),
});
const verdict = object(
  'What the data allow to say of a comparison.',
  {
    word: { enum: ['slower', 'faster', 'same', 'not-settled', 'not-estimable'] },
    marginMs: number('Half-width of what counts as the same, in ms.'),
    family: text('The comparisons it is adjusted with.'),
    familySize: count('How many they are.'),
    pAdjusted: probability('Holm-adjusted p of no difference.'),
    pSameAdjusted: probability('Holm-adjusted p of a difference of the margin or more.'),
    furtherRuns: count('On each side, where that many would settle it.'),
  },
  ['pAdjusted', 'pSameAdjusted', 'furtherRuns'],
);
const weight = object('How much of another figure is in a value that is a sum of others.', {
  figure: text('Id of the other.'),
  weight: number('What its value is multiplied by.'),
});
const source = object('A raw file it was computed from.', {
  file: text('Its path, from the root of the site.'),
  sha256: { type: 'string', pattern: '^[0-9a-f]{64}$' },
});

const OPTIONAL = [
  'standardUncertainty',
  'degreesOfFreedom',
  'interval',
  'limits',
  'coverageFactor',
  'speaksOf',
  'components',
  'uncorrected',
  'corrections',
  'weights',
  'group',
  'inWords',
  'p',
  'verdict',
  'reason',
];

const figure = object(
  'A published figure.',
  {
    id: text('kind/subject; unique, and never used again for another.'),
    kind: text('What kind of figure it is.'),
    of: { ...subject, description: 'What it is of; only the keys that apply.' },
    unit: { enum: UNITS },
    value: number('In its unit.'),
    standardUncertainty: number('In its unit.'),
    degreesOfFreedom: { type: ['number', 'null'], description: 'null: infinite.' },
    interval,
    limits,
    coverageFactor: number('Half-width of the interval over the standard uncertainty.'),
    speaksOf: { enum: ['clips', 'day', 'condition'], description: 'What the interval is about.' },
    readings: count('Readings that count in it.'),
    runs: count('Clips they come from.'),
    excluded: count('Readings that do not count.'),
    components: { type: 'array', items: component },
    uncorrected: number('The value before corrections.'),
    corrections: { type: 'array', items: correction },
    weights: { type: 'array', items: weight },
    sources: { type: 'array', items: source },
    text: text('What every page prints; rounded once.'),
    label: text('What it is, in words.'),
    entry: text('Site path of its entry.'),
    group: text('Title of the page of entries on which it stands.'),
    inWords: text('How it is computed, where that takes more words than its kind has.'),
    p: probability('Two-sided p of a true value of 0, of this figure alone.'),
    verdict,
    reason: text('Why it has no interval.'),
  },
  OPTIONAL,
);
const finding = object('What a careful editor would want to know.', {
  rule: text('Which rule found it.'),
  severity: { enum: ['note', 'caution', 'warning'] },
  where: subject,
  message: text('What was found.'),
  hint: text('What to do about it.'),
});

export const REGISTER_SCHEMA = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Register of published figures',
  ...object('Every figure that a page shows, and the findings.', {
    $schema: text('This schema, beside the register.'),
    analysis: text('Version of the analysis.'),
    figures: { type: 'array', items: figure },
    findings: { type: 'array', items: finding },
  }),
};
