import { animatedPng, asTaken, CLIP, plain } from '../../support/pictures.ts';
import type { Files } from '../../support/bench-folder.ts';
import type { ProblemCase } from './case.ts';

const FRONT = '---\ntitle: First\nsummary: The first report.\ndate: 2026-04-12\n---\n\n';
const REPORT = 'content/reports/first.mdx';
const BESIDE = 'data/rigs/pan.mp4';

const report = (name: string, text: string, files: Files, ...says: readonly string[]): ProblemCase => ({
  name,
  changes: { [REPORT]: `${FRONT}${text}\n`, ...files },
  lines: says.map((line) => `${REPORT}:${line}`),
});

/** The clip of the rig, with all that it needs but for these changes. */
const clip = (name: string, files: Files, ...lines: readonly string[]): ProblemCase => ({
  name,
  changes: {
    'data/rigs/pit.md':
      '---\nname: Pit\nsource-timer: { name: Tablet, refresh: 120, wraps-after: 60 s }\ndisplay: screen\n---\n\n![A pan](pan.mp4)\n',
    [BESIDE]: CLIP,
    [`${BESIDE}.yaml`]: 'poster: pan.jpg\ncaptions: pan.vtt\nflashes: false\n',
    'data/rigs/pan.jpg': photograph,
    'data/rigs/pan.vtt': 'WEBVTT\n\n00:00.000 --> 00:01.000\nNow.\n',
    ...files,
  },
  lines,
});

const photograph = await asTaken(40, 30);
const drawing = await plain(40, 30).png().toBuffer();
const moving = await plain(8, 16).webp().toBuffer();
const SAVE = 'Save a photograph as JPEG or WebP, a drawing or a picture of a screen as PNG, a clip as MP4 with H.264.';
const KEEP = 'Keep it beside the text, and write its path from there: ![what it shows](picture.jpg).';
const ALONE = 'Give it a paragraph of its own; several in one paragraph stand side by side.';
const ANEW = 'Open it in a picture editor and save it anew, as JPEG, PNG, WebP or AVIF.';
const EXPORT = 'Export it as MP4 with H.264.';
const WEBVTT = 'Write captions as WebVTT: WEBVTT, a blank line, then 00:01.000 --> 00:04.000 and the words under it.';

/** The head of a PNG that claims to be larger than any picture: ISO/IEC 15948:2004, 11.2.2, with its checksum. */
const huge = await claimSize(drawing, 20_000, 10_000);

/** A box of ISO/IEC 14496-12: its length, its type and what it holds. */
function box(type: string, ...holds: readonly Uint8Array[]): Buffer {
  const content = Buffer.concat(holds);
  const head = Buffer.alloc(8);
  head.writeUInt32BE(content.length + 8);
  head.write(type, 4, 'latin1');
  return Buffer.concat([head, content]);
}

const notes = box('moov', box('trak', box('mdia', box('hdlr', Buffer.from('\0\0\0\0\0\0\0\0meta\0\0\0\0')))));

function inHevc(bytes: Buffer): Buffer {
  const other = Buffer.from(bytes);
  other.write('hvc1', other.indexOf('avc1', other.indexOf('stsd')), 'latin1');
  return other;
}

async function claimSize(png: Buffer, width: number, height: number): Promise<Buffer> {
  const { crc32 } = await import('node:zlib');
  const large = Buffer.from(png);
  large.writeUInt32BE(width, 16);
  large.writeUInt32BE(height, 20);
  large.writeUInt32BE(crc32(large.subarray(12, 29)), 29);
  return large;
}

/** Photographs and clips that cannot be shown. */
export const PICTURE_CASES: readonly ProblemCase[] = [
  report(
    'a picture of another host, one named elsewhere and one of the root of a site',
    '![a](https://example.org/a.png)\n\n![b][c]\n\n![d](/d.png)\n\n[c]: /sessions/',
    {},
    `7:1  the picture "https://example.org/a.png" would be asked of another place. ${KEEP}`,
    '9:1  this picture is named elsewhere in the text. Write its path in place: ![what it shows](picture.jpg).',
    `11:1  the picture "/d.png" would be asked of another place. ${KEEP}`,
  ),
  report(
    'a picture within a sentence, and one within a link',
    'See ![the desk](a.jpg) here.\n\n[![the desk](a.jpg)](/sessions/)',
    { 'content/reports/a.jpg': photograph },
    `7:5  the picture "a.jpg" stands within a sentence or a link. ${ALONE}`,
    `9:2  the picture "a.jpg" stands within a sentence or a link. ${ALONE}`,
  ),
  report(
    'a picture without words',
    '![](a.jpg)',
    { 'content/reports/a.jpg': photograph },
    '7:1  the picture "a.jpg" has no words for those who do not see it. Say what it shows: ![the timer beside the display](picture.jpg).',
  ),
  report(
    'a picture that is not there, beside one of nearly that name; and one outside the publication',
    '![a](Pictures/desk.jpg)\n\n![b](../../../b.jpg)\n\n![c](pictures/dsk.jpg)',
    { 'content/reports/pictures/desk.jpg': photograph },
    '7:1  "Pictures/desk.jpg" is not there. Put the file where the path leads, which counts from the folder of this file.',
    '9:1  "../../../b.jpg" stands outside the folders data and content. Keep it beside the text, or in a folder pictures there.',
    '11:1  "pictures/dsk.jpg" is not there. Did you mean desk.jpg?',
  ),
  report(
    'kinds that are not shown',
    '![a](a.svg)\n\n![b](b.mov)',
    {},
    `7:1  "a.svg" has not the ending of a photograph or clip that can be shown; expected one of .jpg, .jpeg, .png, .webp, .avif, .mp4. ${SAVE}`,
    `9:1  "b.mov" has not the ending of a photograph or clip that can be shown; expected one of .jpg, .jpeg, .png, .webp, .avif, .mp4. ${SAVE}`,
  ),
  {
    name: 'files that are no pictures, too large a picture, and two that move',
    changes: {
      [REPORT]: `${FRONT}![a](a.jpg)\n\n![b](b.png)\n\n![c](c.png)\n\n![d](d.webp)\n\n![e](e.png)\n`,
      'content/reports/a.jpg': 'Not a picture.',
      'content/reports/b.png': await plain(40, 30).gif().toBuffer(),
      'content/reports/c.png': huge,
      'content/reports/d.webp': await twoFrames(moving),
      'content/reports/e.png': animatedPng(40, 30),
    },
    lines: [
      `content/reports/a.jpg  cannot be read as a picture: it is damaged, or something else. ${ANEW}`,
      `content/reports/b.png  is a picture of a kind that cannot be shown: gif. ${ANEW}`,
      'content/reports/c.png  has 20000 × 10000 pixels, more than 100 million. Make it smaller: no page shows more than the width of a screen.',
      'content/reports/d.webp  is a picture that moves by itself, which nobody could stop. Show a still of it, or make it a clip: MP4 with H.264.',
      'content/reports/e.png  is a picture that moves by itself, which nobody could stop. Show a still of it, or make it a clip: MP4 with H.264.',
    ],
  },
  clip(
    'a clip of which nothing is said',
    { [`${BESIDE}.yaml`]: null },
    `${BESIDE}  pan.mp4.yaml is not there, which says what stands in the place of this clip and what is heard in it. Write it, with poster: pan.jpg, flashes: false (or true), and captions: pan.vtt or in-words: and what is seen and heard.`,
  ),
  clip(
    'a clip without words, whose poster is a clip',
    { [`${BESIDE}.yaml`]: 'poster: pan.mp4\nflashes: false\n' },
    `${BESIDE}.yaml:1  this clip has neither captions nor words in their place. Add captions: pan.vtt, or in-words: and what is seen and heard.`,
  ),
  clip(
    'a clip that does not say whether it flashes',
    { [`${BESIDE}.yaml`]: 'poster: pan.jpg\nin-words: A pan.\nflash: maybe\n' },
    `${BESIDE}.yaml:1  flashes  this key is missing. Add it.`,
    `${BESIDE}.yaml:3:1  flash  unknown key "flash"; expected one of poster, captions, language, in-words, flashes. Did you mean flashes?`,
  ),
  clip(
    'a poster and captions that are not there',
    { 'data/rigs/pan.jpg': null, 'data/rigs/pan.vtt': null },
    `${BESIDE}.yaml:1:9  poster  "pan.jpg" is not there. Put the file where the path leads, which counts from the folder of this file.`,
    `${BESIDE}.yaml:2:11  captions  "pan.vtt" is not there. Put the file where the path leads, which counts from the folder of this file.`,
  ),
  clip(
    'captions of another kind',
    { 'data/rigs/pan.vtt': '1\n00:00:00,000 --> 00:00:01,000\nNow.\n' },
    `data/rigs/pan.vtt:1  does not begin with WEBVTT. ${WEBVTT}`,
  ),
  clip(
    'captions with a comma in a time',
    { 'data/rigs/pan.vtt': 'WEBVTT\n\n1\n00:00,000 --> 00:01,000\nNow.\n' },
    `data/rigs/pan.vtt:4  "00:00,000 --> 00:01,000" says no time. ${WEBVTT}`,
  ),
  clip(
    'captions without words',
    { 'data/rigs/pan.vtt': 'WEBVTT\n\nNOTE to do\n' },
    `data/rigs/pan.vtt:1  has no words. ${WEBVTT}`,
  ),
  clip(
    'a clip that is none',
    { [BESIDE]: 'Not a film.' },
    `${BESIDE}  cannot be read as a film: it is damaged, or something else. ${EXPORT}`,
  ),
  clip(
    'a clip that was cut off while it was copied',
    { [BESIDE]: CLIP.subarray(0, CLIP.length - 600) },
    `${BESIDE}  cannot be read as a film: it is damaged, or something else. ${EXPORT}`,
  ),
  clip(
    'a clip that many browsers do not play',
    { [BESIDE]: inHevc(CLIP) },
    `${BESIDE}  is coded as hevc, which many browsers do not play. Export it as MP4 with H.264 and AAC.`,
  ),
  clip(
    'a clip that carries what the camera noted',
    { [BESIDE]: Buffer.concat([CLIP, notes]) },
    `${BESIDE}  carries more than picture and sound (meta), as cameras do to note places and movements. Export it again with picture and sound only.`,
  ),
];

/** The same picture twice, one after the other. */
async function twoFrames(frame: Buffer): Promise<Buffer> {
  const { default: sharp } = await import('sharp');
  const still = await sharp(frame).raw().toBuffer();
  const other = still.map((value) => 255 - value);
  return sharp(Buffer.concat([still, other]), { raw: { width: 8, height: 32, channels: 3, pageHeight: 16 } })
    .webp({ loop: 0, delay: [100, 100] })
    .toBuffer();
}
