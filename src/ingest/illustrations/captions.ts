import type { Report } from '../source.ts';

/** `00:01.000 --> 00:04.000`, with hours or without, and settings after it. */
const TIMING = /^(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3}[ \t]+-->[ \t]+(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3}(?:[ \t].*)?$/;
const NO_WORDS = /^(?:NOTE|STYLE|REGION)(?:[ \t]|$)/;

/**
 * The words of captions, cue by cue, without their tags; undefined, with the mistake reported, where the text is no
 * WebVTT (W3C WebVTT, 4.1) or has no cue.
 */
export function wordsOfCaptions(text: string, report: Report): string | undefined {
  const [head = '', ...blocks] = text.replace(/\r\n?/g, '\n').split(/\n{2,}/);
  if (!/^WEBVTT(?:[ \t\n]|$)/.test(head)) {
    report({ code: 'bad-captions', line: 1, expected: 'WEBVTT' });
    return undefined;
  }
  let line = 1 + head.split('\n').length;
  const cues: string[] = [];
  for (const block of blocks) {
    const lines = block.split('\n').filter((each) => each !== '');
    const timing = lines.findIndex((each) => each.includes('-->'));
    if (timing >= 0 && !TIMING.test(lines[timing] ?? '')) {
      report({ code: 'bad-captions', line: line + 1 + timing, found: lines[timing] ?? '' });
      return undefined;
    }
    if (timing >= 0 && !NO_WORDS.test(lines[0] ?? '')) cues.push(wordsOf(lines.slice(timing + 1)));
    line += block.split('\n').length + 1;
  }
  const words = cues.filter((cue) => cue !== '').join('\n');
  if (words !== '') return words;
  report({ code: 'bad-captions', line: 1 });
  return undefined;
}

/** Of one cue, on one line; the names of speakers stay: `<v Ada>Now.` is `Ada: Now.` */
function wordsOf(lines: readonly string[]): string {
  return lines
    .join(' ')
    .replace(/<v(?:\.[^ >]*)?[ \t]+([^>]+)>/g, (_tag, speaker: string) => `${speaker.trim()}: `)
    .replace(/<[^>]*>/g, '')
    .replace(/&(amp|lt|gt|nbsp|lrm|rlm);/g, (_all, name: string) => ENTITIES[name] ?? '')
    .replace(/\s+/g, ' ')
    .trim();
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', nbsp: ' ' };
