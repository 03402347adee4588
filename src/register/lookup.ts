import type { Bench, Body, Display, DisplayPair, Link, Rig, Session, Setting, SourceFile } from '../model/bench.ts';
import type { Variation } from '../analysis/variation.ts';
import { statedOf, type VariationStatement } from '../model/variation-statement.ts';
import { once } from '../model/once.ts';

/** The bench by id. Ingest has checked every reference, so a miss is a bug, not an author's mistake. */
export interface Lookup {
  body(id: string): Body;
  rig(id: string): Rig;
  display(id: string): Display;
  link(id: string): Link;
  session(id: string): Session;
  displayPair(id: string): DisplayPair;
  setting(id: string): Setting;
  /** How the delays of a body vary on this bench, where that was learnt or stated. */
  variation(body: string): Variation | undefined;
  /** The file that says it. */
  readonly variationFile: SourceFile | undefined;
  /** The label of a level: `uhd` → `UHD 3840 × 2160`. */
  level(setting: string, level: string): string;
}

export const lookup: (bench: Bench) => Lookup = once(indexed);

function indexed(bench: Bench): Lookup {
  const setting = finder('setting', bench.settings);
  return {
    body: finder('body', bench.bodies),
    rig: finder('rig', bench.rigs),
    display: finder('display', bench.displays),
    link: finder('link', bench.links),
    session: finder('session', bench.sessions),
    displayPair: finder('comparison of two displays', bench.displayPairs),
    setting,
    variation: (id) => bench.variation && variationOf(bench.variation, id),
    variationFile: bench.variation?.file,
    level: (settingId, levelId) => setting(settingId).levels.find(({ id }) => id === levelId)?.label ?? levelId,
  };
}

function finder<T extends { readonly id: string }>(what: string, list: readonly T[]): (id: string) => T {
  const byId = new Map(list.map((item) => [item.id, item]));
  return (id) => {
    const item = byId.get(id);
    if (item === undefined) throw new Error(`no ${what} '${id}' on this bench`);
    return item;
  };
}

/** What the statement says of one body. */
function variationOf(statement: VariationStatement, body: string): Variation {
  const { knows, reading } = statement;
  const { clip, day } = statedOf(statement, body);
  return { knows, reading, clip, day };
}
