import type { YAMLParseError } from 'yaml';
import type { Problem } from '../model/problem.ts';
import type { YamlMistake } from '../model/yaml-mistake.ts';

interface Placed {
  readonly offset: number;
  readonly problem: Pick<Problem, 'code' | 'found' | 'expected'>;
}

/** What an author did, from what the parser stumbled over: where it is, and which mistake it most likely was. */
export function yamlMistake({ code, message, pos: [at, end] }: YAMLParseError, text: string): Placed {
  const placed = (mistake: YamlMistake, offset: number, found: string): Placed => ({
    offset,
    problem: { code: 'bad-yaml', found: found.trim(), expected: mistake },
  });
  const line = lineAt(text, at);
  const here = (mistake: YamlMistake): Placed => placed(mistake, line.start + line.indent, line.text);
  const char = text.slice(at, at + 1);
  switch (code) {
    case 'TAB_AS_INDENT':
      return here('tab');
    case 'BAD_SCALAR_START':
      return placed('first-character', at, char);
    case 'BAD_DQ_ESCAPE':
      return placed('escape', at, text.slice(at, at + 2));
    case 'BLOCK_IN_FLOW':
      return here('no-comma');
    case 'BLOCK_AS_IMPLICIT_KEY':
      return /\S:\s.*:(?:\s|$)/.test(line.text) ? here('colon') : afterValue(text, at, placed);
    case 'MISSING_CHAR': {
      const quote = /closing (["'])/.exec(message)?.[1];
      if (quote !== undefined) {
        const opens = text.lastIndexOf(quote, Math.max(0, at - 1));
        return placed('open-quote', opens, lineAt(text, opens).text);
      }
      if (/directives/.test(message)) return placed('first-character', at, char);
      if (/end with/.test(message)) return openBracket(text, at, placed);
      return withoutColon(text, at, end, placed);
    }
    case 'MULTILINE_IMPLICIT_KEY':
      return withoutColon(text, at, end, placed);
    case 'BAD_INDENT':
      return /end with/.test(message) ? openBracket(text, at, placed) : here('indent');
    case 'UNEXPECTED_TOKEN':
      if (/block-seq-ind/.test(message)) return here('dash');
      if (/flow-(?:map|seq)-end/.test(message)) return placed('closing-bracket', at, char);
      if (/Unexpected , in flow/.test(message)) return placed('comma', at, line.text);
      if (/node end/.test(message) && /["']/.test(line.text)) return placed('after-quote', at, line.text);
      return here('other');
    default:
      return here('other');
  }
}

type Place = (mistake: YamlMistake, offset: number, found: string) => Placed;

/** `rate:24` has no blank after the colon; `rate = 24` or a stray line has no colon at all. */
function withoutColon(text: string, from: number, to: number, placed: Place): Placed {
  const lines = text.slice(lineAt(text, from).start, to).split('\n');
  let offset = lineAt(text, from).start;
  for (const line of lines) {
    if (/^\s*[\w-]+:\S/.test(line)) return placed('no-blank', offset, line);
    if (line.trim() !== '' && !/:(?:\s|$)/.test(line)) return placed('no-colon', offset, line);
    offset += line.length + 1;
  }
  const { start, text: line } = lineAt(text, from);
  return placed('no-colon', start, line);
}

/** A line with a value, and under it one that is indented as if it were its part. */
function afterValue(text: string, at: number, placed: Place): Placed {
  const { start, text: line } = lineAt(text, at);
  const next = start + line.length + 1;
  return placed('under-value', Math.min(next, text.length), lineAt(text, Math.min(next, text.length)).text || line);
}

function openBracket(text: string, at: number, placed: Place): Placed {
  const opens = Math.max(text.lastIndexOf('{', at - 1), text.lastIndexOf('[', at - 1));
  return placed('open-bracket', Math.max(0, opens), text.slice(opens, opens + 1));
}

function lineAt(
  text: string,
  offset: number,
): { readonly start: number; readonly text: string; readonly indent: number } {
  const start = text.lastIndexOf('\n', Math.max(0, offset - 1)) + 1;
  const end = text.indexOf('\n', start);
  const line = text.slice(start, end < 0 ? undefined : end);
  return { start, text: line, indent: line.length - line.trimStart().length };
}
