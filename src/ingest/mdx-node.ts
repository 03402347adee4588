/** A node of the MDX tree, as far as it is looked at. */
export interface Visited {
  readonly type: string;
  readonly name?: string | null;
  readonly url?: string;
  readonly title?: string | null;
  readonly alt?: string | null;
  /** Of a list: the number of its first item. */
  readonly start?: number | null;
  readonly value?: unknown;
  readonly attributes?: readonly { readonly type: string; readonly name?: string; readonly value?: unknown }[];
  readonly children?: readonly Visited[];
  readonly position?: { readonly start: { readonly line: number; readonly column: number } };
}
