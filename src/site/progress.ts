/** What a long build is doing, for whoever wants to show it. */

/** `Estimating sessions`, how many are done, and of how many. */
export type ProgressListener = (what: string, done: number, of: number) => void;

let listener: ProgressListener = () => {};

export function watchProgress(listen: ProgressListener): void {
  listener = listen;
}

export function reportProgress(what: string, done: number, of: number): void {
  listener(what, done, of);
}
