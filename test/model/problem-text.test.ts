import { describe, expect, it } from 'vitest';
import { compareProblems, type Problem } from '../../src/model/problem.ts';
import { describeProblem, describeProblems } from '../../src/model/problem-text.ts';

const rig: Problem = {
  code: 'unknown-rig',
  file: 'data/sessions/a.md',
  line: 4,
  column: 7,
  key: 'rig',
  found: 'balcny',
  choices: ['balcony', 'pit'],
  nearest: ['balcony'],
};

describe('describeProblem', () => {
  it('gives place, key, what is wrong, what is valid and what is nearest', () => {
    expect(describeProblem(rig)).toBe(
      'data/sessions/a.md:4:7  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?',
    );
  });

  it('leaves out a place it does not know', () => {
    expect(describeProblem({ code: 'empty-file', file: 'a.csv' })).toBe(
      'a.csv  is empty. Write its contents, or remove it.',
    );
  });

  it('lists the nearest of several as a choice', () => {
    expect(describeProblem({ ...rig, nearest: ['a', 'b', 'c'] })).toContain('Did you mean a, b or c?');
  });

  it('shows twelve choices and counts the rest', () => {
    const choices = Array.from({ length: 15 }, (_, index) => `r${index + 1}`);
    expect(describeProblem({ ...rig, choices, nearest: [] })).toBe(
      'data/sessions/a.md:4:7  rig  unknown rig "balcny"; expected one of r1, r2, r3, r4, r5, r6, r7, r8, r9, r10, r11, r12 and 3 more.',
    );
  });

  it('cuts what was found after sixty characters', () => {
    expect(describeProblem({ ...rig, found: 'x'.repeat(1000) })).toContain(
      `unknown rig "${'x'.repeat(60)}…"; expected`,
    );
  });

  it('lets no control, newline or direction character through', () => {
    const nasty = 'a\u001b[31m\nb\u202ec\u200b\u2028d\u0007';
    const text = describeProblem({ ...rig, file: nasty, key: nasty, found: nasty, choices: [nasty], nearest: [nasty] });
    expect(text).not.toMatch(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u);
    expect(text).toContain('\\u{202e}');
  });
});

describe('describeProblems', () => {
  it('counts them and keeps those of a file together', () => {
    const empty: Problem = { code: 'empty-file', file: 'data/sessions/b.csv' };
    expect(describeProblems([rig, { ...rig, line: 9 }, empty])).toBe(`3 problems in 2 files:

data/sessions/a.md:4:7  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?
data/sessions/a.md:9:7  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?

data/sessions/b.csv  is empty. Write its contents, or remove it.`);
  });

  it('shows what many files have in common once, since its cause is elsewhere', () => {
    const inEach = ['a', 'b', 'c', 'd', 'e', 'f'].map((id, at) => ({
      ...rig,
      file: `data/sessions/${id}.md`,
      line: at + 4,
    }));
    expect(describeProblems(inEach)).toBe(`6 problems in 6 files:

data/sessions/a.md:4:7  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?
  and the same in data/sessions/b.md, data/sessions/c.md, data/sessions/d.md and 2 further files.`);
    // Each of these has a cause of its own.
    const empty = inEach.map(({ file }): Problem => ({ code: 'empty-file', file }));
    expect(describeProblems(empty).split('\n\n')).toHaveLength(7);
  });

  it('shows twenty of a file and counts the rest', () => {
    const lines = describeProblems(Array.from({ length: 1000 }, (_, index) => ({ ...rig, line: index + 1 }))).split(
      '\n',
    );
    expect(lines).toHaveLength(2 + 20 + 1);
    expect(lines[0]).toBe('1000 problems in 1 file:');
    expect(lines.at(-1)).toBe('data/sessions/a.md  and 980 more in this file.');
  });
});

it('problems are ordered by file, line, column, code', () => {
  const ordered: readonly Problem[] = [
    { code: 'empty-file', file: 'a' },
    { code: 'unknown-rig', file: 'a', line: 1 },
    { code: 'bad-run', file: 'a', line: 2, column: 1 },
    { code: 'bad-time', file: 'a', line: 2, column: 1 },
    { code: 'bad-run', file: 'a', line: 2, column: 9 },
    { code: 'bad-run', file: 'a', line: 10 },
    { code: 'bad-run', file: 'b', line: 1 },
  ];
  expect(ordered.toReversed().sort(compareProblems)).toEqual(ordered);
});
