/** What repeat sessions and firmware changes say, as computed sentences. */
import { intervalMs } from '../model/rate.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { plural } from '../register/provenance.ts';
import type { FirmwareChange, RepeatGroup } from '../register/repeats/repeat-groups.ts';

type FigureOf = (id: string) => Figure | undefined;

/** Empty where the sessions agree to the last digit, so that nothing varies. */
export function describeRepeats({ name, sessions }: RepeatGroup, figure: FigureOf): Sentence {
  const [mean, between, atMost, next] = ['repeat-mean', 'repeat-between', 'repeat-between-at-most', 'repeat-next'].map(
    (kind) => figure(`${kind}/${name}`),
  );
  if (!mean || !between || !atMost || !next) return [];
  const days = new Set(sessions.map(({ date }) => date)).size;
  return [
    `${plural(sessions.length, 'session')} on ${plural(days, 'day')}: `,
    mean,
    ' on average. Apart from what its own interval explains, a session typically lies ',
    between,
    ' from that average; these sessions cannot rule out as much as ',
    atMost,
    '. One more session on this rig would fall within ',
    next,
    '.',
  ];
}

/**
 * `Firmware 2.20 against 2.11: −17 ± 12 ms, faster.` The interval decides the word; that nothing changed is said only
 * where the whole of it lies within half a frame.
 */
export function describeFirmwareChange({ name, from, to, earlier, later }: FirmwareChange, figure: FigureOf): Sentence {
  const change = figure(`firmware-change/${name}`);
  if (change?.interval === undefined) return [];
  const { low, high } = change.interval;
  const halfFrameMs = Math.min(...[...earlier, ...later].map(({ rate }) => intervalMs(rate))) / 2;
  const isWithin = Math.max(-low, high) <= halfFrameMs;
  const verdict =
    low > 0 ? 'slower' : high < 0 ? 'faster' : isWithin ? 'the same within half a frame' : 'too close to call';
  const sameDay = [...earlier, ...later].every(({ date }) => date === earlier[0]?.date);
  return [
    `Firmware ${to} against ${from}, everything else alike: `,
    change,
    `, ${verdict}.`,
    ...(sameDay
      ? []
      : [
          change.speaksOf === 'condition'
            ? ' They were measured on different days; the interval allows for what varies from day to day.'
            : ' They were measured on different days, so what varies from day to day is part of it, and nothing here tells how much that is.',
        ]),
  ];
}
