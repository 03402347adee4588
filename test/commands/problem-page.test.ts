import { expect, it } from 'vitest';
import { renderProblemPage } from '../../src/commands/problem-page.ts';
import { problemsError } from '../../src/model/problem-text.ts';

it('shows the list of mistakes as text, whatever the author typed, at the width of a phone', () => {
  const page = renderProblemPage(
    problemsError([
      { code: 'bad-time', file: 'data/sessions/a.csv', line: 3, key: 'shown', found: '<script>alert(1)</script>' },
      { code: 'empty-file', file: 'data/bodies/b.md' },
    ]),
  );
  expect(page).toContain('<h1>2 mistakes to mend</h1>');
  expect(page).toContain('data/sessions/a.csv:3');
  expect(page).toContain('data/bodies/b.md');
  expect(page).not.toContain('<script>alert');
  expect(page).toContain('alert(1)');
  expect(page).toContain('<meta name="viewport" content="width=device-width');
});
