/**
 * Sessions whose names say something else than their files: names are the author’s, and mostly say what was measured.
 */
import type { Bench, Session, Setting } from '../../../model/bench.ts';
import type { FoundOfSession } from '../rule.ts';

/**
 * A level in a name counts where so many sessions for one that does not, and so many at least, are called by their own.
 */
const KEPT_BY = 3;

export function namedOtherwise(bench: Bench): readonly FoundOfSession[] {
  return [...namedForAnotherBody(bench), ...bench.settings.flatMap((setting) => namedForAnotherLevel(setting, bench))];
}

function namedForAnotherBody({ bodies, sessions }: Bench): readonly FoundOfSession[] {
  const words = new Map(bodies.map(({ id }) => [id, id.split('-')] as const));
  const isOwnWord = (word: string, body: string): boolean =>
    /[a-z]{3}/.test(word) && bodies.every(({ id }) => id === body || !words.get(id)?.includes(word));
  return sessions.flatMap((session) => {
    const named = session.id.split('-');
    const called = bodies.filter(({ id }) =>
      named.some((word) => words.get(id)?.includes(word) === true && isOwnWord(word, id)),
    );
    const [other] = called;
    if (other === undefined || called.some(({ id }) => id === session.body)) return [];
    return [
      {
        rule: 'named-for-another-body',
        severity: 'caution' as const,
        session: session.id,
        message: `Its name says ${other.name}, and ${session.file.path} states the body ${session.body}.`,
        hint: 'Check the body; if it is right, give the session another name: npm run rename.',
      },
    ];
  });
}

function namedForAnotherLevel(setting: Setting, { settings, sessions }: Bench): readonly FoundOfSession[] {
  const others = settings.filter((other) => other !== setting);
  const isOwnLevel = ({ id }: Setting['levels'][number]): boolean =>
    others.every(({ levels }) => !levels.some((level) => level.id === id));
  const levels = setting.levels.filter(isOwnLevel);
  const called = sessions.flatMap((session) => {
    const words = wordsOf(session);
    const named = levels.filter(({ id }) => words.includes(id.toLowerCase()));
    return named.length === 0 ? [] : [{ session, named, stated: session.settings[setting.id] }];
  });
  const odd = called.filter(({ named, stated }) => stated !== undefined && !named.some(({ id }) => id === stated));
  if (called.length - odd.length < KEPT_BY * Math.max(1, odd.length)) return [];
  return odd.map(({ session, named, stated }) => ({
    rule: 'named-for-another-level',
    severity: 'caution' as const,
    session: session.id,
    message: `Its name says ${named.map(({ label }) => label).join(', ')}, as those of ${called.length - odd.length} other sessions say theirs, and ${session.file.path} states ${setting.id}: ${stated}.`,
    hint: 'Check the setting; if it is right, give the session another name: npm run rename.',
  }));
}

/** `vennick-uhd25-a` → vennick, uhd25, uhd, 25, a */
function wordsOf({ id }: Session): readonly string[] {
  return id.split('-').flatMap((word) => [word, ...(word.match(/[a-z]+|\d+/g) ?? [])]);
}
