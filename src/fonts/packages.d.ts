/** The part of two packages that is used here: they bring no types. */
declare module 'subset-font' {
  interface Options {
    readonly targetFormat: 'sfnt' | 'woff2';
    /** Tags of OpenType features. */
    readonly keepFeatures: readonly string[];
    readonly noHinting: boolean;
    readonly preserveNameIds: readonly number[];
    /** By tag: where the axis is pinned, or what is left of it. */
    readonly variationAxes: Readonly<Record<string, number | { readonly min: number; readonly max: number }>>;
  }
  export default function subsetFont(font: Uint8Array, letters: string, options: Options): Promise<Uint8Array>;
}

declare module 'fontverter' {
  export function convert(font: Buffer, to: 'sfnt' | 'woff2'): Promise<Uint8Array>;
}
