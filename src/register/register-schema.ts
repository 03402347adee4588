/** JSON Schema of `figures.json` (draft 2020-12): what a program that reads the register may rely on. */

import { KINDS } from './kinds.ts';

/** Of `figures.json`; raised when a program that read the last would misread this. */
export const REGISTER_FORMAT = 2;

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
const place = (list: string) => count(`Place in “${list}”, from 0.`);
const line = object('A line of an uncertainty budget (JCGM 100, clauses 4 and 5), without its size.', {
  name: text('What the uncertainty comes from.'),
  type: { enum: ['A', 'B'], description: 'By statistics of these readings (A), or by other means (B).' },
  distribution: text('rectangular, normal or numerical.'),
  degreesOfFreedom: { type: ['number', 'null'], description: 'null: infinite.' },
  shared: { type: ['string', 'null'], description: 'What it is the same for; null: this figure’s own.' },
});
const component = {
  type: 'array',
  description: 'A line of the uncertainty budget of this figure.',
  prefixItems: [
    place('lines'),
    number('Standard uncertainty, in the unit of the figure.'),
    number('Share of the combined variance.'),
  ],
  minItems: 3,
  maxItems: 3,
};
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
    claimed: count('How many statements of claims were adjusted with them.'),
    pAdjusted: probability('Holm-adjusted p of no difference.'),
    pSameAdjusted: probability('Holm-adjusted p of a difference of the margin or more.'),
    furtherRuns: count('On each side, where that many would settle it.'),
    furtherSessions: count('Of each side on other days, where that many would settle it with less work.'),
  },
  ['claimed', 'pAdjusted', 'pSameAdjusted', 'furtherRuns', 'furtherSessions'],
);
const weight = object('How much of another figure is in a value that is a sum of others.', {
  figure: text('Id of the other.'),
  weight: number('What its value is multiplied by.'),
});
const source = object('A raw file that figures were computed from.', {
  file: text('Its path, from the root of the site.'),
  sha256: { type: 'string', pattern: '^[0-9a-f]{64}$' },
});

const OPTIONAL = [
  'standardUncertainty',
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
    sources: place('sources'),
    text: text('What every page prints; rounded once.'),
    label: text('What it is, in words.'),
    entry: text('Site path of its entry.'),
    group: { ...place('words'), description: 'Title of the page of entries on which it stands: place in “words”.' },
    inWords: {
      type: 'array',
      items: place('words'),
      description: 'How it is computed, where that takes more words than its kind has: sentences, with spaces between.',
    },
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

const list = (items: object, description: string) => ({ type: 'array', items, description });

export const REGISTER_SCHEMA = {
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Register of published figures',
  ...object('Every figure that a page shows, and the findings. What many figures have in common stands once.', {
    $schema: text('This schema, beside the register.'),
    format: { const: REGISTER_FORMAT, description: 'Version of what this schema describes.' },
    analysis: text('Version of the analysis.'),
    files: list(source, 'The raw files, each once.'),
    sources: list(list(place('files'), 'Files that a figure was computed from.'), 'Lists of files, each once.'),
    lines: list(line, 'Lines of budgets, each once.'),
    words: list(text('A sentence or a title.'), 'Words of figures, each once.'),
    figures: list(figure, 'The figures.'),
    findings: list(finding, 'The findings.'),
  }),
};
