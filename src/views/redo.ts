/** How a reader redoes a figure: the formula, and each input to the last digit with what is its own and what is shared. */
import type { SourceFile } from '../model/bench.ts';
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
  /** Value, standard uncertainty that it shares with nothing, weight: `y = 163.4 ms, own u = 2.1 ms, w = 0.5`. */
  readonly line: string;
  /** `source clock 0.0089 ms (rig:balcony)` */
  readonly shared: readonly string[];
}

export interface Redo extends Formula {
  /** Of the figure. */
  readonly id: string;
  readonly inputs: readonly RedoInput[];
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
  return { ...FORMULAS[figure.kind], id: figure.id, inputs: inputsOf(site, figure), gives: exactly(figure) };
}

function inputsOf({ bench, figure: find }: Pick<Published, 'bench' | 'figure'>, figure: Figure): readonly RedoInput[] {
  const files = new Set(figure.sources.map(({ file }) => file));
  const isSource = ({ readingsFile }: { readonly readingsFile: SourceFile }): boolean => files.has(readingsFile.path);
  const weights = figure.weights && new Map(figure.weights.map((each) => [each.figure, each.weight]));
  const input = (id: string, path: string, titleOf: (found: Figure) => string): readonly RedoInput[] => {
    const found = find(id);
    const weight = weights?.get(id);
    if (found === undefined || (weights !== undefined && weight === undefined)) return [];
    const line = `${inputLine(found)}${weight === undefined ? '' : `, w = ${weight}`}`;
    return [{ id, title: titleOf(found), path, line, shared: sharedLines(found) }];
  };
  return [
    ...bench.sessions
      .filter(isSource)
      .flatMap((session) =>
        input(`total/${session.id}`, sessionPath(session.id), () => `${sessionTitle(bench, session)} (${session.id})`),
      ),
    ...bench.displayPairs
      .filter(isSource)
      .flatMap(({ id }) => input(`display-difference/${id}`, displayPairPath(id), ({ label }) => label)),
  ];
}

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
