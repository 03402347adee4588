import { z } from 'zod';
import type { Problem, ProblemCode } from '../model/problem.ts';
import { nearest } from './nearest.ts';
import type { Report } from './source.ts';
import type { Written, YamlFile } from './yaml.ts';

/** Shapes by zod's names for them; the words are in problem-text.ts. */
const SHAPES: Readonly<Record<string, string>> = {
  string: 'text',
  object: 'mapping',
  record: 'mapping',
  array: 'list',
};

/** The typed value; undefined, with every mistake reported at its place, when the schema does not fit. */
export function checkSchema<T>(yaml: YamlFile, schema: z.ZodType<T>, report: Report): T | undefined {
  const result = schema.safeParse(yaml.value ?? {});
  if (result.success) return result.data;
  for (const issue of result.error.issues) reportIssue(issue, yaml, schema, report);
  return undefined;
}

/** Dotted path of a key, list positions counted from 1: `source-timer.refresh`, `links.2`. */
export function keyName(path: readonly PropertyKey[]): string {
  return path.map((step) => (typeof step === 'number' ? String(step + 1) : String(step))).join('.');
}

function reportIssue(issue: z.core.$ZodIssue, yaml: YamlFile, schema: z.ZodType, report: Report): void {
  const { path } = issue;
  if (issue.code === 'unrecognized_keys') {
    const choices = keysAt(schema, path);
    for (const key of issue.keys) {
      const here = [...path, key];
      report({
        code: 'unknown-key',
        ...yaml.locateKey(here),
        key: keyName(here),
        found: key,
        choices,
        nearest: nearest(key, choices),
      });
    }
    return;
  }
  const value = valueAt(yaml.value, path);
  const where = path.length > 0 ? { key: keyName(path) } : {};
  if (value === undefined) {
    const parent = path.slice(0, -1);
    report({ code: 'missing-key', ...where, ...(parent.length > 0 ? yaml.locateKey(parent) : { line: 1 }) });
  } else if (value === null) report({ code: 'empty-value', ...where, ...yaml.locateKey(path) });
  else report({ ...describeIssue(issue, value), ...where, ...yaml.locate(path) });
}

function describeIssue(issue: z.core.$ZodIssue, value: Exclude<Written, null>): Omit<Problem, 'file'> {
  const shape = typeof value === 'string' ? 'text' : Array.isArray(value) ? 'list' : 'mapping';
  const found = typeof value === 'string' ? value : shape;
  if (issue.code === 'custom') {
    const { problem, expected } = issue.params as { readonly problem: ProblemCode; readonly expected?: string };
    return { code: problem, found, ...(expected === undefined ? {} : { expected }) };
  }
  if (issue.code === 'invalid_value') {
    const choices = issue.values.map(String);
    return { code: 'bad-choice', found, choices, nearest: nearest(found, choices) };
  }
  if (issue.code === 'too_small') return { code: 'empty-value' };
  const expected = issue.code === 'invalid_type' ? (SHAPES[issue.expected] ?? issue.expected) : issue.message;
  return { code: 'wrong-shape', expected, found: shape };
}

/** The keys that a schema knows at this path. */
function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  let at: unknown = unwrap(schema);
  for (const step of path) {
    if (at instanceof z.ZodObject) at = unwrap(at.shape[String(step)]);
    else if (at instanceof z.ZodArray) at = unwrap(at.element);
  }
  return at instanceof z.ZodObject ? Object.keys(at.shape) : [];
}

/** The schema of what is written, under optional wrappers and transforms. */
function unwrap(schema: unknown): unknown {
  if (schema instanceof z.ZodOptional) return unwrap(schema.unwrap());
  if (schema instanceof z.ZodPipe) return unwrap(schema.in instanceof z.ZodTransform ? schema.out : schema.in);
  return schema;
}

function valueAt(value: Written, path: readonly PropertyKey[]): Written | undefined {
  let at: Written | undefined = value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null) return undefined;
    at = (at as Readonly<Record<PropertyKey, Written>>)[step];
  }
  return at;
}
