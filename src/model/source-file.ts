/** A file of an author's. */
export interface SourceFile {
  /** As published and as reported, with forward slashes: `data/sessions/x.csv`. */
  readonly path: string;
  /** Lower-case hexadecimal SHA-256 of the bytes on disk. */
  readonly sha256: string;
  readonly bytes: number;
}
