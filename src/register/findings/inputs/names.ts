/** What readers tell things apart by: names and labels that two of them share, and levels in no order. */
import type { Bench, Setting } from '../../../model/bench.ts';
import type { Finding } from '../../register.ts';

export function nameFindings({ bodies, displays, links, rigs, settings, settingsFile }: Bench): readonly Finding[] {
  const named = [bodies, displays, links, rigs].flatMap((list) =>
    shared(list.map(({ name, file }) => ({ name, place: file.path }))),
  );
  const { path } = settingsFile;
  return [
    ...named,
    ...shared(settings.map(({ id, label }) => ({ name: label, place: `${path} ${id}` }))),
    ...settings.flatMap(({ id, levels }) =>
      shared(levels.map((level) => ({ name: level.label, place: `${path} ${id}.${level.id}` }))),
    ),
    ...settings.filter(isOutOfOrder).map(
      ({ id, label }): Finding => ({
        rule: 'levels-out-of-order',
        severity: 'caution',
        where: { place: `${path} ${id}` },
        message: `The levels of ${label} neither rise nor fall, and pages list them, and set them against each other, in the order in which they stand.`,
        hint: 'Write them in the order in which they should be read.',
      }),
    ),
  ];
}

interface Named {
  readonly name: string;
  readonly place: string;
}

function shared(all: readonly Named[]): readonly Finding[] {
  const alike = Map.groupBy(all, ({ name }) => name.normalize('NFKC').trim().toLowerCase());
  return [...alike.values()].flatMap(([first, second]): readonly Finding[] =>
    first === undefined || second === undefined
      ? []
      : [
          {
            rule: 'same-name',
            severity: 'warning',
            where: { place: second.place },
            message: `It is called ${second.name}, as ${first.place} is: pages cannot tell the two apart.`,
            hint: 'Give one of them another name.',
          },
        ],
  );
}

function isOutOfOrder({ kind, levels }: Setting): boolean {
  if (kind !== 'numeric') return false;
  const numbers = levels.map(({ id }) => Number(id));
  const steps = numbers.slice(1).map((number, at) => Math.sign(number - (numbers[at] ?? number)));
  return new Set(steps).size > 1;
}
