import { edit, readings, rows, type ProblemCase } from './case.ts';

const session = (from: string, to: string) => edit('data/sessions/a.md', from, to);
const settings = (from: string, to: string) => edit('data/settings.yaml', from, to);
const rig = (from: string, to: string) => edit('data/rigs/balcony.md', from, to);
const screen = (from: string, to: string) => edit('data/displays/screen.md', from, to);
const GOOD = '1,00:31.482,00:31.181,,';

/** Slips that look like sound input: a wrong unit, a pasted row, a word that means the opposite. */
export const SLIP_CASES: readonly ProblemCase[] = [
  {
    name: 'a scan-out in seconds',
    changes: screen('1/60 s', '16 s'),
    lines: [
      'data/displays/screen.md:5:11  scan-out  "16 s" cannot be right; expected at most 16.67 ms, one refresh of 60 Hz. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a scan-out in microseconds',
    changes: screen('1/60 s', '16 us'),
    lines: [
      'data/displays/screen.md:5:11  scan-out  "16 us" cannot be right; expected 0 ms, or a good part of one refresh of 60 Hz. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a readout in seconds',
    changes: edit('data/bodies/vennick.md', '14 ms', '14 s'),
    lines: [
      'data/bodies/vennick.md:5:17  sensor-readout  "14 s" cannot be right; expected at most 41.71 ms, one frame of 23.976 frames/s. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an exposure longer than a frame',
    changes: rig('1/500 s', '1/50 s'),
    lines: [
      'data/rigs/balcony.md:4:55  observer.exposure  "1/50 s" cannot be right; expected at most 8.333 ms, one frame of 120 frames/s. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a stated latency in another unit',
    changes: edit('data/links/air.md', '1.5 ms', '150 s'),
    lines: [
      'data/links/air.md:3:19  latency.value  "150 s" cannot be right; expected at most 10 s. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an uncertainty above its value',
    changes: edit('data/links/air.md', '0.2 ms', '0.2 s'),
    lines: [
      'data/links/air.md:3:40  latency.uncertainty  "0.2 s" cannot be right; expected no more than the latency itself, as a standard uncertainty. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an absurd uncertainty',
    changes: rig('0.5 ms', '3 s'),
    lines: [
      'data/rigs/balcony.md:5:57  instrument.expanded-uncertainty  "3 s" cannot be right; expected 0.1 µs to 100 ms. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an absurd tolerance',
    changes: rig('50 ppm', '999999 ppm'),
    lines: [
      'data/rigs/balcony.md:4:118  observer.clock-tolerance  "999999 ppm" cannot be right; expected at most 5000 ppm. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an absurd rate',
    changes: rig('refresh: 60', 'refresh: 1/999999999'),
    lines: [
      'data/rigs/balcony.md:3:39  source-timer.refresh  "1/999999999" cannot be right; expected 1 to 10000 per second. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'an absurd level of the rate',
    changes: settings('59.94', '5994'.padEnd(6, '0')),
    lines: [
      'data/settings.yaml:1:69  1.levels.3  "599400" cannot be right; expected 1 to 10000 per second. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a timer that starts again within a second',
    changes: edit('data/rigs/pit.md', '60 s', '60 ms'),
    lines: [
      'data/rigs/pit.md:3:58  source-timer.wraps-after  "60 ms" cannot be right; expected one second or more. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a timer that counts in minutes',
    changes: rig('refresh: 60 }', 'refresh: 60, resolution: 5 min }'),
    lines: [
      'data/rigs/balcony.md:3:55  source-timer.resolution  "5 min" cannot be right; expected at most 1000 ms, one second. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a date before there were such bodies',
    changes: session('2026-04-11', '0206-04-11'),
    lines: [
      'data/sessions/a.md:6:7  date  "0206-04-11" cannot be right; expected a day from 1990 to 2099. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'a version with a character that nobody sees',
    changes: session('"1.40"', '"1.40\u200b"'),
    lines: [
      'data/sessions/a.md:3:11  firmware  "1.40\\u{200b}" holds a character that nobody can see. Type the text again; pasted text often brings such characters along.',
    ],
  },
  {
    name: 'a second setting of kind rate',
    changes: settings('kind: numeric, levels: [8, 10]', 'kind: rate, levels: [8, 10]'),
    lines: [
      'data/settings.yaml:2:46  2.kind  "bit-depth" is a second setting of kind rate. A body has one frame rate: give this one the kind numeric or ordered.',
    ],
  },
  {
    name: 'a setting named like a property of every object',
    changes: settings('bit-depth', 'constructor'),
    lines: ['data/settings.yaml:2:11  2.name  "constructor" cannot be used as a name here. Choose another name.'],
  },
  {
    name: 'a setting named __proto__',
    changes: session('bit-depth: 10', '__proto__: 10'),
    lines: [
      'data/sessions/a.md:7:26  settings.__proto__  unknown setting "__proto__"; expected one of rate, bit-depth, chroma, audio-out.',
    ],
  },
  {
    name: 'a key that is the same with and without quotes',
    changes: session('bit-depth: 10', '10: a, "10": b'),
    lines: ['data/sessions/a.md:7:33  10  this key is written twice. Keep one of the two.'],
  },
  {
    name: 'words under exclude that are no reason',
    changes: rows(GOOD, '1,00:33.482,00:33.181,no,', '1,00:34.482,00:34.181,0,', '1,00:35.482,00:35.181,Keep,'),
    lines: [
      'data/sessions/a.csv:3  exclude  "no" is no reason, and whatever stands here excludes the reading. Leave the cell empty if the reading counts; if not, write why in words.',
      'data/sessions/a.csv:4  exclude  "0" is no reason, and whatever stands here excludes the reading. Leave the cell empty if the reading counts; if not, write why in words.',
      'data/sessions/a.csv:5  exclude  "Keep" is no reason, and whatever stands here excludes the reading. Leave the cell empty if the reading counts; if not, write why in words.',
    ],
  },
  {
    name: 'a reason that nobody sees',
    changes: rows(GOOD, '1,00:33.482,00:33.181,\u200b,'),
    lines: [
      'data/sessions/a.csv:3  exclude  "\\u{200b}" holds a character that nobody can see. Type the text again; pasted text often brings such characters along.',
    ],
  },
  {
    name: 'a comma in a note that is not quoted',
    changes: rows(GOOD, '1,00:33.482,00:33.181,slight blur, still readable'),
    lines: [
      'data/sessions/a.csv:3  note  the note " still readable" begins with a blank, as after a comma within a text. Quote a cell that holds a comma; whatever stands under exclude excludes the reading.',
    ],
  },
  {
    name: 'rows pasted twice',
    changes: rows(GOOD, '1,00:33.482,00:33.181,,', GOOD, '1,00:33.482,00:33.181,,'),
    lines: [
      'data/sessions/a.csv:4  source  00:31.482 was read in this run already, in line 2. Remove a row that was pasted twice; a second reading of one picture is none.',
      'data/sessions/a.csv:5  source  00:33.482 was read in this run already, in line 3. Remove a row that was pasted twice; a second reading of one picture is none.',
    ],
  },
  {
    name: 'rows of a clip exchanged',
    changes: rows('1,00:33.482,00:33.181,,', GOOD),
    lines: [
      'data/sessions/a.csv:3  source  00:31.482 is earlier than the reading before it in this run, 00:33.482. Within a run, write the readings in the order filmed; a new clip is the next run; correct or exclude a misread one.',
    ],
  },
  {
    name: 'a step back that is no new start of the timer',
    changes: { ...session('rig: balcony', 'rig: pit'), ...rows('1,00:33.482,00:33.181,,', GOOD) },
    lines: [
      'data/sessions/a.csv:3  source  00:31.482 is earlier than the reading before it in this run, 00:33.482. Within a run, write the readings in the order filmed; a new clip is the next run; correct or exclude a misread one.',
    ],
  },
  {
    name: 'a digit of the minutes',
    changes: rows(GOOD, '1,01:33.482,00:33.181,,'),
    lines: [
      'data/sessions/a.csv:3  a latency of 60.301 s is longer than any chain takes; the limit is 10 s. Look for a mistyped digit or a wrong unit; correct it, or say under exclude why it does not count.',
    ],
  },
  {
    name: 'an instrument’s seconds',
    changes: {
      ...session('two-timers', 'instrument'),
      ...readings('run,latency,exclude,note', '1,0.0771,,', '1,0.0811,,', '1,0.0816,,'),
    },
    lines: [
      'data/sessions/a.csv  latency  readings of about 0.0811 ms are shorter than a chain at this frame rate can give (at least about 5.21 ms). Write the column in its own unit: latency in milliseconds, frames in frames of the observer.',
    ],
  },
  {
    name: 'more readings in one clip than the analysis takes',
    changes: {
      ...session('two-timers', 'frame-count'),
      ...readings(
        'run,frames,exclude,note',
        ...Array.from({ length: 1000 }, () => '1,22,,'),
        ...Array.from({ length: 999 }, () => '2,22,,'),
        '2,22,digits overlap,',
        ...Array.from({ length: 4 }, () => '2,22,,'),
      ),
    },
    lines: [
      'data/sessions/a.csv:2003  run 2  holds 1003 readings that count in one clip; expected at most 1000. Film more clips in place of reading one so often: the readings of a clip share its phases, and soon tell nothing new.',
    ],
  },
  {
    name: 'frames in seconds',
    changes: {
      ...session('two-timers', 'frame-count'),
      ...readings('run,frames,exclude,note', '1,0.25,,', '1,0.25,,', '1,0.25,,'),
    },
    lines: [
      'data/sessions/a.csv  frames  readings of about 0.25 frames are shorter than a chain at this frame rate can give (at least about 0.626 frames). Write the column in its own unit: latency in milliseconds, frames in frames of the observer.',
    ],
  },
  {
    name: 'a resolution finer than the digits written',
    changes: rig('refresh: 60 }', 'refresh: 60, resolution: 1 us }'),
    lines: [
      'data/sessions/a.csv  source  "00:31.482" cannot be right; expected digits as fine as the resolution of 0.001 ms that the rig states for its source-timer. Check the number, its unit, and what it is set against.',
    ],
  },
  {
    name: 'semicolons under a header with commas',
    changes: rows(...Array.from({ length: 60 }, (_, at) => `1;00:${at}.482;00:${at}.181;;`)),
    lines: [
      'data/sessions/a.csv:2  the columns are separated by semicolons, not by commas. Save the file with comma-separated values, and write decimals with a point: 31.482.',
    ],
  },
  {
    name: 'one mistake in sixty rows',
    changes: rows(...Array.from({ length: 60 }, (_, at) => `1,00:${10 + (at % 50)}.5x,,blurred,`)),
    lines: [
      'data/sessions/a.csv  every reading of this session is excluded. Add a reading that counts, or remove the session.',
      'data/sessions/a.csv:2  source  expected a time, found "00:10.5x"; write 31.482, 00:31.482 or 00:00:31.482; so have 59 further rows. Where there is no value, leave the cell empty and say under exclude why.',
    ],
  },
  {
    name: 'a mistake in the readings of a session whose front matter is faulty',
    changes: { ...session('body: vennick', 'bdy: vennick'), ...rows(GOOD, '1,00:33.482,x,,') },
    lines: [
      'data/sessions/a.csv:3  shown  expected a time, found "x"; write 31.482, 00:31.482 or 00:00:31.482. Where there is no value, leave the cell empty and say under exclude why.',
      'data/sessions/a.md:1  body  this key is missing. Add it.',
      'data/sessions/a.md:2:1  bdy  unknown key "bdy"; expected one of body, firmware, rig, method, date, settings, room, warm-up, cut-short, links, display, planned, imported-from. Did you mean body?',
    ],
  },
  {
    name: 'a mistake in the readings of a session whose rig is faulty',
    changes: { ...rig('refresh: 60', 'refresh: sixty'), ...rows(GOOD, '1,00:33.482,x,,') },
    lines: [
      'data/rigs/balcony.md:3:39  source-timer.refresh  expected a rate, found "sixty"; write 24, 23.976, 24000/1001 or 59.94p.',
      'data/sessions/a.csv:3  shown  expected a time, found "x"; write 31.482, 00:31.482 or 00:00:31.482. Where there is no value, leave the cell empty and say under exclude why.',
    ],
  },
  {
    name: 'front matter full of blank lines',
    changes: session('body: vennick', `${'\n'.repeat(200_000)}body: vennick`),
    lines: [
      'data/sessions/a.md:1  the front matter is 196 KiB long; the limit is 32 KiB. Remove blank lines, and write what is text below the closing line ---.',
    ],
  },
  {
    name: 'a table that a page cannot hold',
    changes: {
      'content/reports/first.mdx': `---\ntitle: First\nsummary: The first.\ndate: 2026-04-12\n---\n\n${'|a'.repeat(20_000)}|\n${'|-'.repeat(20_000)}|\n|b|\n`,
    },
    lines: [
      'content/reports/first.mdx:7  the table that begins here has 40002 cells; the limit is 20000. Split it, or publish it as a file.',
    ],
  },
  {
    name: 'files that systems leave behind, and a misspelt folder',
    changes: {
      'data/sessions/Thumbs.db': 'x',
      'data/rigs/desktop.ini': 'x',
      'data/sessions/~$a.xlsx': 'x',
      'content/report/x.mdx': 'x',
    },
    lines: [
      'content/report  does not belong here; expected one of site.md, README.md, methods, reports, ledger. Move it away, or correct its name. Did you mean reports?',
    ],
  },
];
