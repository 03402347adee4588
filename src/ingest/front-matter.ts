import matter from 'gray-matter';
import { checkTables } from './check-tables.ts';
import type { Source } from './source.ts';
import { parseYaml, type YamlFile } from './yaml.ts';

export interface FrontMatter extends YamlFile {
  /** What follows the front matter, without blank lines around it. */
  readonly body: string;
}

/** Far more than any record states; gray-matter takes time that grows with the square of it. */
const LONGEST_BLOCK = 32 * 1024;
const OPEN = /^---[ \t]*\n/;
// gray-matter ends the block at the first line that merely starts with '---'
const BLOCK = /^---[ \t]*\n(?:[\s\S]*?\n)??---([^\n]*)(?:\n|$)/;

/**
 * Parses a file that opens with YAML front matter. Undefined, with every mistake reported, when it does not.
 *
 * gray-matter picks an engine by the word after the opening dashes, and some of its engines run code; so the
 * opening line is judged before gray-matter sees the text, and every engine but YAML is replaced by a refusal.
 */
export function parseFrontMatter({ bytes, report }: Source): FrontMatter | undefined {
  const text = new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n');
  if (!OPEN.test(text)) {
    const opening = text.slice(0, text.indexOf('\n') < 0 ? undefined : text.indexOf('\n'));
    const language = /^---[ \t]*([^\s-].*)$/.exec(opening)?.[1];
    if (language === undefined) report({ code: 'no-front-matter', line: 1, found: opening });
    else
      report({
        code: 'front-matter-language',
        line: 1,
        column: opening.indexOf(language) + 1,
        found: language.trimEnd(),
      });
    return undefined;
  }
  const block = BLOCK.exec(text);
  if (!block) {
    report({ code: 'front-matter-unclosed', line: 1 });
    return undefined;
  }
  if (block[0].length > LONGEST_BLOCK) {
    report({
      code: 'front-matter-too-long',
      line: 1,
      found: `${Math.ceil(block[0].length / 1024)} KiB`,
      expected: `${LONGEST_BLOCK / 1024} KiB`,
    });
    return undefined;
  }
  if ((block[1] ?? '').trim() !== '') {
    const line = block[0].replace(/\n$/, '').split('\n').length;
    report({ code: 'front-matter-close', line, found: `---${block[1] ?? ''}` });
    return undefined;
  }
  let yaml: YamlFile | undefined;
  const engine = (input: string): object => {
    yaml = parseYaml(input, report);
    return {};
  };
  const { isEmpty } = matter(block[0], {
    language: 'yaml',
    engines: {
      yaml: { parse: engine, stringify: refuse },
      json: { parse: refuse, stringify: refuse },
      javascript: { parse: refuse, stringify: refuse },
    },
  }) as { isEmpty?: boolean };
  if (isEmpty === true) engine('');
  checkTables(text.slice(block[0].length), block[0].split('\n').length, report);
  return (
    yaml && {
      ...yaml,
      body: text
        .slice(block[0].length)
        .replace(/^(?:[ \t]*\n)+/, '')
        .trimEnd(),
    }
  );
}

function refuse(): never {
  throw new Error('only YAML front matter is parsed');
}
