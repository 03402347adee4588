/**
 * The words of every problem: the only place that has any. One line per problem, made to be read in a
 * terminal and clicked in an editor: where, which key or column, what is wrong, what to do.
 *
 *     data/sessions/a.md:4:6  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?
 *
 * The file is as long as the table of codes.
 */
import { describeCauses } from './cause-text.ts';
import type { YamlMistake } from './yaml-mistake.ts';
import { compareProblems, ProblemsError, type ClaimEvidence, type Problem, type ProblemCode } from './problem.ts';

/** What is wrong; then, where the choices and the nearest of them do not say it, what to do. */
type Words = (problem: Problem) => readonly [says: string, remedy?: string | undefined];

const PROBLEMS_SHOWN_PER_FILE = 20;
/** What many files have in common, where the one that they refer to is at fault. */
const FOLLOWS_FROM_ELSEWHERE = new Set<ProblemCode>([
  'missing-method',
  'rig-lacks',
  'unknown-body',
  'unknown-display',
  'unknown-level',
  'unknown-link',
  'unknown-rig',
  'unknown-setting',
]);
/** Files that are named where more have the same problem. */
const ALIKE_SHOWN = 3;
const CHOICES_SHOWN = 12;
const FOUND_SHOWN = 60;

const found = (problem: Problem): string => quote(problem.found ?? '');
const asIs = (text: string | undefined): string => escapeControls(text ?? '');

const SEPARATORS: Readonly<Record<string, string>> = { ';': 'semicolons', '\t': 'tabs', '|': 'vertical bars' };
const SHAPES: Readonly<Record<string, string>> = { text: 'text', list: 'a list', mapping: 'keys with values' };

const DURATION = 'write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min';
const AS_RECORDED = 'npm run record writes this file: take it back from version control';
const TAKE_BACK =
  'Take its files back from version control; what is wrong in an entry is put right by a further record';
/** What follows from the entries of the ledger. */
const IN_LEDGER = /\/ledger\/(?:figures|inputs)\.csv$/;
const WRITE_AGAIN =
  'Take the file back from version control, or let it be written again from the entries: npm run record -- --join';
const RECORD = 'If that is meant, say why: npm run record -- --reason "…" --date YYYY-MM-DD';
const TRUST =
  'A publisher who trusts every author can allow code and any markup: write-ups-run-code: true in content/site.md';
const UTF_8 = 'Save it as UTF-8 (in a spreadsheet: "CSV UTF-8"; in an editor: Save with encoding, UTF-8)';

const IN_QUOTES = 'Put the whole value in quotes: name: "a: b"';

/** For each mistake in YAML: what is wrong at what was found, and what to change. */
const YAML_MISTAKES: Readonly<Record<YamlMistake, (at: string) => readonly [string, string]>> = {
  'open-quote': (at) => [`a quotation mark opens in ${at} and is never closed`, 'Close it, or write the value without'],
  'after-quote': (at) => [
    `text goes on after a closing quotation mark in ${at}`,
    "Write the value without quotes, or double a quotation mark within: 'it''s'",
  ],
  colon: (at) => [`the value in ${at} holds a colon and a blank, which begin a value of their own`, IN_QUOTES],
  'no-blank': (at) => [`there is no blank after the colon in ${at}`, 'Write one: rate: 24'],
  'no-colon': (at) => [`expected a key and a value, found ${at}`, 'Write key: value, or indent a line that goes on'],
  'under-value': (at) => [
    `${at} is indented under a line that has a value already`,
    'Begin it where the line above begins, or remove the value above',
  ],
  indent: (at) => [`${at} begins further right or left than the lines it belongs with`, 'Indent all of them alike'],
  tab: (at) => [`${at} is indented with a tab`, 'Indent with blanks'],
  'first-character': (at) => [`a value cannot begin with ${at}`, 'Put it in quotes'],
  escape: (at) => [`${at} means nothing in double quotes`, 'Write \\\\ for a backslash, or use single quotes'],
  'open-bracket': (at) => [
    `the bracket ${at} opens here and is never closed`,
    'Close it, or put a value that begins with it in quotes',
  ],
  'closing-bracket': (at) => [`${at} closes a bracket that never opened`, 'Remove it, or put the value in quotes'],
  'no-comma': (at) => [`a comma is missing between two entries in brackets, in ${at}`, 'Write one: { a: 1, b: 2 }'],
  comma: (at) => [`there is a comma too many in ${at}`, 'Remove it'],
  dash: (at) => [
    `a list with dashes begins on the line of its key, in ${at}`,
    'Begin it on a line of its own, or write [a, b]',
  ],
  other: (at) => [
    `${at} cannot be read as keys and values`,
    'Write a line key: value for each, values with odd characters in quotes',
  ],
};

const WORDS: Readonly<Record<ProblemCode, Words>> = {
  'missing-folder': () => [
    'this folder is missing',
    'Create it, or check that the build was pointed at the right place',
  ],
  'missing-file': ({ file }) => ['this file is missing', IN_LEDGER.test(file) ? WRITE_AGAIN : 'Create it'],
  'missing-readings': (p) => [
    `this session has no readings file ${asIs(p.expected)}`,
    'Add it beside this file; both have the same name',
  ],
  'missing-front': (p) => [
    `these readings have no session file ${asIs(p.expected)}`,
    'Add it beside this file; both have the same name',
  ],
  'missing-workbook': (p) => [
    `the workbook ${found(p)} that it was imported from is not there`,
    'Put it back, or take imported-from out if it is not to be published',
  ],
  'changed-workbook': (p) => [
    `the workbook ${found(p)} is not the one that it was imported from: its checksum is another`,
    'Put back the one that was imported; changes of readings belong into the readings file of the session',
  ],
  'stray-entry': (p) =>
    p.expected === undefined
      ? ['does not belong here', 'Move it away, or correct its name']
      : [`does not belong here; expected ${asIs(p.expected)}`, 'Move it away, or correct its name'],
  'bad-id': (p) => [
    `the file name ${found(p)} cannot be an id; use lower-case letters, digits and hyphens`,
    p.expected === undefined ? 'Rename the file' : `Rename it, for example to ${asIs(p.expected)}`,
  ],
  'duplicate-id': (p) => [`has the same id as ${asIs(p.expected)}`, 'Rename or remove one of the two'],
  'link-leads-out': (p) => [
    `is a symbolic link that leads out of ${asIs(p.expected)}; its target was not read`,
    'Put the file itself here',
  ],
  'not-a-file': () => ['is not an ordinary file', 'Replace it with one'],
  'unreadable-file': (p) => [
    `cannot be read (${asIs(p.found)})`,
    'Check that it exists and that its permissions let you read it',
  ],
  'file-too-large': (p) => [
    `is ${asIs(p.found)} and was not read; the limit is ${asIs(p.expected)}`,
    'Split it into several sessions',
  ],
  'empty-file': () => ['is empty', 'Write its contents, or remove it'],
  'utf-16': () => ['is encoded as UTF-16', UTF_8],
  'not-utf-8': () => ['this line holds bytes that are not UTF-8', UTF_8],
  'nul-byte': () => [
    'this line holds a NUL byte, so the file is not plain text',
    'Write it again as plain text in UTF-8',
  ],
  'merge-unfinished': () => [
    'a merge is not finished: a mark of version control stands here',
    'Keep what is true of both versions, and remove the marks',
  ],
  'control-character': (p) => [
    `holds the character ${asIs(p.found)}, which steers terminals or turns the direction of text`,
    'Remove it; it may have come along when text was copied',
  ],

  'bad-format': (p) => [`${found(p)} is no version of the format`, 'Write a whole number: format: 2'],
  'newer-format': (p) => [
    `these files were written for format ${asIs(p.found)}, and this version of the tool reads up to format ${asIs(p.expected)}`,
    'Update the tool',
  ],
  'older-format': (p) => [
    `${asIs(p.found)} (since format ${asIs(p.expected)})`,
    'npm run bring-over writes it anew, and every other file that needs it; with --dry it only says which',
  ],
  'no-front-matter': (p) => [
    `expected the opening line ---, found ${found(p)}`,
    'Begin the file with front matter: a line ---, keys and values, a line ---',
  ],
  'front-matter-language': (p) => [
    `front matter in the language ${found(p)} is refused and was not run`,
    'Open with --- alone and write YAML',
  ],
  'front-matter-unclosed': () => ['the front matter that opens here is never closed', 'End it with a line ---'],
  'front-matter-close': (p) => [
    `the front matter closes with ${found(p)}`,
    'Close it with a line --- that holds nothing else',
  ],
  'front-matter-too-long': (p) => [
    `the front matter is ${asIs(p.found)} long; the limit is ${asIs(p.expected)}`,
    'Remove blank lines, and write what is text below the closing line ---',
  ],
  'bad-yaml': (p) => YAML_MISTAKES[(p.expected ?? 'other') as YamlMistake](found(p)),
  'mdx-depth': () => ['quotations, lists or elements are nested too deeply to be read', 'Take them out of each other'],
  'yaml-depth': () => ['the YAML is nested too deeply', 'Write plain keys and values'],
  'yaml-documents': () => ['a second YAML document begins here', 'Keep one, and remove the line that parts them'],
  'yaml-alias': (p) => [
    `YAML anchors and aliases are not accepted, found ${found(p)}`,
    'Write the value out; put it in quotes if it is text',
  ],
  'yaml-tag': (p) => [
    `YAML tags are not accepted, found ${found(p)}`,
    'Remove it; put the value in quotes if it is text',
  ],
  'yaml-quotes': (p) => [
    `found ${asIs(p.found)} in quotes of print, which would be part of the value`,
    'Write straight ones, "…"; where a text is meant to have them, put straight ones around them',
  ],
  'duplicate-key': () => ['this key is written twice', 'Keep one of the two'],
  'unknown-key': (p) => [`unknown key ${found(p)}`],
  'missing-key': () => ['this key is missing', 'Add it'],
  'empty-value': () => ['has no value', 'Write one, or remove the key where it is optional'],
  'wrong-shape': (p) => [`expected ${nameShape(p.expected)}, found ${nameShape(p.found)}`],

  'bad-choice': (p) => [`${found(p)} is not a choice here`],
  'bad-flag': (p) => [`expected true or false, found ${found(p)}`],
  'bad-date': (p) => [`expected a calendar date written YYYY-MM-DD, found ${found(p)}`],
  'bad-duration': (p) => [`expected a duration, found ${found(p)}; ${DURATION}`],
  'zero-duration': (p) => [`must be longer than zero, found ${found(p)}`],
  'bad-rate': (p) => [`expected a rate, found ${found(p)}; write 24, 23.976, 24000/1001 or 59.94p`],
  'bad-tolerance': (p) => [`expected parts per million, found ${found(p)}; write 50 ppm`],
  'bad-speed': (p) => [`expected a speed, found ${found(p)}; write 1.2 m/s or 5 km/h`],
  'bad-speed-name': () => [
    'a speed of your own is called by lower-case letters, digits and hyphens, and not walking, sprinting, falling or sound',
    'Call it otherwise, such as camera-cart',
  ],
  'bad-outputs': (p) => [
    `${found(p)} does not say how the picture is fed to both displays`,
    'Write splitter (one output feeds both), unknown (two outputs that nobody compared), or how far they were found alike, as a standard uncertainty (1 ms)',
  ],
  'bad-row-height': (p) => [`expected a height from 0 (top edge) to 1 (bottom edge), found ${found(p)}`],
  'bad-licence': (p) => [
    `${found(p)} is not on the SPDX licence list; write its identifier, such as CC-BY-4.0 or CC0-1.0`,
  ],
  'bad-address': (p) => [
    `expected the address of the site's home page, found ${found(p)}; write https://example.org/bench/`,
  ],
  'bad-language': (p) => [`expected a language tag, found ${found(p)}; write en, en-GB or de`],
  'bad-identifier': (p) => [
    `expected a DOI, a URN or an address, found ${found(p)}; write 10.1234/abc or urn:isbn:9780306406157`,
  ],
  'out-of-range': (p) => [
    `${found(p)} cannot be right; expected ${asIs(p.expected)}`,
    'Check the number, its unit, and what it is set against',
  ],
  'invisible-character': (p) => [
    `${found(p)} holds a character that nobody can see`,
    'Type the text again; pasted text often brings such characters along',
  ],
  'bad-setting-name': (p) => [`${found(p)} cannot name a setting; use lower-case letters, digits and hyphens`],
  'bad-level-number': (p) => [`the levels of a numeric setting are plain numbers, found ${found(p)}`],
  'bad-level-rate': (p) => [
    `the levels of a rate setting are rates, found ${found(p)}; write 24, 23.976, 24000/1001 or 59.94p`,
  ],
  'duplicate-setting': (p) => [`the setting ${found(p)} is declared twice`, 'Keep one of the two'],
  'duplicate-level': (p) => [`the level ${found(p)} repeats ${asIs(p.expected)}`, 'Keep one of the two'],
  'duplicate-link': (p) => [
    `the link ${found(p)} is listed twice`,
    'List each link of the chain once; give a second unit a file of its own',
  ],
  'no-rate-setting': () => [
    'there is no setting named rate of kind rate',
    'Declare it: - { name: rate, label: Frame rate, kind: rate, levels: [24, 25] }',
  ],
  'second-rate-setting': (p) => [
    `${found(p)} is a second setting of kind rate`,
    'A body has one frame rate: give this one the kind numeric or ordered',
  ],
  'reserved-name': (p) => [`${found(p)} cannot be used as a name here`, 'Choose another name'],
  'bad-sizes': () => [
    'expected sizes from 0 on, each with its weight, and weights that sum to 1',
    'Write them like { 0: 0.75, 0.25: 0.25 }, or have npm run variation write the file anew',
  ],
  'bad-chances': () => [
    'expected probabilities from 0 to 1, each with its weight, and weights that sum to 1',
    'Write them like { 0: 0.75, 0.5: 0.25 }, or have npm run variation write the file anew',
  ],
  'unquoted-number': (p) => [
    `${asIs(p.found)} is a number here, and other programs would drop its last zeros`,
    `Quote it: "${asIs(p.found)}"`,
  ],

  'unknown-body': (p) => [`unknown body ${found(p)}`],
  'unknown-rig': (p) => [`unknown rig ${found(p)}`],
  'unknown-display': (p) => [`unknown display ${found(p)}`],
  'unknown-link': (p) => [`unknown link ${found(p)}`],
  'unknown-setting': (p) => [`unknown setting ${found(p)}`],
  'unknown-level': (p) => [`unknown level ${found(p)} of this setting`],
  'unknown-method': (p) => [`unknown method ${found(p)}`],
  'same-display': (p) => [
    `${found(p)} stands under display as well`,
    'Name under “against” the other display, whose values stand under source',
  ],
  'missing-method': (p) => [
    `the method ${found(p)} has no page ${asIs(p.expected)}`,
    'Write it, so that readers can see how the readings were taken',
  ],
  'rig-lacks': (p) => [
    `the method ${found(p)} needs ${asIs(p.expected)}, which the rig does not state`,
    'Add it to the rig, or choose another rig or method',
  ],

  'no-readings': () => ['has a header and no readings', 'Add the readings, one per line'],
  'wrong-delimiter': (p) => [
    `the columns are separated by ${SEPARATORS[p.found ?? ''] ?? found(p)}, not by commas`,
    'Save the file with comma-separated values, and write decimals with a point: 31.482',
  ],
  'unknown-column': (p) => [`unknown column ${found(p)}; expected exactly ${asIs(p.expected)}`],
  'missing-column': (p) => [`this column is missing; expected exactly ${asIs(p.expected)}`],
  'duplicate-column': (p) => [`the column ${found(p)} stands twice; expected exactly ${asIs(p.expected)}`],
  'column-order': (p) => [`the columns are in another order; expected exactly ${asIs(p.expected)}`],
  'unclosed-quote': () => [
    'a quote that opens in this row is never closed',
    'Close it; inside quotes, a quote is written twice: ""',
  ],
  'stray-quote': () => [
    'a quote in this row stands where none can',
    'Quote whole cells, without spaces around; inside quotes, a quote is written twice: ""',
  ],
  'ragged-row': (p) => [
    `this row has ${count(Number(p.found), 'cell')}; expected ${asIs(p.expected)}`,
    Number(p.found) < Number(p.expected)
      ? 'Write every comma, also beside an empty cell'
      : 'Quote a cell that holds a comma, and write decimals with a point: 31.482',
  ],
  'blank-row': () => ['a blank row stands among the readings', 'Remove it; blank lines are accepted only at the end'],

  'bad-run': (p) => [`expected a run number, 1 or more, found ${found(p)}`],
  'run-order': (p) => [
    `run ${asIs(p.found)} cannot stand here; expected ${asIs(p.expected)}`,
    'Runs count up from 1 without gaps',
  ],
  'empty-cell': () => [
    'is empty, and the reading is not excluded',
    'Write the value, or say under exclude why there is none',
  ],
  'bad-time': (p) => [`expected a time, found ${found(p)}; write 31.482, 00:31.482 or 00:00:31.482`, remedyOfNumber(p)],
  'mixed-decimals': (p) => [
    `${found(p)} has ${count(decimalsOf(p), 'decimal')} where the times above have ${asIs(p.expected)}`,
    'Write every time of a file with the same number of decimals, as the timer shows it',
  ],
  'time-past-wrap': (p) => [
    `${asIs(p.found)} cannot be read off a timer that starts again after ${asIs(p.expected)}`,
    'Correct the reading, or wraps-after in the rig',
  ],
  'bad-number': (p) => [`expected a plain decimal number, found ${found(p)}; write 17 or 17.5`, remedyOfNumber(p)],
  'negative-value': (p) => [
    `must not be negative, found ${asIs(p.found)}`,
    'Correct it, or say under exclude why it does not count',
  ],
  'shown-later': (p) => [
    `the display shows ${asIs(p.found)}, later than the source at ${asIs(p.expected)}`,
    'Check that the two are not swapped; correct the reading, or say under exclude why it does not count',
  ],
  'timer-wrapped': (p) => [
    `the display shows ${asIs(p.found)}, later than the source; the timer may have started again at zero`,
    `If it does so after ${asIs(p.expected)}, state wraps-after: ${asIs(p.expected)} in the rig; if not, correct the reading or exclude it`,
  ],
  'blank-reason': () => ['holds only blanks', 'Write why the reading does not count, or leave the cell empty'],
  'no-reason': (p) => [
    `${found(p)} is no reason, and whatever stands here excludes the reading`,
    'Leave the cell empty if the reading counts; if not, write why in words',
  ],
  'reason-with-comma': (p) => [
    `the note ${found(p)} begins with a blank, as after a comma within a text`,
    'Quote a cell that holds a comma; whatever stands under exclude excludes the reading',
  ],
  'stamps-back': (p) => [
    `${asIs(p.found)} is earlier than the reading before it in this run, ${asIs(p.expected)}`,
    'Within a run, write the readings in the order filmed; a new clip is the next run; correct or exclude a misread one',
  ],
  'stamp-twice': (p) => [
    `${asIs(p.found)} was read in this run already, in line ${asIs(p.expected)}`,
    'Remove a row that was pasted twice; a second reading of one picture is none',
  ],
  'too-long': (p) => [
    `a latency of ${asIs(p.found)} is longer than any chain takes; the limit is ${asIs(p.expected)}`,
    'Look for a mistyped digit or a wrong unit; correct it, or say under exclude why it does not count',
  ],
  'long-clip': (p) => [
    `holds ${asIs(p.found)} readings that count in one clip; expected ${asIs(p.expected)}`,
    'Film more clips in place of reading one so often: the readings of a clip share its phases, and soon tell nothing new',
  ],
  'too-short': (p) => [
    `readings of about ${asIs(p.found)} are shorter than a chain at this frame rate can give (${asIs(p.expected)})`,
    'Write the column in its own unit: latency in milliseconds, frames in frames of the observer',
  ],
  'bad-mdx': (p) => [
    `not valid MDX: ${asIs(p.found)}`,
    'In MDX, < and { begin markup: write &lt; or \\{ where the character is meant',
  ],
  'code-in-write-up': (p) => [
    `${found(p)} is code, and a write-up holds none`,
    p.expected === 'statement'
      ? `Remove it: parts need no import, and numbers come from data. ${TRUST}`
      : `Write the text itself, or \\{ where the character is meant; a comment is {/* … */}. ${TRUST}`,
  ],
  'refused-element': (p) => [
    `<${asIs(p.found)}> is neither a part nor an element that a write-up may write`,
    `Write Markdown and the parts of the authors' guide. ${TRUST}`,
  ],
  'refused-attribute': (p) => [`this element takes no attribute ${found(p)}`, TRUST],
  'refused-link': (p) => [
    `a link that begins with ${found(p)} is refused`,
    'Lead to a page of this site (/sessions/a/), to https:, http: or mailto:',
  ],
  'picture-by-reference': () => [
    'this picture is named elsewhere in the text',
    'Write its path in place: ![what it shows](picture.jpg)',
  ],
  'picture-in-sentence': (p) => [
    `the picture ${found(p)} stands within a sentence or a link`,
    'Give it a paragraph of its own; several in one paragraph stand side by side',
  ],
  'picture-without-words': (p) => [
    `the picture ${found(p)} has no words for those who do not see it`,
    'Say what it shows: ![the timer beside the display](picture.jpg)',
  ],
  'picture-elsewhere': (p) => [
    `the picture ${found(p)} would be asked of another place`,
    'Keep it beside the text, and write its path from there: ![what it shows](picture.jpg)',
  ],
  'picture-outside': (p) => [
    `${found(p)} stands outside the folders data and content`,
    'Keep it beside the text, or in a folder pictures there',
  ],
  'unknown-picture': (p) => [
    `${found(p)} has not the ending of a photograph or clip that can be shown`,
    'Save a photograph as JPEG or WebP, a drawing or a picture of a screen as PNG, a clip as MP4 with H.264',
  ],
  'missing-picture': (p) => [
    `${found(p)} is not there`,
    p.nearest?.length ? undefined : 'Put the file where the path leads, which counts from the folder of this file',
  ],
  'unreadable-picture': (p) => [
    p.found === undefined
      ? 'cannot be read as a picture: it is damaged, or something else'
      : `is a picture of a kind that cannot be shown: ${asIs(p.found)}`,
    'Open it in a picture editor and save it anew, as JPEG, PNG, WebP or AVIF',
  ],
  'picture-too-large': (p) => [
    `has ${asIs(p.found)} pixels, more than ${asIs(p.expected)} million`,
    'Make it smaller: no page shows more than the width of a screen',
  ],
  'moving-picture': () => [
    'is a picture that moves by itself, which nobody could stop',
    'Show a still of it, or make it a clip: MP4 with H.264',
  ],
  'clip-without-words': (p) => [
    p.expected === undefined
      ? 'this clip has neither captions nor words in their place'
      : `${asIs(p.expected)} is not there, which says what stands in the place of this clip and what is heard in it`,
    p.expected === undefined
      ? 'Add captions: pan.vtt, or in-words: and what is seen and heard'
      : 'Write it, with poster: pan.jpg, flashes: false (or true), and captions: pan.vtt or in-words: and what is seen and heard',
  ],
  'unreadable-clip': (p) => [
    p.found === undefined
      ? 'cannot be read as a film: it is damaged, or something else'
      : `is a film of another kind than MP4: ${asIs(p.found)}`,
    'Export it as MP4 with H.264',
  ],
  'clip-not-played': (p) => [
    `is coded as ${asIs(p.found)}, which many browsers do not play`,
    'Export it as MP4 with H.264 and AAC',
  ],
  'clip-carries-data': (p) => [
    `carries more than picture and sound (${asIs(p.found)}), as cameras do to note places and movements`,
    'Export it again with picture and sound only',
  ],
  'bad-captions': (p) => [
    p.expected !== undefined
      ? 'does not begin with WEBVTT'
      : p.found !== undefined
        ? `${found(p)} says no time`
        : 'has no words',
    'Write captions as WebVTT: WEBVTT, a blank line, then 00:01.000 --> 00:04.000 and the words under it',
  ],
  'html-in-note': (p) => [
    `${found(p)} is HTML, which a note does not take`,
    'Write Markdown, or \\< where the character is meant; a number is marked with <Setting>…</Setting> or <Quoted from="…">…</Quoted>',
  ],
  'unclosed-mark': (p) => [
    `${found(p)} has no counterpart in its paragraph`,
    'Write both tags around the words: <Setting>2 ms</Setting>',
  ],
  'unknown-part': (p) => [`there is no part <${asIs(p.found)}>`],
  'unknown-property': (p) => [`this part takes no property ${found(p)}`],
  'missing-property': (p) => [`this part needs the property ${asIs(p.expected)}`, 'Add it'],
  'unknown-figure': (p) =>
    p.nearest?.length
      ? [`there is no figure ${found(p)}`]
      : [`there is no figure ${found(p)}`, 'npm run figures lists them all'],
  'unknown-session': (p) => [`unknown session ${found(p)}`],
  'empty-selection': () => ['no session matches this selection', 'Loosen it, or record the session first'],
  'empty-comparison': () => [
    'no two sessions match, so there is nothing to compare',
    'Loosen it, or record the sessions first',
  ],
  'same-session': (p) => [`${found(p)} is compared with itself`, 'Name two sessions'],
  'bad-quantity': (p) => [
    `expected a quantity, found ${found(p)}; write 100 ms, 0.5 frames, half a frame, 30 %, half, twice or 3`,
  ],
  'bad-selection': (p) => [
    `expected figures, such as {["total/a", "total/b"]}, or what their sessions have in common, such as {{ rig: "balcony", where: { rate: "25" } }}, found ${found(p)}`,
  ],
  'no-words': () => ['there are no words between its tags', 'Write them: what is to be marked stands inside'],
  'nested-words': (p) => [
    `holds ${asIs(p.found)} between its tags, and a link cannot stand in a link`,
    'Let it hold plain words only',
  ],
  'not-plain': (p) => [
    `${asIs(p.found)} is not written out, so it cannot be checked before the pages are drawn`,
    'Write plain values: text in quotes, numbers, lists and maps of them',
  ],
  'wrong-unit': (p) => [`${found(p)} cannot be set against ${asIs(p.expected)}`, 'State it in the unit of the figure'],
  'one-sided': (p) => [
    `${asIs(p.found)} compares nothing, so this cannot be asked of it`,
    'Name two sessions, of and than, or a difference',
  ],
  'not-rankable': (p) => [
    `${asIs(p.found)} cannot be ranked with these`,
    'Only totals, or totals in frames, all of one kind, have an order',
  ],
  'claim-fails': (p) => [
    `the data do not support ${found(p)} (${asIs(p.expected)}): ${describeEvidence(p.evidence)}${p.causes?.length ? `. Since the last record: ${because(p)}` : ''}`,
    'Change the sentence to what the data say, or find out why they say it',
  ],
  'claim-words': (p) => [
    `the words of this claim say ${found(p)}, and it asserts ${asIs(p.expected)}`,
    'Let the words and the property say the same',
  ],
  'claim-turned': (p) => [
    `the sentence around “${asIs(p.expected)}” may turn it round: ${found(p)}`,
    'The data support the words of a claim, not their opposite: say them straight, or let the claim assert the opposite; where this word is about something else, give it a sentence or a clause of its own',
  ],
  'unknown-page': (p) => [`there is no page ${found(p)} on this site`],

  'bad-record': (p) => [`expected ${asIs(p.expected)}, found ${found(p)}`, AS_RECORDED],
  'bad-count': (p) => [`expected a whole number, found ${found(p)}`, AS_RECORDED],
  'repeated-record': (p) => [`${found(p)} stands here a second time`, 'Keep one of the two lines, then record again'],
  'merge-conflict': () => [
    'a merge is not finished: the marks of version control begin here',
    'The file follows from the entries: let it be written again, npm run record -- --join',
  ],
  'bad-digest': (p) => [`expected a SHA-256 digest, 64 hexadecimal digits, found ${found(p)}`, AS_RECORDED],
  'bad-cause': () => ['this is not one cause', AS_RECORDED],
  'entry-half': (p) => [`has no ${asIs(p.expected)} beside it, and the two are one entry`, TAKE_BACK],
  'earlier-ledger': () => [
    'was recorded in the form of before, in which nobody can see whether it was changed by hand',
    'Record once, and it is brought into the present form; its entries stay: npm run record -- --reason "…" --date YYYY-MM-DD',
  ],
  'entry-edited': (p) => [`it and ${asIs(p.expected)} beside it do not say what was recorded`, TAKE_BACK],
  'entry-lost': (p) => [`follows an entry that is not here (${asIs(p.found)})`, TAKE_BACK],
  'entry-fork': (p) => [
    `follows the same entry as ${asIs(p.found)} does, as where two branches both recorded`,
    'Join them: npm run record -- --join',
  ],
  'entry-dated': (p) => [`is of ${asIs(p.found)}, and the entry before it of ${asIs(p.expected)}`, TAKE_BACK],
  'entry-last': (p) => [
    `the last entry is not the one that was recorded last (${asIs(p.found?.slice(0, 12))})`,
    TAKE_BACK,
  ],
  'entry-unfounded': () => ['what it says to have changed was not so by the entries before it', TAKE_BACK],
  'row-missing': (p) => [`is missing here; by the entries it is ${quote(p.expected ?? '')}`, WRITE_AGAIN],
  'row-edited': (p) => [`is ${found(p)} here, and by the entries ${quote(p.expected ?? '')}`, WRITE_AGAIN],
  'row-unrecorded': (p) => [`is ${found(p)} here, and in no entry`, WRITE_AGAIN],
  'join-unrecorded': (p) => [
    `is as neither branch recorded it (${asIs(p.found?.slice(0, 12))})`,
    'Take it back to what one of them recorded, join, and record its change after that',
  ],
  'moved-figure': (p) => [`was ${found(p)}, is now ${quote(p.expected ?? '')}: ${because(p)}`, RECORD],
  'gone-figure': (p) => [`was ${found(p)}, is no longer published: ${because(p)}`, RECORD],
  'renamed-record': (p) => [`is called ${asIs(p.expected)} now, so its address is another`, RECORD],
  'typed-quantity': (p) => [
    `${found(p)} was typed by hand, so it stays as it is when the data move`,
    'Ask for it with <Figure>, bind it to data with <Claim>, or mark it as meant: <Quoted from="…"> for a number from elsewhere, <Setting> for one that was chosen or planned; titles and captions do without it',
  ],
  'unaccounted-number': (p) => [
    `this page says ${found(p)} and nothing accounts for it, in “${asIs(p.expected)}”`,
    'Every number with a unit is a figure, a raw reading, a marked setting or quotation, or a fact of the file that its mark names',
  ],
  'no-ledger': () => [
    'nothing was recorded yet, so no number can be held to what was published',
    'Record the first state: npm run record -- --reason "first publication" --date YYYY-MM-DD',
  ],

  'not-estimable': (p) => [
    `the readings of this session cannot be analysed (${asIs(p.found)})`,
    p.expected === undefined
      ? 'Check the readings against the film, and the rates in the rig, the display and the session'
      : asIs(p.expected),
  ],
  'not-compilable': (p) => [
    `${asIs(p.expected)} cannot be computed from these files (${asIs(p.found)})`,
    'Check what the session and its rig state, or take the session out',
  ],
  'table-too-large': (p) => [
    `the table that begins here has ${asIs(p.found)} cells; the limit is ${asIs(p.expected)}`,
    'Split it, or publish it as a file',
  ],

  'output-link': (p) => [
    `is a link to ${found(p)}, and a build would put a folder in its place`,
    'Remove the link, or build into another folder: npm run build -- --output DIR',
  ],
  'output-file': () => [
    'is a file, and a site is a folder',
    'Move it away, or build into another folder: npm run build -- --output DIR',
  ],
  'output-mount': () => [
    'is a mount point, which no build can replace',
    'Build into a folder inside it: npm run build -- --output DIR',
  ],
  'output-inside': (p) => [
    `lies in ${asIs(p.found)}/ or holds it, and a build replaces the whole folder`,
    'Build into another folder: npm run build -- --output DIR',
  ],
  'output-foreign': (p) => [
    `holds what no build wrote (${asIs(p.found)}), and a build replaces the whole folder`,
    'Move it away, or build into another folder: npm run build -- --output DIR',
  ],
  'in-use': (p) => [
    `another command is writing here${p.found === undefined ? '' : ` (process ${asIs(p.found)})`}`,
    'Wait until it is done, then run this again',
  ],
  'there-already': () => ['is there already, and nothing was written', 'Choose another id, or move it away'],
  'not-a-list': () => ['is not what a command of this project writes, and nothing was done with it', 'Remove it'],
  'disk-full': () => ['the disk is full, and what was there is as it was', 'Make room, then run this again'],
  'not-writable': (p) => [`cannot be written (${asIs(p.found)})`, 'Check that its permissions let you write it'],

  'no-counted-reading': () => [
    'every reading of this session is excluded',
    'Add a reading that counts, or remove the session',
  ],
};

/** Every code there is. */
export const PROBLEM_CODES = Object.keys(WORDS) as readonly ProblemCode[];

/** One error for all problems, sorted by place. */
export function problemsError(problems: readonly Problem[]): ProblemsError {
  const sorted = problems.toSorted(compareProblems);
  return new ProblemsError(sorted, describeProblems(sorted));
}

/** One problem on one line. */
export function describeProblem(problem: Problem): string {
  const where = [asIs(problem.file), problem.line, problem.column].filter((part) => part !== undefined).join(':');
  return [where, ...(problem.key === undefined ? [] : [asIs(problem.key)]), wordsOf(problem)].join('  ');
}

/** What is wrong and what to do, without the place, for whoever has it in view. */
export function wordsOf(problem: Problem): string {
  const [says, remedy] = WORDS[problem.code](problem);
  const what = `${says}${describeChoices(problem.choices)}${describeAlike(problem.alike)}.`;
  return [what, remedy && `${remedy}.`, describeNearest(problem.nearest)].filter((part) => part).join(' ');
}

/**
 * Every file with its problems, in the order given, under a line that counts them. A long list for one file is cut, and
 * says so; what many files have in common has one cause elsewhere, and is shown of the first.
 */
export function describeProblems(problems: readonly Problem[]): string {
  const byFile = Map.groupBy(problems, (problem) => problem.file);
  const alike = alikeInMany(problems);
  const shown = problems.filter((problem) => !alike.has(problem) || alike.get(problem) !== undefined);
  const blocks = [...Map.groupBy(shown, (problem) => problem.file).values()].map((inFile) => {
    const lines = inFile
      .slice(0, PROBLEMS_SHOWN_PER_FILE)
      .flatMap((problem) => [describeProblem(problem), alike.get(problem) ?? []].flat());
    const more = inFile.length - lines.length;
    return [...lines, ...(more > 0 ? [`${asIs(inFile[0]?.file)}  and ${more} more in this file.`] : [])].join('\n');
  });
  const heading = `${count(problems.length, 'problem')} in ${count(byFile.size, 'file')}:`;
  return [heading, ...blocks].join('\n\n');
}

/** Of such problems that more than a few files have in common, the first with a line that names others, and those others. */
function alikeInMany(problems: readonly Problem[]): ReadonlyMap<Problem, string | undefined> {
  const following = problems.filter(({ code }) => FOLLOWS_FROM_ELSEWHERE.has(code));
  const groups = Map.groupBy(following, ({ code, key, found, expected, choices }) =>
    JSON.stringify([code, key, found, expected, choices]),
  );
  return new Map(
    [...groups.values()].flatMap((group) => {
      const [first, ...others] = group;
      const files = [...new Set(others.map(({ file }) => file))].filter((file) => file !== first?.file);
      if (first === undefined || files.length < ALIKE_SHOWN) return [];
      const named = files.slice(0, ALIKE_SHOWN).map(asIs).join(', ');
      const more = files.length - ALIKE_SHOWN;
      const line = `  and the same in ${named}${more > 0 ? ` and ${count(more, 'further file')}` : ''}.`;
      return [[first, line] as const, ...others.map((other) => [other, undefined] as const)];
    }),
  );
}

function describeAlike(alike = 0): string {
  return alike === 0 ? '' : `; so ${alike === 1 ? 'has' : 'have'} ${count(alike, 'further row')}`;
}

function describeChoices(choices: readonly string[] | undefined): string {
  if (choices === undefined) return '';
  if (choices.length === 0) return '; there are none';
  // one more takes no more room than saying so
  const cut = choices.length > CHOICES_SHOWN + 1 ? CHOICES_SHOWN : choices.length;
  const shown = choices.slice(0, cut).map(escapeControls).join(', ');
  const more = choices.length - cut;
  return `; expected ${choices.length === 1 ? '' : 'one of '}${shown}${more > 0 ? ` and ${more} more` : ''}`;
}

function describeNearest(nearest: readonly string[] | undefined): string | undefined {
  if (nearest === undefined || nearest.length === 0) return undefined;
  const names = nearest.map(escapeControls);
  const last = names.pop();
  return `Did you mean ${names.length > 0 ? `${names.join(', ')} or ` : ''}${last}?`;
}

function remedyOfNumber({ found: text = '' }: Problem): string {
  if (text !== text.trim()) return 'Remove the blanks around it';
  if (text.includes(',')) return 'Write decimals with a point, not a comma';
  return 'Where there is no value, leave the cell empty and say under exclude why';
}

function describeEvidence(evidence: ClaimEvidence | undefined): string {
  if (evidence === undefined) return '';
  const { figure, text, interval } = evidence;
  return `${asIs(figure)} is ${[asIs(text), interval].filter(Boolean).join(', ')}; ${describeMiss(evidence.miss)}`;
}

function describeMiss(miss: ClaimEvidence['miss']): string {
  switch (miss.kind) {
    case 'too-low':
      return miss.ofInterval ? `its interval begins ${miss.off} too low` : `${miss.off} too low`;
    case 'too-high':
      return miss.ofInterval ? `its interval ends ${miss.off} too high` : `${miss.off} too high`;
    case 'no-interval':
      return 'it has no interval to judge by';
    case 'other-verdict':
      return 'that is another verdict';
    case 'not-shown':
      return `the adjusted p is ${miss.p}, and must be at most 0.05`;
    case 'beaten':
      return `${asIs(miss.rival)} is beyond it by ${miss.off}`;
    case 'tied':
      return `it cannot be told from ${asIs(miss.rivals.join(', '))}`;
  }
}

function because({ causes = [] }: Problem): string {
  return asIs(describeCauses(causes));
}

function nameShape(shape = ''): string {
  return SHAPES[shape] ?? asIs(shape);
}

function decimalsOf({ found: text = '' }: Problem): number {
  return text.split('.')[1]?.length ?? 0;
}

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

function quote(text: string): string {
  const cut = text.length > FOUND_SHOWN ? `${text.slice(0, FOUND_SHOWN)}…` : text;
  return escapeControls(JSON.stringify(cut));
}

/** Control and direction-changing characters would let a file rewrite what the terminal shows. */
export function escapeControls(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (char) => `\\u{${(char.codePointAt(0) ?? 0).toString(16)}}`);
}
