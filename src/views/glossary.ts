/** The words that pages use, each in a sentence or two a camera person can use. Terms are those of video engineering and of metrology. */
export interface Term {
  readonly id: string;
  readonly term: string;
  readonly means: string;
}

const term = (id: string, name: string, means: string): Term => ({ id, term: name, means });

/** In alphabetical order. */
export const GLOSSARY: readonly Term[] = [
  term('body', 'Body', 'The camera under test, or whatever else makes the picture.'),
  term('chain', 'Chain', 'Everything the picture goes through: the body, then the links, then the display.'),
  term(
    'clip',
    'Clip',
    'What the observer filmed in one go. Stopping and starting again makes a new clip, with clocks that fall otherwise against each other.',
  ),
  term(
    'condition',
    'Condition',
    'One full set of settings: resolution, frame rate, bit depth and whatever else a bench writes down.',
  ),
  term('display', 'Display', 'The screen on which the picture comes out.'),
  term(
    'excluded',
    'Excluded reading',
    'A reading that is kept and shown struck out, with the reason why it does not count. None is ever deleted.',
  ),
  term(
    'frame-interval',
    'Frame interval',
    'How long one frame lasts: one second divided by the frame rate, worked out from the exact rate.',
  ),
  term(
    'interval',
    'Interval, ±',
    'How far a figure can be trusted. A value ± half-width means that the true value lies within that distance, as such intervals do 95 times in 100.',
  ),
  term(
    'carried',
    'Carried',
    'Not measured in front of that display, but computed from the chain: what the body itself takes, and what that display takes.',
  ),
  term(
    'latency',
    'Latency',
    'How much later a picture shows than what it shows happened. The same as lag, or delay. It is no shooting time lag: that runs from the control to the exposure of a still camera and has no display in it (ISO 15781:2019, by its published scope).',
  ),
  term('link', 'Link', 'Anything between body and display: a converter, a switcher, a recorder, a radio link.'),
  term('observer', 'Observer', 'The second camera, which films the source timer and the display in one picture.'),
  term(
    'reading',
    'Reading',
    'One look at one still: what the timer says, less what the display still shows of it. A session has many, since any one alone says little.',
  ),
  term(
    'rig',
    'Rig',
    'What stays the same while bodies change: the timer in front of them, the display behind them, and the observer. Totals of one rig can be set against each other; those of two rigs cannot.',
  ),
  term('run', 'Run', 'The readings of one clip.'),
  term(
    'session',
    'Session',
    'One body in one condition on one rig on one day: one clip or several, with the readings taken from them.',
  ),
  term('source-timer', 'Source timer', 'The running clock in front of the body.'),
  term(
    'too-close-to-call',
    'Too close to call',
    'The readings do not tell the two apart. It does not mean that they are equal: more clips might tell.',
  ),
  term(
    'total',
    'Total latency',
    'The mean age of the picture on the display, the display’s own delay included: for something that happens at any moment, the average wait until it shows.',
  ),
  term(
    'uncertainty',
    'Uncertainty',
    'What is not known about a figure, as a number. The standard uncertainty is its usual size; the half-width of an interval is about twice that.',
  ),
];
