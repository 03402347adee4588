import type { Setting, SettingKind, SettingLevel } from '../model/bench.ts';
import { parseRate, rateHz, rateKey } from '../model/rate.ts';
import { checkSchema, keyName } from './check-schema.ts';
import { settingsSchema } from './schemas/settings.ts';
import { tally, type Report, type Source } from './source.ts';
import { parseYaml, type YamlFile } from './yaml.ts';

const DECIMAL = /^-?\d{1,9}(?:\.\d{1,9})?$/;

/** Parses `data/settings.yaml`; undefined, with the mistakes reported, when it does not fit. */
export function parseSettings({ bytes, report: reportHere }: Source): readonly Setting[] | undefined {
  const { report, count } = tally(reportHere);
  const yaml = parseYaml(new TextDecoder().decode(bytes).replace(/\r\n?/g, '\n'), report);
  const declared = yaml && checkSchema(yaml, settingsSchema, report);
  if (!yaml || !declared) return undefined;
  const names = new Set<string>();
  declared.forEach(({ name, kind, levels }, index) => {
    if (names.has(name)) report({ code: 'duplicate-setting', ...at(yaml, [index, 'name']), found: name });
    names.add(name);
    if (kind === 'rate' && name !== 'rate')
      report({ code: 'second-rate-setting', ...at(yaml, [index, 'kind']), found: name });
    if (isReserved(name)) report({ code: 'reserved-name', ...at(yaml, [index, 'name']), found: name });
    checkLevels(
      levels.map((level) => level.name),
      kind,
      [index, 'levels'],
      yaml,
      report,
    );
  });
  if (!declared.some(({ name, kind }) => name === 'rate' && kind === 'rate'))
    report({ code: 'no-rate-setting', line: 1 });
  if (count() > 0) return undefined;
  return declared.map(({ name, label, kind, levels }) => ({
    id: name,
    label,
    kind,
    levels: levels.map((level): SettingLevel => ({ id: level.name, label: level.label })),
  }));
}

/** The level that an author's text means: the same text, or for rates an equal rate (23.98 is 23.976). */
export function findLevel({ kind, levels }: Setting, text: string): SettingLevel | undefined {
  const identity = identityOf(kind, text);
  return levels.find((level) => identityOf(kind, level.id) === identity);
}

function checkLevels(
  levels: readonly string[],
  kind: SettingKind,
  path: readonly PropertyKey[],
  yaml: YamlFile,
  report: Report,
): void {
  const seen = new Map<string, string>();
  levels.forEach((found, index) => {
    const here = at(yaml, [...path, index]);
    if (kind === 'numeric' && !DECIMAL.test(found)) return report({ code: 'bad-level-number', ...here, found });
    if (kind === 'rate' && parseRate(found) === undefined) return report({ code: 'bad-level-rate', ...here, found });
    const rate = kind === 'rate' ? parseRate(found) : undefined;
    if (rate && (rateHz(rate) < 1 || rateHz(rate) > 10_000))
      return report({ code: 'out-of-range', ...here, found, expected: '1 to 10000 per second' });
    // 1.0 beside 1, and -0 beside 0, would be two configurations of one number
    const identity = kind === 'numeric' ? String(Number(found) + 0) : identityOf(kind, found);
    const first = seen.get(identity);
    if (first !== undefined) report({ code: 'duplicate-level', ...here, found, expected: first });
    seen.set(identity, first ?? found);
  });
}

/** Names that every object of the language has, so that looking one up would find something that nobody wrote. */
function isReserved(name: string): boolean {
  return name in Object.prototype;
}

function identityOf(kind: SettingKind, text: string): string {
  const rate = kind === 'rate' ? parseRate(text) : undefined;
  return rate ? rateKey(rate) : text;
}

function at(yaml: YamlFile, path: readonly PropertyKey[]) {
  return { ...yaml.locate(path), key: keyName(path) };
}
