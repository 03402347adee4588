import { describe, expect, it } from 'vitest';
import { describeToDo, type ToDo } from '../../src/commands/describe-to-do.ts';
import type { Finding } from '../../src/register/register.ts';
import type { PlannedPair } from '../../src/model/bench.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const finding = (severity: Finding['severity'], id: string, message: string): Finding => ({
  rule: 'rule',
  severity,
  where: { session: id },
  message,
  hint: 'Look again.',
});
const NOTHING: ToDo = {
  bench: { planned: [], plannedPairs: [] },
  findings: [],
  changes: { moved: [], gone: [], added: [] },
  unshown: [],
};

describe('what there is to do', () => {
  it('begins with what is gravest, and says once what concerns several sessions', () => {
    const findings = [
      finding('note', 'c', 'One clip.'),
      finding('caution', 'a', 'In step.'),
      finding('warning', 'b', 'Off the grid.'),
      finding('caution', 'b', 'In step.'),
    ];
    expect(describeToDo({ ...NOTHING, findings })).toBe(
      [
        'Warning  b\n  Off the grid.\n  → Look again.',
        'Caution  a; b\n  In step.\n  → Look again.',
        'Note     c\n  One clip.\n  → Look again.',
      ].join('\n\n'),
    );
    expect(describeToDo({ ...NOTHING, findings }, ['c'])).toBe('Note     c\n  One clip.\n  → Look again.');
  });

  it('lists what is planned, unfinished, unshown and unrecorded', () => {
    const said = describeToDo({
      ...NOTHING,
      bench: {
        ...NOTHING.bench,
        drafts: ['first'],
        plannedPairs: [{ id: 'wall-beside-screen', display: 'wall', against: 'screen' } as PlannedPair],
      },
      changes: { moved: [], gone: [], added: ['total/a', 'total/b'] },
      unshown: ['data/rigs/attic.jpg'],
    });
    expect(said).toBe(
      [
        '1 comparison of two displays to make, planned already:\n  wall-beside-screen',
        '1 draft to finish: take draft: true out of the front matter.\n  first',
        '1 picture that no text shows: show or remove.\n  data/rigs/attic.jpg',
        'Not recorded yet: 2 new. See what: npm run build. Then npm run record, with the reason.',
      ].join('\n\n'),
    );
    expect(describeToDo(NOTHING)).toBe('Nothing to do.');
  });

  it('tells of everything that the analysis of a bench noticed', () => {
    const level = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
    const { findings } = compileRegister(
      bench([session('a', level, { readings: [reading(2, 300), reading(3, 310)] })]),
    );
    expect(findings.length).toBeGreaterThan(0);
    const said = describeToDo({ ...NOTHING, findings });
    for (const { message, hint } of findings) expect(said).toContain(`${message}\n  → ${hint}`);
  });
});
