/** How each kind of figure is computed, in symbols: as the code does it, for whoever follows it by hand. */
import type { KindName } from './kinds.ts';

export interface Formula {
  /** `x̄ = Σ xᵢ / n` */
  readonly formula: string;
  /** What each symbol stands for. */
  readonly symbols: readonly (readonly [symbol: string, means: string])[];
  /** Where its interval comes from; empty where it has none. */
  readonly interval: string;
}

const formula = (text: string, symbols: Formula['symbols'], interval = ''): Formula => ({
  formula: text,
  symbols,
  interval,
});

const READINGS: Formula['symbols'] = [
  ['xᵢ', 'the readings that count, in ms: readings.csv, where counts is true'],
  ['n', 'their number'],
];
const OF_ERROR =
  'From the distribution of the error: each session’s own part as its readings leave it, convolved with what is left of the shared parts; k is half its width at that level over the standard uncertainty.';
const OF_SUM =
  'From the distribution of the error: the value is a sum of the totals at fixed weights, and its error the same sum of theirs, each session’s own part convolved and each shared part taken once.';
const PAIR: Formula['symbols'] = [
  ['y₁', 'total latency of the first session, to the last digit'],
  ['y₂', 'that of the second'],
  [
    'uⱼ',
    'the lines of the budget: each session’s own, and of a shared one what is left where the two have it in different sizes',
  ],
];
const SESSIONS: Formula['symbols'] = [
  ['yᵢ', 'total latency of each session, to the last digit'],
  ['k', 'the number of sessions'],
];
const OF_DAY: Formula['symbols'][number] = [
  'uᵢ',
  'standard uncertainty of what yᵢ says of the delay of its day: where totals speak of their condition, the root of the summed squares of the budget lines that are not shared, without the line from day to day. Where they speak of their clips, it is that of p(D) as the formula of a total has it, takes a computer, and is no less than the own u below',
];
const OVER_SIZES =
  'It is averaged over the sizes by which days may differ (data/variation.yaml, otherwise the default of the analysis), each weighed by P(size)·∫ dμ Π p(yᵢ | μ, size), that is by how well it explains these sessions; where none does, it is widened by a factor that their scatter tells. This takes a computer.';
const LINE: Formula['symbols'] = [
  ['yᵢ', 'total latency of each session, in ms'],
  ['Tᵢ', 'its frame interval, 1000 ms over the exact frame rate'],
  [
    'uᵢ',
    'the own part of its standard uncertainty: the root of the summed squares of the budget lines that are not shared',
  ],
  ['wᵢ', 'the weight, 1/uᵢ²'],
  ['T̄, ȳ', 'the means of Tᵢ and yᵢ with these weights'],
];

/** The chain, taken apart. */
const CHAIN: Formula['symbols'] = [
  [
    'X, y',
    'a row for each session: 1 under every part that its chain holds and under every error that it shares, and its total; a row for each pair of displays read side by side: 1 under the display, −1 under the one it is held against, and likewise under a link that only one of the two has and under the errors that either shares, and the difference; a row for each latency that was stated; and one for each shared error, which holds it at 0',
  ],
  [
    'W',
    'the weights 1/u²: the own part of a total or of a difference of displays, the uncertainty of a statement, the largest size of a shared error',
  ],
];
const OF_CHAIN =
  'From the distribution of the error: the value is a sum of totals, differences of displays and statements at fixed weights, and its error the same sum of theirs, each own part convolved and each shared part taken once; where they do not explain how far the rows lie off the fit, up to a factor that this scatter tells.';
const HOLM = 'p₍ᵢ₎ adjusted = max over j ≤ i of min(1, (m − j + 1)·p₍ⱼ₎)';
const OF_VERDICT =
  'That of the difference. Slower or faster where the adjusted p is at most 0.05; otherwise the same where the adjusted p of a difference of the margin or more is; otherwise not settled.';

export const FORMULAS: Readonly<Record<KindName, Formula>> = {
  total: formula(
    'y = L̂ + T/2 + M/2 + Σ cⱼ, L̂ = ∫ L·p(L) dL, p(L) ∝ Σ π(τ, q) ∫ dμ p(L | μ) Π ∫ ℓᵣ(l)·h(l − μ) dl',
    [
      ['L', 'mean delay of the session’s clips, from the end of capture to first light'],
      [
        'ℓᵣ(l)',
        'what run r says of its delay l: Σ π(σ, ρ) Σ w Π over its readings of [ε + Σ K(x − l)], over the states that the devices of the rig can be in and the pairs of frames that a pair of stamps allows',
      ],
      [
        'w',
        'probability of a state: start phases of source timer, body and display are uniform, each on its own circle, and what the stamps rule out falls away; of very many states an even, weighted sample is taken',
      ],
      [
        'K, x',
        'x: shown less source, with the ages of both frames taken off; K: how far that can lie from l, a box as wide as the source timer’s refresh or a frame of the observer, smoothed by a jitter σ, and by a share ρ of frames shown twice',
      ],
      ['ε', 'the chance that a stamp is a misread, over a wide range: such a reading says nothing'],
      ['h', 'how the delay of a clip lies about μ: normal with deviation τ, and one frame deeper with probability q'],
      [
        'π',
        'what is assumed of the sizes σ, ρ, τ, q: data/variation.yaml where the publication has learnt it from its sessions, otherwise the default of the analysis, which is wide because nothing is known yet',
      ],
      [
        'flat in μ and L',
        'no delay is likelier than another before readings are taken: L only shifts the readings, so intervals then hold as often as they say',
      ],
      ['T', 'frame interval of the body'],
      ['M', 'refresh interval of the display where it runs free; otherwise 0'],
      [
        'cⱼ',
        'the corrections, as the budget lists them: for what is known of the rig and, where the total speaks of more than the clips that were read, from their mean to that of all clips of the day, ∫ D·p(D) dD − L̂',
      ],
    ],
    'From the distribution p, convolved with every line of the budget that is shared: y ± U, U the half-width that holds the level. Where the total speaks of its day, of p(D), D = μ + q·T the mean of all clips of that day, in the place of p(L); where it speaks of its condition, also convolved with how days differ by data/variation.yaml. It takes a computer: npm run recompute does it from the files alone.',
  ),
  frames: formula(
    'f = y · r / 1000',
    [
      ['y', 'total latency in ms'],
      ['r', 'exact frame rate of the body: sessions.csv, rate'],
    ],
    'That of the total, times r / 1000.',
  ),
  mean: formula('x̄ = Σ xᵢ / n', READINGS),
  median: formula('the middle of xᵢ in order of size, or (x₍ₙ⸝₂₎ + x₍ₙ⸝₂₊₁₎) / 2 where n is even', READINGS),
  'standard-deviation': formula('s = √( Σ (xᵢ − x̄)² / (n − 1) )', READINGS),
  'standard-error': formula('s / √n', READINGS),
  minimum: formula('min xᵢ', READINGS),
  maximum: formula('max xᵢ', READINGS),
  range: formula('max xᵢ − min xᵢ', READINGS),
  readings: formula('n', READINGS),
  runs: formula('the number of runs that hold a reading that counts', []),
  excluded: formula('N − n', [...READINGS, ['N', 'the number of lines of the readings file below its header']]),
  difference: formula('d = y₁ − y₂, u = √( Σ uⱼ² )', PAIR, OF_ERROR),
  ratio: formula(
    'ρ = y₁ / y₂',
    PAIR,
    'Every ρ at which the interval of y₁ − ρ·y₂ holds 0: each total’s own part convolved, shared parts with what is left of them. With normal errors this is Fieller’s.',
  ),
  verdict: formula(
    HOLM,
    [
      ['p₍ⱼ₎', 'the p of all differences of the family, the smallest first: figures.csv, p'],
      ['m', 'how many they are'],
    ],
    OF_VERDICT,
  ),
  cost: formula(
    'd = y₁ − min y',
    [
      ['y₁', 'total latency of the session'],
      ['min y', 'the lowest of its body, through the same chain'],
    ],
    OF_ERROR,
  ),
  later: formula(
    'd = y₁ − min y',
    [
      ['y₁', 'total latency of the session'],
      ['min y', 'the lowest in the same condition, through the same chain'],
    ],
    OF_ERROR,
  ),
  family: formula('m', [['m', 'how many verdicts name this family']]),
  effect: formula(
    'b = Σ wᵢyᵢ, w = c (XᵀWX)⁻¹ XᵀW',
    [
      ['wᵢ, yᵢ', 'the weight and the total latency of each session, as listed below'],
      [
        'X',
        'a row for each session: 1, then for each coefficient named above a column for each level of the setting but its first, and of two settings the products of theirs',
      ],
      ['W', 'the weights 1/uᵢ², uᵢ the own part of each total’s standard uncertainty'],
      ['c', 'the row of one level less that of another, the other settings averaged over their levels'],
    ],
    OF_SUM,
  ),
  'effect-verdict': formula(
    HOLM,
    [
      ['p₍ⱼ₎', 'the p of all effects of the model, the smallest first'],
      ['m', 'how many they are'],
    ],
    'That of the effect.',
  ),
  interaction: formula(
    'b = Σ wᵢyᵢ, w = c (XᵀWX)⁻¹ XᵀW',
    [
      ['wᵢ, yᵢ', 'the weight and the total latency of each session, as listed below'],
      ['X, W', 'as for an effect'],
      ['c', 'the difference of two differences of rows'],
    ],
    OF_SUM,
  ),
  'interaction-verdict': formula(
    HOLM,
    [
      ['p₍ⱼ₎', 'the p of all interactions of the model, the smallest first'],
      ['m', 'how many they are'],
    ],
    'That of the interaction.',
  ),
  'rate-law-fixed': formula('a = ȳ − b·T̄, b = Σ wᵢ(Tᵢ − T̄)(yᵢ − ȳ) / Σ wᵢ(Tᵢ − T̄)²', LINE, OF_SUM),
  'rate-law-frames': formula('b = Σ wᵢ(Tᵢ − T̄)(yᵢ − ȳ) / Σ wᵢ(Tᵢ − T̄)²', LINE, OF_SUM),
  'rate-law-fixed-within': formula('|a| + q₀.₉₅', [
    ['a', 'the part that no frame rate changes'],
    ['q₀.₉₅', 'the 95 % point of its error, on the side away from 0'],
  ]),
  'rate-law-frames-within': formula('max(0, b − ½ + q₀.₉₅)', [
    ['b', 'the slope'],
    ['½', 'the half interval that every frame waits on the display'],
    ['q₀.₉₅', 'the 95 % point of its error, on the side away from 0'],
  ]),
  'rate-law-lack-of-fit': formula('P(χ² ≥ Σ Wⱼ(Yⱼ − a − b·Tⱼ)²) on r − 2 degrees of freedom', [
    ...LINE,
    ['Yⱼ, Wⱼ', 'weighted mean at each rate, and the sum of its weights'],
    ['r', 'the number of rates'],
  ]),
  'rate-law-floor': formula('f = Σ wᵢyᵢ / Σ wᵢ, over the sessions at the fastest rates', LINE, OF_SUM),
  'rate-law-break': formula(
    'T = (f − a) / b',
    [
      ['f', 'the floor'],
      ['a, b', 'the line of the slower rates'],
    ],
    'As for a ratio of two totals.',
  ),
  'rate-law-floor-test': formula(
    'P(error ≥ f − line), the smallest over all places a floor could begin, adjusted by Holm',
    LINE,
  ),
  'display-difference': formula(
    'y = L̂ + M/2 − N/2 + Σ cⱼ, L̂ = ∫ L·p(L) dL',
    [
      ['L', 'how much later the display read under shown gets each picture up than the one read under source'],
      [
        'p(L)',
        'what the pairs leave it, as for a total, with the picture’s own frames in place of the body’s: both displays show the very same ones, so that none has a phase of its own',
      ],
      ['M, N', 'the refresh interval of shown and of source, where that runs on its own clock; otherwise nothing'],
      [
        'cⱼ',
        'corrections: row skew of the observer, scan-out to mid-screen of shown, less that of source; an output offset is uncertain by a frame either way where nobody compared the outputs',
      ],
    ],
    'From the distribution p, convolved with the lines of the budget that the pairs cannot tell of (clock, row skew, scan-outs, outputs): y ± U, U the half-width that holds the level. Like a total it takes a computer.',
  ),
  element: formula('b = (XᵀWX)⁻¹ XᵀWy', CHAIN, OF_CHAIN),
  carried: formula(
    'y = b₁ + b₂, b = (XᵀWX)⁻¹ XᵀWy',
    [['b₁', 'what the body itself takes'], ['b₂', 'what the display takes, or the delay that was chosen'], ...CHAIN],
    OF_CHAIN,
  ),
  'carried-difference': formula(
    'd = b₁ − b₂, b = (XᵀWX)⁻¹ XᵀWy',
    [['b₁', 'what the first body itself takes'], ['b₂', 'what the second does'], ...CHAIN],
    OF_CHAIN,
  ),
  'carried-verdict': formula(
    HOLM,
    [
      ['p₍ⱼ₎', 'the p of all carried differences of the family, the smallest first: figures.csv, p'],
      ['m', 'how many they are'],
    ],
    OF_VERDICT,
  ),
  bracket: formula('(lowest + highest) / 2', [
    [
      'lowest, highest',
      'the limits of the part, narrowed until nothing narrows: highest = a total’s upper 99.9 % limit less the least of all other parts, lowest = its lower limit less the most of them',
    ],
  ]),
  'repeat-mean': formula(
    'ȳ = Σ yᵢ / k',
    SESSIONS,
    `From the distribution of the error: the sessions’ errors of their days over k, the mean of k days about the condition, and what all share. ${OVER_SIZES}`,
  ),
  'repeat-between': formula('√( max(0, s² − Σ uᵢ²/k) )', [...SESSIONS, ['s', 'the standard deviation of yᵢ'], OF_DAY]),
  'repeat-between-at-most': formula(
    'the τ at which Σ (yᵢ − ŷ)²/(uᵢ² + τ²) = χ²₀.₀₅ on k − 1 degrees of freedom, or 0 where the sum is below that at τ = 0',
    [...SESSIONS, ['ŷ', 'the mean of yᵢ with the weights 1/(uᵢ² + τ²)'], OF_DAY],
  ),
  'repeat-next': formula(
    'ȳ = Σ yᵢ / k',
    SESSIONS,
    `From the distribution of the error: as for the mean, with one more day and the error of one more session, as uncertain as the least certain of these, in place of what all share. ${OVER_SIZES}`,
  ),
  'firmware-change': formula(
    'd = Σ y′ᵢ/k′ − Σ yᵢ/k',
    [
      ['yᵢ, k', 'totals with the earlier firmware, and their number'],
      ['y′ᵢ, k′', 'those with the later'],
    ],
    OF_ERROR,
  ),
  moved: formula(
    's = v·y/1000, or g·(y/1000)²/2 for what falls',
    [
      ['y', 'the lowest total latency of the body, in ms'],
      [
        'v',
        '3.5 ft/s for walking, 100 m over 9.58 s for sprinting, 343.2 m/s for sound; otherwise as data/speeds.yaml says',
      ],
      ['g', '9.80665 m/s²'],
    ],
    'The formula at both ends of the total’s interval.',
  ),
  count: formula('the number of rows', [['rows', 'of sessions.csv or readings.csv, of one body where it is named']]),
};
