import matter from 'gray-matter';
import { afterEach, describe, expect, it } from 'vitest';
import type { Problem } from '../../src/model/problem.ts';
import { parseFrontMatter, type FrontMatter } from '../../src/ingest/front-matter.ts';

const ran = globalThis as { frontMatterRan?: unknown };
afterEach(() => {
  delete ran.frontMatterRan;
});

function parse(text: string): { front: FrontMatter | undefined; problems: readonly Omit<Problem, 'file'>[] } {
  const problems: Omit<Problem, 'file'>[] = [];
  const file = { path: 'x.md', sha256: '', bytes: text.length };
  const front = parseFrontMatter({
    file,
    bytes: new TextEncoder().encode(text),
    report: (problem) => problems.push(problem),
  });
  return { front, problems };
}

describe('executable front matter', () => {
  const languages = ['js', 'javascript', 'JS', 'JavaScript'];
  const source = (language: string): string => `---${language}\n{ name: globalThis.frontMatterRan = 'yes' }\n---\n`;

  it.each(languages)('---%s runs where nothing refuses it, so that the next check can fail', (language) => {
    matter(source(language), {});
    expect(ran.frontMatterRan).toBe('yes');
  });

  it.each(languages)('---%s is refused without being run', (language) => {
    expect(parse(source(language))).toEqual({
      front: undefined,
      problems: [{ code: 'front-matter-language', line: 1, column: 4, found: language }],
    });
    expect(ran.frontMatterRan).toBeUndefined();
  });
});

it('the body follows the closing line, without the blank lines around it', () => {
  expect(parse('---\na: b\n---\n\n\n    code\n\n---\n\n').front?.body).toBe('    code\n\n---');
});

it('front matter of comments is empty', () => {
  expect(parse('---\n# nothing yet\n---\nbody\n').front).toMatchObject({ value: null, body: 'body' });
});

it('places are lines and columns of the file, also in CRLF', () => {
  const { front } = parse('---\r\n# comment\r\nrig:\r\n  name: [a, b]\r\n---\r\n');
  expect(front?.locate(['rig', 'name', 1])).toEqual({ line: 4, column: 13 });
  expect(front?.locateKey(['rig', 'name'])).toEqual({ line: 4, column: 3 });
  expect(front?.locate(['rig', 'nowhere'])).toEqual({ line: 4, column: 3 });
});
