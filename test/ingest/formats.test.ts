import { describe, expect, it } from 'vitest';
import { FORMAT, neededChange } from '../../src/ingest/formats.ts';

/** As the planner wrote a session before what it says became comments. */
const PLANNED = `---
# Still to be filled in: date (YYYY-MM-DD), firmware (in quotes), room, warm-up.
planned: true
body: fenn-3
rig: desk
method: two-timers
settings: { rate: 25 }
---

Session 2 of 4, in an order drawn at random. Plan: 4 clips of 5 readings, at least 2 s apart.
Switch the body off for 10 min after the session before this one, then let it warm up again. If it shows a temperature warning, stop, switch it off and let it cool.
`;
const BROUGHT_OVER = `---
# Still to be filled in: date (YYYY-MM-DD), firmware (in quotes), room, warm-up.
# Session 2 of 4, in an order drawn at random. Plan: 4 clips of 5 readings, at least 2 s apart.
# Switch the body off for 10 min after the session before this one, then let it warm up again.
# If it shows a temperature warning, stop, switch it off and let it cool.
planned: true
body: fenn-3
rig: desk
method: two-timers
settings: { rate: 25 }
---

`;
const PATH = 'data/sessions/fenn-3-25-a.md';

describe('a file of an earlier format', () => {
  it('has the words of the planner as comments, and keeps those of its author', () => {
    expect(neededChange(1, PATH, `${PLANNED}A quiet morning.\n`)).toMatchObject({
      text: `${BROUGHT_OVER}A quiet morning.\n`,
      line: 10,
      to: 2,
    });
  });

  it('keeps its line breaks', () => {
    const crlf = (text: string): string => text.replaceAll('\n', '\r\n');
    expect(neededChange(1, PATH, crlf(PLANNED))?.text).toBe(crlf(BROUGHT_OVER));
  });

  it('needs nothing once it is brought over, nor where it never held such words', () => {
    expect(neededChange(1, PATH, BROUGHT_OVER)).toBeUndefined();
    expect(neededChange(FORMAT, PATH, PLANNED)).toBeUndefined();
    expect(neededChange(1, 'data/bodies/fenn-3.md', PLANNED)).toBeUndefined();
    expect(neededChange(1, PATH, PLANNED.replace('drawn at random', 'of my own'))).toBeUndefined();
  });
});
