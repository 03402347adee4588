import type { Bench, Session } from '../model/bench.ts';
import { rateKey } from '../model/rate.ts';
import { lookup, type Lookup } from './lookup.ts';
import { once } from '../model/once.ts';

export interface Trait {
  /** Equal keys mean the same trait. */
  readonly key: string;
  /** In a row: `HD 1920 × 1080`, `stabiliser on`. */
  readonly short: string;
  /** Among what sessions share: `output HD 1920 × 1080`. */
  readonly full: string;
  /**
   * `name` traits name a session and are said wherever they differ; a `setting` goes without saying where
   * most have it, a `body-setting` where most of the same body have it; a `last-resort` is said only where
   * nothing else tells two sessions apart.
   */
  readonly role: 'name' | 'setting' | 'body-setting' | 'last-resort';
}

/** What describes a session, in a fixed order, so that the n-th trait of two sessions is the same sort of thing. */
export function traitsOf(session: Session, bench: Bench): readonly Trait[] {
  return onBench(bench)(session);
}

const onBench = once((bench: Bench) => once((session: Session) => describe(session, bench, lookup(bench))));

function describe(session: Session, bench: Bench, find: Lookup): readonly Trait[] {
  const body = find.body(session.body).name;
  const rate = `${find.level('rate', session.settings['rate'] ?? '')} frames/s`;
  const links = session.links.map((id) => find.link(id).name).join(' and ');
  return [
    { key: session.body, short: body, full: body, role: 'name' },
    { key: rateKey(session.rate), short: rate, full: rate, role: 'name' },
    ...bench.settings
      .filter(({ id }) => id !== 'rate')
      .map(({ id, label }) => settingTrait(label, find.level(id, session.settings[id] ?? ''), session.settings[id])),
    {
      key: session.firmware ?? '',
      ...same(session.firmware === undefined ? '' : `firmware ${session.firmware}`),
      role: 'body-setting',
    },
    {
      key: session.links.join(),
      short: links === '' ? 'no link' : `through ${links}`,
      full: links === '' ? '' : `through ${links}`,
      role: 'setting',
    },
    { key: session.rig, ...same(`rig ${find.rig(session.rig).name}`), role: 'setting' },
    { key: session.display, ...same(find.display(session.display).name), role: 'setting' },
    { key: session.method, short: session.method, full: '', role: 'setting' },
    {
      key: session.cutShort ?? '',
      short: session.cutShort === undefined ? '' : 'cut short',
      full: '',
      role: 'setting',
    },
    { key: session.date, short: session.date, full: '', role: 'last-resort' },
    { key: session.id, short: session.id, full: '', role: 'last-resort' },
  ];
}

/** A level that says by itself what it is of stands alone in a row; `on` or `10` brings its setting along. */
function settingTrait(label: string, levelLabel: string, level: string | undefined): Trait {
  if (level === undefined) return { key: '', short: '', full: '', role: 'setting' };
  if (levelLabel.toLowerCase() === label.toLowerCase())
    return { key: level, ...same(lowerFirst(label)), role: 'setting' };
  const full = `${lowerFirst(label)} ${/^[A-Z][a-z]+$/.test(levelLabel) ? lowerFirst(levelLabel) : levelLabel}`;
  return { key: level, short: /^(?:[A-Za-z]+|\d+)$/.test(levelLabel) ? full : levelLabel, full, role: 'setting' };
}

function same(text: string): Pick<Trait, 'short' | 'full'> {
  return { short: text, full: text };
}

/** Leaves abbreviations as they are: `Bit depth` → `bit depth`, `A flash` → `a flash`, `HDR mode` → `HDR mode`. */
export function lowerFirst(text: string): string {
  return /^(?:[A-Z][a-z]|A [a-z])/.test(text) ? text.slice(0, 1).toLowerCase() + text.slice(1) : text;
}
