import {
  isAlias,
  isCollection,
  isMap,
  isNode,
  isScalar,
  isSeq,
  LineCounter,
  parseDocument,
  visit,
  Scalar,
  type Document,
  type YAMLParseError,
} from 'yaml';
import { findSteering } from './control-characters.ts';
import { tally, type Report } from './source.ts';
import { yamlMistake } from './yaml-mistake.ts';

/** YAML data with every scalar as the author wrote it; null where nothing is written. */
export type Written = string | null | readonly Written[] | { readonly [key: string]: Written };

export interface Place {
  /** 1-based, in the file. */
  readonly line: number;
  readonly column: number;
}

export interface YamlFile {
  readonly value: Written;
  /** Where the value at this path is written; where it is not, its nearest written ancestor. */
  locate(path: readonly PropertyKey[]): Place;
  /** Where the last key of this path is written. */
  locateKey(path: readonly PropertyKey[]): Place;
  /** True where the value is a number by YAML's own rules: it has no quotes around it. */
  isNumber(path: readonly PropertyKey[]): boolean;
}

type ReportAt = (offset: number, problem: Parameters<Report>[0]) => void;

/**
 * Parses YAML 1.2 (core schema). Nothing is converted: `4:2:2`, `1.40`, `on` and dates come out as written.
 * Undefined, with every mistake reported, when it is not valid, or uses anchors, aliases or tags.
 *
 * @param text may begin with the end of an opening line, so that line numbers are the file's
 */
export function parseYaml(text: string, report: Report): YamlFile | undefined {
  const lines = new LineCounter();
  const place = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const mistakes = tally(report);
  const reportAt: ReportAt = (offset, problem) => mistakes.report({ ...place(offset), ...problem });
  let doc: Document;
  try {
    doc = parseDocument(text, {
      lineCounter: lines,
      version: '1.2',
      schema: 'core',
      strict: true,
      uniqueKeys: true,
      merge: false,
      prettyErrors: false,
    });
    if (doc.errors.some(({ code }) => code === 'RESOURCE_EXHAUSTION')) {
      // where the stack ran out is the machine's business, not the author's
      report({ code: 'yaml-depth' });
      return undefined;
    }
    reportSyntax(doc.errors, text, reportAt);
    refuseMachinery(doc, reportAt);
    refuseLikeKeys(doc, reportAt);
    if (mistakes.count() > 0) return undefined;
    return { value: written(doc.contents), ...locator(doc, place) };
  } catch (error) {
    // the visitor recurses as the parser does
    if (!(error instanceof RangeError)) throw error;
    report({ code: 'yaml-depth' });
    return undefined;
  }
}

/** Every key that is written twice, and the first error of syntax: those after it mostly follow from it. */
function reportSyntax(errors: readonly YAMLParseError[], text: string, reportAt: ReportAt): void {
  for (const { pos } of errors.filter(({ code }) => code === 'DUPLICATE_KEY')) {
    reportAt(pos[0], { code: 'duplicate-key', key: /^[^\s:]*/.exec(text.slice(pos[0]))?.[0] ?? '' });
  }
  const first = errors.find(({ code }) => code !== 'DUPLICATE_KEY');
  if (first === undefined) return;
  const { offset, problem } =
    first.code === 'MULTIPLE_DOCS'
      ? { offset: first.pos[0], problem: { code: 'yaml-documents' } as const }
      : yamlMistake(first, text);
  reportAt(offset, problem);
}

/** A whole value in the quotes that word processors make of straight ones. */
const PRINTED_QUOTES = /^[“”„«»‘’‚‹›][^“”„«»‘’‚‹›]*[“”„«»‘’‚‹›]$/u;

/** Anchors, aliases, tags, quotes that are none and keys that are not text: none is needed here, and some can blow up. */
function refuseMachinery(doc: Document, reportAt: ReportAt): void {
  visit(doc, {
    Node(_key, node) {
      const offset = node.range?.[0] ?? 0;
      if (isAlias(node)) reportAt(offset, { code: 'yaml-alias', found: `*${node.source}` });
      else if (node.anchor !== undefined) reportAt(offset, { code: 'yaml-alias', found: `&${node.anchor}` });
      else if (node.tag !== undefined) reportAt(offset, { code: 'yaml-tag', found: node.tag });
      else if (isScalar(node) && node.type === Scalar.PLAIN && PRINTED_QUOTES.test(node.source ?? ''))
        reportAt(offset, { code: 'yaml-quotes', found: node.source ?? '' });
      // as bytes they are refused before; here, written as an escape
      const steering = isScalar(node) ? findSteering(String(node.value)) : undefined;
      if (steering) reportAt(offset, { code: 'control-character', found: steering.name });
    },
    Pair(_key, { key }) {
      if (isCollection(key))
        reportAt(key.range?.[0] ?? 0, {
          code: 'wrong-shape',
          expected: 'text',
          found: isMap(key) ? 'mapping' : 'list',
        });
    },
  });
}

/** Keys that are the same once written out, such as `10` and `"10"`: the parser tells them apart, and one would win. */
function refuseLikeKeys(doc: Document, reportAt: ReportAt): void {
  visit(doc, {
    Map(_key, { items }) {
      const seen = new Map<string, unknown>();
      for (const { key } of items) {
        if (!isScalar(key)) continue;
        const name = String(written(key));
        const first = seen.get(name);
        // equal ones are reported as such by the parser
        if (first !== undefined && first !== key.value)
          reportAt(key.range?.[0] ?? 0, { code: 'duplicate-key', key: name });
        seen.set(name, first ?? key.value);
      }
    },
  });
}

function written(node: unknown): Written {
  if (isMap(node)) {
    // without a prototype, a key named __proto__ is a key like any other
    const map = Object.create(null) as Record<string, Written>;
    for (const { key, value } of node.items) map[String(written(key))] = written(value);
    return map;
  }
  if (isSeq(node)) return node.items.map(written);
  if (!isScalar(node) || node.value === null) return null;
  return typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
}

function locator(doc: Document, place: (offset: number) => Place): Omit<YamlFile, 'value'> {
  const nodeAt = (path: readonly PropertyKey[]): unknown => {
    let node: unknown = doc.contents;
    for (const step of path) {
      if (isMap(node)) node = pairAt(node, step)?.value;
      else node = isSeq(node) && typeof step === 'number' ? node.items[step] : undefined;
    }
    return node;
  };
  const locate = (path: readonly PropertyKey[]): Place => {
    for (let depth = path.length; depth >= 0; depth -= 1) {
      const node = nodeAt(path.slice(0, depth));
      if (isNode(node) && node.range) return place(node.range[0]);
    }
    return { line: 1, column: 1 };
  };
  return {
    locate,
    locateKey(path) {
      const parent = nodeAt(path.slice(0, -1));
      const key = isMap(parent) ? pairAt(parent, path.at(-1))?.key : undefined;
      return isNode(key) && key.range ? place(key.range[0]) : locate(path);
    },
    isNumber(path) {
      const node = nodeAt(path);
      return isScalar(node) && typeof node.value === 'number';
    },
  };
}

function pairAt(
  map: { readonly items: readonly { readonly key: unknown; readonly value: unknown }[] },
  key: PropertyKey | undefined,
) {
  return map.items.find((pair) => isScalar(pair.key) && String(written(pair.key)) === String(key));
}
