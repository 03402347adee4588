import { describe, expect, it } from 'vitest';
import { renameRecord, type Renaming } from '../../src/rename/rename-record.ts';

const SESSION = '---\nbody: fenn # ours\nrig: "attic"\nsettings: { rate: 24 }\n---\n\nSee [it](../../bodies/fenn/).\n';
const REPORT = `---
title: fenn
---

<Figure id="total/fenn-a" /> and <Difference of="fenn-a" than='fenn-b' /> and <Table caption="fenn-a, total/fenn-a"
  ids={["total/fenn-a", "difference/fenn-b/than/fenn-a"]} where={{ fan: "fenn-a" }} body="fenn" rig="fenn" />.

[fenn-a](/sessions/fenn-a/), [again](../../sessions/fenn-a/#readings-taken), [raw](/data/sessions/fenn-a.csv),
[other](../fenn-a/), [far](https://fenn-a.example/sessions/fenn-a/) and fenn-a in prose. [body]: x

[ref]: ../../bodies/fenn/ "fenn"
`;
const TEXTS = new Map([
  ['data/bodies/fenn.md', '---\nname: Fenn\n---\n'],
  ['data/sessions/fenn-a.md', SESSION],
  ['data/sessions/fenn-a.csv', 'run,source,shown,exclude,note\n1,2.0,1.0,,fenn-a\n'],
  ['data/variation.yaml', 'bodies:\n  fenn:\n    clip: {}\nsessions:\n  fenn-a: 12ab\n  fenn-b: 34cd\n'],
  ['content/reports/first.mdx', REPORT],
]);
const rename = (renaming: Renaming) => renameRecord(TEXTS, renaming);

describe('renameRecord', () => {
  it('renames a session with its pair, in parts and links, and in no words', () => {
    const changes = rename({ kind: 'session', from: 'fenn-a', to: 'fenn-24' });
    expect([...changes.keys()].sort()).toEqual([
      'content/reports/first.mdx',
      'data/sessions/fenn-24.csv',
      'data/sessions/fenn-24.md',
      'data/sessions/fenn-a.csv',
      'data/sessions/fenn-a.md',
      'data/variation.yaml',
    ]);
    expect([changes.get('data/sessions/fenn-a.md'), changes.get('data/sessions/fenn-24.csv')]).toEqual([
      undefined,
      TEXTS.get('data/sessions/fenn-a.csv'),
    ]);
    expect(changes.get('content/reports/first.mdx')).toBe(
      REPORT.replace('"total/fenn-a" />', '"total/fenn-24" />')
        .replace('of="fenn-a"', 'of="fenn-24"')
        .replace(
          '["total/fenn-a", "difference/fenn-b/than/fenn-a"]',
          '["total/fenn-24", "difference/fenn-b/than/fenn-24"]',
        )
        .replace('(/sessions/fenn-a/)', '(/sessions/fenn-24/)')
        .replace('../../sessions/fenn-a/#', '../../sessions/fenn-24/#')
        .replace('sessions/fenn-a.csv', 'sessions/fenn-24.csv'),
    );
    expect(changes.get('data/variation.yaml')).toBe(TEXTS.get('data/variation.yaml')?.replace('fenn-a:', 'fenn-24:'));
  });

  it('renames a body in the front matter of its sessions, comments and all', () => {
    const changes = rename({ kind: 'body', from: 'fenn', to: 'fenn-3' });
    expect(changes.get('data/sessions/fenn-a.md')).toBe(
      SESSION.replace('body: fenn #', 'body: fenn-3 #').replace('bodies/fenn/', 'bodies/fenn-3/'),
    );
    expect(changes.get('content/reports/first.mdx')).toBe(
      REPORT.replace('body="fenn"', 'body="fenn-3"').replace('bodies/fenn/', 'bodies/fenn-3/'),
    );
    expect(changes.get('data/variation.yaml')).toContain('bodies:\n  fenn-3:\n');
    expect(changes.has('data/bodies/fenn.md') && changes.get('data/bodies/fenn-3.md')).toBe('---\nname: Fenn\n---\n');
  });

  it('renames a rig in quotes, and a report in links beside it', () => {
    expect(rename({ kind: 'rig', from: 'attic', to: 'loft' }).get('data/sessions/fenn-a.md')).toContain(
      'rig: "loft"\n',
    );
    const texts = new Map([...TEXTS, ['content/reports/fenn-a.mdx', '---\ntitle: x\n---\n']]);
    const changes = renameRecord(texts, { kind: 'report', from: 'fenn-a', to: 'second' });
    expect(changes.get('content/reports/first.mdx')).toContain('[other](../second/)');
    expect(changes.get('content/reports/first.mdx')).toContain('[again](../../sessions/fenn-a/#readings-taken)');
  });
});
