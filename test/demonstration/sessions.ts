/**
 * The sessions of the demonstration, in the order in which the invented team took them: a table of data,
 * long because the bench is.
 *
 * What the table holds on purpose, beyond bodies, rates and rigs:
 *   matched pairs     sessions that differ in one setting only (resolution, audio, bit depth, firmware, link)
 *   a confounded pair `orrin-uhd24-8bit` changes bit depth and chroma at once, as that body's menu does
 *   a floor           `wexley-hd24-a`, `-hd30-a`, `-hd60-a`, `-hd120-a`: the last step up in rate brings nothing
 *   repeats           `orrin-uhd24-a`, `-b` and `-c` are one condition on three days
 *   a short clip      `orrin-hd60-a` spans 3 s of a beat of 16.7 s, `wexley-uhd30-a` twice 5 s
 *   a drift           `wexley-uhd60-cold` was started from cold
 *   a cut session     `tamsel-uhd50-audio` stopped when the body got hot
 *   a wrap            `tamsel-pit-uhd60` runs past the tablet's hundred seconds
 */
import type { PlannedRun, PlannedSession, PlannedSettings } from './plan.ts';

const USUAL: PlannedSettings = {
  resolution: 'uhd',
  rate: '25',
  'bit-depth': '10',
  chroma: '4:2:2',
  'audio-out': 'off',
  recording: 'off',
};

const ORRIN = { body: 'orrin-v2', firmware: '1.40' } as const;
const TAMSEL = { body: 'tamsel-6', firmware: '2.11' } as const;
const WEXLEY = { body: 'wexley-duo', firmware: '1.0.7' } as const;
const BALCONY = { rig: 'balcony', method: 'two-timers' } as const;
const PIT = { rig: 'pit', method: 'two-timers' } as const;

/** Alike runs, the timer restarted for each. */
function runs(count: number, readings: number, spacingS: number, startS = 4): PlannedRun[] {
  return Array.from({ length: count }, (_, i) => ({ readings, spacingS, startS: startS + 3 * i }));
}

export const SESSIONS: readonly PlannedSession[] = [
  // Workshop, before anything was hung.
  {
    id: 'orrin-flash-uhd60', ...ORRIN, rig: 'workshop', method: 'frame-count', date: '2026-03-04',
    settings: { ...USUAL, rate: '59.94' }, room: '20.5 °C', warmUp: '20 min', runs: runs(2, 12, 2.6),
    spoiled: [{ run: 2, reading: 5, shownError: 'unreadable', exclude: 'flash on the panel not found', note: 'hand in front of the phone' }],
    notes: 'One flash every two to four seconds, counted by two people separately. The counts were compared afterwards and agreed.',
  },
  {
    id: 'wexley-sensor-hd60', ...WEXLEY, rig: 'workshop', method: 'instrument', date: '2026-03-04',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94' }, room: '20.5 °C', warmUp: '25 min', runs: runs(2, 15, 2.2),
    notes: 'Thresholds of both sensors at half of their own swing. The second run was taken after switching body and panel off and on.',
  },

  // Balcony: Orrin V2.
  {
    id: 'orrin-uhd24-a', ...ORRIN, ...BALCONY, date: '2026-03-10',
    settings: { ...USUAL, rate: '23.976' }, room: '21.0 °C', warmUp: '20 min', runs: runs(2, 8, 2.6),
    notes: 'First session on the balcony. The timer was restarted between the two clips.',
  },
  {
    id: 'orrin-uhd25-a', ...ORRIN, ...BALCONY, date: '2026-03-10',
    settings: USUAL, room: '21.0 °C', warmUp: '45 min', runs: runs(1, 14, 2.2),
    spoiled: [{ run: 1, reading: 6, shownError: -300, exclude: 'shown digits overlap', note: 'tens and units of the milliseconds unreadable; tenths by guess' }],
    notes: 'A single clip, because the house opened early.',
  },
  {
    id: 'orrin-uhd30-a', ...ORRIN, ...BALCONY, date: '2026-03-10',
    settings: { ...USUAL, rate: '29.97' }, room: '21.5 °C', warmUp: '70 min', runs: runs(4, 5, 2.3),
    notes: 'Four short clips instead of one long one, to have the timer and the body start afresh.',
  },
  {
    id: 'orrin-uhd24-audio', ...ORRIN, ...BALCONY, date: '2026-03-10',
    settings: { ...USUAL, rate: '23.976', 'audio-out': 'on' }, room: '21.5 °C', warmUp: '95 min', runs: runs(2, 8, 2.6),
    notes: 'The same as orrin-uhd24-a but for the sound embedded in the output.',
  },
  {
    id: 'orrin-uhd60-a', ...ORRIN, ...BALCONY, date: '2026-03-11',
    settings: { ...USUAL, rate: '59.94' }, room: '20.5 °C', warmUp: '20 min', runs: runs(3, 8, 2.4),
    notes: 'Each clip runs for longer than the sixteen or seventeen seconds over which 59.94 and 60 drift through each other.',
  },
  {
    id: 'orrin-hd60-a', ...ORRIN, ...BALCONY, date: '2026-03-11',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94' }, room: '20.5 °C', warmUp: '40 min', runs: runs(1, 10, 0.3),
    notes: 'One clip of three seconds, stepped frame by frame and read ten times. Kept as an example of how not to do it: see the method notes.',
  },
  {
    id: 'orrin-uhd60-audio', ...ORRIN, ...BALCONY, date: '2026-03-11',
    settings: { ...USUAL, rate: '59.94', 'audio-out': 'on' }, room: '21.0 °C', warmUp: '60 min', runs: runs(4, 6, 2.9),
    notes: 'Microphone input of the body open, level normal. The embedded sound was heard at the processor.',
  },
  {
    id: 'orrin-hd60-audio', ...ORRIN, ...BALCONY, date: '2026-03-11',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94', 'audio-out': 'on' }, room: '21.0 °C', warmUp: '85 min', runs: runs(2, 10, 2.1),
    spoiled: [{ run: 1, reading: 3, shownError: 8, exclude: 'source digits overlap', note: 'two values readable' }],
    notes: 'Taken straight after orrin-uhd60-audio without moving anything.',
  },
  {
    id: 'orrin-uhd24-8bit', ...ORRIN, ...BALCONY, date: '2026-03-12',
    settings: { ...USUAL, rate: '23.976', 'bit-depth': '8', chroma: '4:2:0' }, room: '20.0 °C', warmUp: '20 min', runs: runs(3, 6, 2.5),
    notes: 'The menu of this body changes bit depth and chroma subsampling together; neither can be set alone.',
  },
  {
    id: 'orrin-uhd24-b', ...ORRIN, ...BALCONY, date: '2026-03-24',
    settings: { ...USUAL, rate: '23.976' }, room: '19.5 °C', warmUp: '20 min', runs: runs(3, 6, 2.4),
    notes: 'Repeat of orrin-uhd24-a after the rig had been taken down and put up again on its tape marks.',
  },
  {
    id: 'orrin-uhd24-c', ...ORRIN, ...BALCONY, date: '2026-04-14',
    settings: { ...USUAL, rate: '23.976' }, room: '22.0 °C', warmUp: '30 min', runs: runs(2, 9, 2.6),
    notes: 'Second repeat, three weeks later, with a different operator.',
  },

  // Balcony: Tamsel 6.
  {
    id: 'tamsel-uhd24-a', ...TAMSEL, ...BALCONY, date: '2026-03-17',
    settings: { ...USUAL, rate: '23.976' }, room: '20.5 °C', warmUp: '20 min', runs: runs(2, 8, 2.5),
    notes: 'Body on the tape mark of the Orrin, same lens height.',
  },
  {
    id: 'tamsel-uhd25-a', ...TAMSEL, ...BALCONY, date: '2026-03-17',
    settings: USUAL, room: '20.5 °C', warmUp: '40 min', runs: runs(3, 6, 2.4),
    notes: 'The reference condition for the other Tamsel sessions of this day.',
  },
  {
    id: 'tamsel-uhd25-audio', ...TAMSEL, ...BALCONY, date: '2026-03-17',
    settings: { ...USUAL, 'audio-out': 'on' }, room: '21.0 °C', warmUp: '60 min', runs: runs(3, 6, 2.4),
    notes: 'The same as tamsel-uhd25-a but for the sound embedded in the output.',
  },
  {
    id: 'tamsel-hd25-a', ...TAMSEL, ...BALCONY, date: '2026-03-17',
    settings: { ...USUAL, resolution: 'hd' }, room: '21.0 °C', warmUp: '80 min', runs: runs(3, 6, 2.4),
    spoiled: [{ run: 3, reading: 2, shownError: 'unreadable', exclude: 'shown digits hidden', note: 'a stagehand crossed the picture' }],
    notes: 'Output switched to HD in the menu of the body; the processor followed without being touched.',
  },
  {
    id: 'tamsel-hd25-audio', ...TAMSEL, ...BALCONY, date: '2026-03-17',
    settings: { ...USUAL, resolution: 'hd', 'audio-out': 'on' }, room: '21.5 °C', warmUp: '100 min', runs: runs(3, 6, 2.4),
    notes: 'Last of the four combinations of resolution and embedded sound at 25 frames a second.',
  },
  {
    id: 'tamsel-uhd50-a', ...TAMSEL, ...BALCONY, date: '2026-03-18',
    settings: { ...USUAL, rate: '50' }, room: '21.0 °C', warmUp: '15 min', runs: runs(2, 9, 2.2),
    notes: 'Shorter warm-up than usual, because this body heats quickly at the higher rates.',
  },
  {
    id: 'tamsel-hd50-a', ...TAMSEL, ...BALCONY, date: '2026-03-18',
    settings: { ...USUAL, resolution: 'hd', rate: '50' }, room: '21.0 °C', warmUp: '30 min', runs: runs(2, 9, 2.2),
    notes: 'Grip cool to the touch at the end, unlike after tamsel-uhd50-a.',
  },
  {
    id: 'tamsel-uhd60-a', ...TAMSEL, ...BALCONY, date: '2026-03-18',
    settings: { ...USUAL, rate: '59.94' }, room: '21.5 °C', warmUp: '15 min', runs: runs(3, 8, 2.4),
    notes: 'Ten minutes of rest with the battery door open before this session, five between its clips.',
  },
  {
    id: 'tamsel-uhd50-audio', ...TAMSEL, ...BALCONY, date: '2026-03-18',
    settings: { ...USUAL, rate: '50', 'audio-out': 'on', recording: 'on' }, room: '22.5 °C', warmUp: '15 min',
    cutShort: 'The body showed its temperature warning during the second clip and was switched off; two further clips had been planned.',
    runs: [{ readings: 9, spacingS: 2.2, startS: 4 }, { readings: 3, spacingS: 2.2, startS: 6 }],
    notes: 'Recording to the card while feeding the screen. When the warning came we stopped, took the battery out and let the body cool; nobody tried for the missing clips that day.',
  },
  {
    id: 'tamsel-uhd25-fw220', ...TAMSEL, firmware: '2.20', ...BALCONY, date: '2026-04-02',
    settings: USUAL, room: '20.0 °C', warmUp: '40 min', runs: runs(3, 6, 2.4),
    notes: 'The condition of tamsel-uhd25-a again, after the hire company had installed firmware 2.20.',
  },

  // Balcony: Wexley Duo.
  {
    id: 'wexley-uhd60-cold', ...WEXLEY, ...BALCONY, date: '2026-03-19',
    settings: { ...USUAL, rate: '59.94' }, room: '18.5 °C', warmUp: 'none', runs: [{ readings: 12, spacingS: 12, startS: 5 }, { readings: 12, spacingS: 12, startS: 9 }],
    notes: 'Started from cold on purpose: first clip at once after switching on, second clip directly after it. A clip here lasts more than two minutes.',
  },
  {
    id: 'wexley-uhd24-a', ...WEXLEY, ...BALCONY, date: '2026-03-19',
    settings: { ...USUAL, rate: '23.976' }, room: '19.5 °C', warmUp: '30 min', runs: runs(2, 9, 2.5),
    notes: 'Head on the tape mark, control unit on the floor behind it.',
  },
  {
    id: 'wexley-uhd30-a', ...WEXLEY, ...BALCONY, date: '2026-03-19',
    settings: { ...USUAL, rate: '29.97' }, room: '20.0 °C', warmUp: '50 min', runs: runs(2, 15, 0.33),
    notes: 'Two clips of five seconds each. We had not yet understood why spreading the readings matters.',
  },
  {
    id: 'wexley-uhd60-a', ...WEXLEY, ...BALCONY, date: '2026-03-19',
    settings: { ...USUAL, rate: '59.94' }, room: '20.5 °C', warmUp: '70 min', runs: runs(3, 8, 2.4),
    notes: 'The condition of wexley-uhd60-cold, with the head at its working temperature.',
  },
  {
    id: 'wexley-hd60-a', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94' }, room: '20.5 °C', warmUp: '30 min', runs: runs(3, 8, 2.4),
    notes: 'The reference condition for the other Wexley sessions of this day.',
  },
  {
    id: 'wexley-hd120-a', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '119.88' }, room: '21.0 °C', warmUp: '50 min', runs: runs(4, 7, 1.6),
    notes: 'Four clips, each longer than the eight seconds over which 119.88 and twice 60 drift through each other.',
  },
  {
    id: 'wexley-hd24-a', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '23.976' }, room: '21.0 °C', warmUp: '60 min', runs: runs(3, 8, 2.5),
    notes: 'Down the list of rates in HD, to see where the gain from a faster one ends.',
  },
  {
    id: 'wexley-hd30-a', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '29.97' }, room: '21.0 °C', warmUp: '70 min', runs: runs(3, 8, 2.6),
    notes: 'As wexley-hd24-a, one rate up.',
  },
  {
    id: 'wexley-hd60-audio', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94', 'audio-out': 'on' }, room: '21.0 °C', warmUp: '75 min', runs: runs(3, 8, 2.4),
    notes: 'The same as wexley-hd60-a but for the sound embedded in the output.',
  },
  {
    id: 'wexley-hd60-8bit', ...WEXLEY, ...BALCONY, date: '2026-03-20',
    settings: { ...USUAL, resolution: 'hd', rate: '59.94', 'bit-depth': '8' }, room: '21.5 °C', warmUp: '95 min', runs: runs(3, 8, 2.4),
    notes: 'The same as wexley-hd60-a but for the bit depth, which this body sets by itself.',
  },

  // Pit.
  {
    id: 'orrin-pit-uhd60', ...ORRIN, ...PIT, date: '2026-03-25',
    settings: { ...USUAL, rate: '59.94' }, room: '19.5 °C', warmUp: '25 min', runs: runs(3, 8, 2.6, 7),
    notes: 'Cable from the body to the pit monitor, forty metres.',
  },
  {
    id: 'orrin-pit-uhd60-radio', ...ORRIN, ...PIT, links: ['radio-pair'], date: '2026-03-25',
    settings: { ...USUAL, rate: '59.94' }, room: '20.0 °C', warmUp: '50 min', runs: runs(3, 8, 2.6, 7),
    spoiled: [{ run: 2, reading: 7, shownError: 'unreadable', exclude: 'picture broken up', note: 'radio dropped out for a moment' }],
    notes: 'The cable replaced by the radio pair, five metres apart with nothing between them.',
  },
  {
    id: 'tamsel-pit-uhd60', ...TAMSEL, firmware: '2.20', ...PIT, date: '2026-04-08',
    settings: { ...USUAL, rate: '59.94' }, room: '20.0 °C', warmUp: '15 min',
    runs: [{ readings: 9, spacingS: 2.6, startS: 12 }, { readings: 9, spacingS: 2.6, startS: 84.15 }],
    notes: 'During the second clip the tablet passed its hundred seconds and started again at zero; the digits are entered as they stood.',
  },
  {
    id: 'wexley-pit-uhd60', ...WEXLEY, ...PIT, date: '2026-04-09',
    settings: { ...USUAL, rate: '59.94' }, room: '20.5 °C', warmUp: '30 min', runs: runs(3, 8, 2.6, 7),
    notes: 'Cable, as for the other bodies.',
  },
  {
    id: 'wexley-pit-uhd60-radio', ...WEXLEY, ...PIT, links: ['radio-pair'], date: '2026-04-09',
    settings: { ...USUAL, rate: '59.94' }, room: '20.5 °C', warmUp: '55 min', runs: runs(3, 8, 2.6, 7),
    notes: 'Radio pair in the places where it had stood for the Orrin.',
  },
];
