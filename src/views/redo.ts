/** How a reader redoes a figure: the formula, and each input to the last digit with what is its own and what is shared. */
import type { Bench } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { FORMULAS, type Formula } from '../register/formulas.ts';
import { isKind, type KindName } from '../register/kinds.ts';
import { sessionTitle } from '../register/labels.ts';
import { displayPairPath, sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Component, Figure } from '../register/register.ts';

export interface RedoInput {
  /** Id of its total latency, or of a difference of displays read side by side. */
  readonly id: string;
  /** `Orrin V2, 23.976 frames/s (orrin-uhd24-a)` */
  readonly title: string;
  readonly path: string;
  /** Its value, and the part of its standard uncertainty that it shares with nothing: `y = 163.4 ms, own u = 2.1 ms`. */
  readonly line: string;
  /** `source clock 0.0089 ms (rig:balcony)` */
  readonly shared: readonly string[];
}

export interface Redo extends Formula {
  /** Of the figure. */
  readonly id: string;
  readonly inputs: readonly RedoInput[];
  /** Of a sum at fixed weights, that of each input by its id, to the last digit. */
  readonly weights: readonly { readonly id: string; readonly weight: number }[];
  /** The figure itself to the last digit: what the formula has to give. */
  readonly gives: string;
}

/** Figures that others are computed from. */
const INPUTS: readonly string[] = ['total', 'display-difference'] satisfies readonly KindName[];

/** All that an entry says of a figure to the last digit: itself, and each one that another figure is computed from. */
export function exactLines(figure: Figure): readonly string[] {
  return [exactly(figure), ...(INPUTS.includes(figure.kind) ? [inputLine(figure), ...sharedLines(figure)] : [])];
}

/** Undefined for a kind without a formula. */
export function redoOf(site: Pick<Published, 'bench' | 'figure'>, figure: Figure): Redo | undefined {
  if (!isKind(figure.kind)) return undefined;
  return {
    ...FORMULAS[figure.kind],
    id: figure.id,
    inputs: inputsOf(site, figure),
    weights: (figure.weights ?? []).map(({ figure: id, weight }) => ({ id, weight })),
    gives: exactly(figure),
  };
}

/** Everything measured that a figure rests on, in the order of the bench. */
export function inputsOf(
  { bench, figure: find }: Pick<Published, 'bench' | 'figure'>,
  figure: Figure,
): readonly RedoInput[] {
  const measured = measuredBy(bench);
  return figure.sources
    .flatMap(({ file }) => measured.get(file) ?? [])
    .sort((a, b) => a.place - b.place)
    .flatMap(({ id, path, title }) => {
      const found = find(id);
      if (found === undefined) return [];
      return [{ id, title: title ?? found.label, path, line: inputLine(found), shared: sharedLines(found) }];
    });
}

interface Measured extends Pick<RedoInput, 'id' | 'path'> {
  /** In the bench. */
  readonly place: number;
  /** Where it is not the label of its figure. */
  readonly title?: string;
}

/** What was measured in each file of readings. */
const measuredBy: (bench: Bench) => ReadonlyMap<string, Measured> = once((bench) => {
  const sessions = bench.sessions.map((session) => ({
    file: session.readingsFile.path,
    id: `total/${session.id}`,
    path: sessionPath(session.id),
    title: `${sessionTitle(bench, session)} (${session.id})`,
  }));
  const pairs = bench.displayPairs.map(({ id, readingsFile }) => ({
    file: readingsFile.path,
    id: `display-difference/${id}`,
    path: displayPairPath(id),
  }));
  return new Map([...sessions, ...pairs].map(({ file, ...one }, place) => [file, { ...one, place }]));
});

function inputLine({ value, components = [] }: Figure): string {
  const own = Math.hypot(...components.filter(({ shared }) => shared === null).map(sizeOf));
  return `y = ${value} ms, own u = ${own} ms`;
}

function sharedLines({ components = [] }: Figure): readonly string[] {
  return components.flatMap((one) =>
    one.shared === null || sizeOf(one) === 0 ? [] : [`${one.name} ${sizeOf(one)} ms (${one.shared})`],
  );
}

function sizeOf({ standardUncertainty }: Component): number {
  return standardUncertainty;
}

function exactly({ value, interval, unit }: Figure): string {
  const after = unit === '1' ? '' : ` ${unit}`;
  return interval === undefined ? `${value}${after}` : `${value}${after}, interval ${interval.low} to ${interval.high}`;
}
