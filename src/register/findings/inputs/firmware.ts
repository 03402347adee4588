/** Versions of firmware that one body cannot have had as they are written. */
import { compareText } from '../../../model/compare-text.ts';
import type { Bench, Session } from '../../../model/bench.ts';
import type { FoundOfSession } from '../rule.ts';

/** What the sessions of a body say of its firmware, set side by side. */
export function firmwareFindings(bench: Bench): readonly FoundOfSession[] {
  return [...spellings(bench), ...downgrades(bench), ...notStated(bench)];
}

/** `1.4` beside `1.40`, `v1.40`, `1,40`, `l.40`: one version written in two ways is published as two. */
function spellings({ sessions }: Bench): readonly FoundOfSession[] {
  const byVersion = new Map<string, Session>();
  return sessions.flatMap((session) => {
    if (session.firmware === undefined) return [];
    const key = `${session.body} ${plain(session.firmware)}`;
    const first = byVersion.get(key) ?? session;
    byVersion.set(key, first);
    if (first.firmware === session.firmware) return [];
    return [
      {
        rule: 'firmware-spelling',
        severity: 'warning' as const,
        session: session.id,
        message: `Firmware ${session.firmware} here, and ${first.firmware} in ${first.file.path}: they are published as two versions.`,
        hint: 'If it is one version, write it in one way.',
      },
    ];
  });
}

/**
 * Firmware seldom goes back: a lower version on a later day is a mistyped version or date more often than a downgrade.
 */
function downgrades({ sessions }: Bench): readonly FoundOfSession[] {
  return [...Map.groupBy(sessions, ({ body }) => body).values()].flatMap((ofBody) => {
    const stating = ofBody.filter(({ firmware }) => firmware !== undefined);
    const versions = [...Map.groupBy(stating, ({ firmware = '' }) => firmware)].map(([firmware, own]) => ({
      version: versionIn(firmware),
      own: own.toSorted((a, b) => compareText(a.date, b.date)),
    }));
    return versions.flatMap((lower) => {
      const higher = versions.find(
        (other) => isLower(lower.version, other.version) && (other.own[0]?.date ?? '') < (lower.own.at(-1)?.date ?? ''),
      );
      if (higher === undefined) return [];
      // Where few sessions have one of the two, those are in doubt.
      const [session, other] =
        higher.own.length <= lower.own.length ? [higher.own[0], lower.own.at(-1)] : [lower.own.at(-1), higher.own[0]];
      if (session === undefined || other === undefined) return [];
      const [of, against] = [session, other].map(({ firmware = '', date }) => `firmware ${firmware} on ${date}`);
      return [
        {
          rule: 'firmware-went-back',
          severity: 'caution' as const,
          session: session.id,
          message: `It states ${of}, and ${other.file.path} ${against}: by these the firmware went back.`,
          hint: 'Check version and date; if it was put back to an earlier version, say so in the notes.',
        },
      ];
    });
  });
}

/**
 * Without a firmware a session is of a configuration of its own, and takes no part in laws and repeats of the others.
 */
function notStated({ sessions }: Bench): readonly FoundOfSession[] {
  return sessions.flatMap((session) => {
    const ofBody = sessions.filter(({ body }) => body === session.body);
    const stating = ofBody.filter(({ firmware }) => firmware !== undefined).length;
    if (session.firmware !== undefined || stating === 0) return [];
    return [
      {
        rule: 'firmware-not-stated',
        severity: 'caution' as const,
        session: session.id,
        message: `${session.file.path} states no firmware, as ${stating} of ${ofBody.length} sessions of its body do, so it is compared with none of them as one configuration.`,
        hint: 'State it if it is known.',
      },
    ];
  });
}

/** Lower part by part (1.9 before 1.10) and as a decimal (1.40 before 1.5): makers count in both ways. */
function isLower(a: string, b: string): boolean {
  const [parts, others] = [a, b].map((version) => version.split('.').map(Number)) as [number[], number[]];
  const differing = parts.findIndex((part, at) => part !== (others[at] ?? 0));
  const byParts = differing < 0 ? parts.length < others.length : (parts[differing] ?? 0) < (others[differing] ?? 0);
  return byParts && Number.parseFloat(a) <= Number.parseFloat(b);
}

/** Letters that are taken for the digits that they look like. */
const LOOK_LIKE: readonly [RegExp, string][] = [
  [/[OoОо](?=[\d.])|(?<=[\d.])[OoОо]/g, '0'],
  [/[lI|](?=[\d.])|(?<=[\d.])[lI|]/g, '1'],
  [/,(?=\d)/g, '.'],
];

/** The digits and points of a version, in whatever letters they were typed; the text itself where there are none. */
function versionIn(firmware: string): string {
  const written = LOOK_LIKE.reduce((text, [letter, digit]) => text.replace(letter, digit), firmware.normalize('NFKC'));
  return /\d+(?:\.\d+)*/.exec(written)?.[0] ?? firmware;
}

/** The same for all spellings of one version. */
function plain(firmware: string): string {
  return versionIn(firmware)
    .split('.')
    .map((part) => part.replace(/^0+(?=\d)/, ''))
    .join('.')
    .replace(/(?<=\.\d+?)0+$/, '');
}
