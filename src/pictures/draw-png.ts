import { readFile } from 'node:fs/promises';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { Store } from 'lagfolio/memory';

const pictures = new Store('pictures', ['src/pictures']);

let ready: Promise<void> | undefined;

/**
 * A picture without fonts as PNG, of the size that it says. Drawn by the same program of WebAssembly on every machine,
 * so that the bytes are the same; what was drawn before is taken from disk.
 */
export async function drawPng(svg: string): Promise<Uint8Array> {
  const name = pictures.nameOf(svg);
  const known = pictures.get(name);
  if (known instanceof Uint8Array) return known;
  ready ??= readFile(new URL(import.meta.resolve('@resvg/resvg-wasm/index_bg.wasm'))).then((bytes) =>
    initWasm(new Uint8Array(bytes)),
  );
  await ready;
  const drawing = new Resvg(svg);
  const image = drawing.render();
  const png = new Uint8Array(image.asPng());
  image.free();
  drawing.free();
  pictures.put(name, png);
  return png;
}
