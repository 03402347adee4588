/** The clip as it is seen: the frame, two regions of it enlarged, steps, play, and moments at which to read. */
import { readingMoments } from '../../analysis/moments.ts';
import { Clip, ClipRefused } from './clip.ts';
import { byId, memory } from './dom.ts';

/** A part of the picture, in shares of its width and height from its top left corner; three times as wide as high. */
interface Region {
  readonly x: number;
  readonly y: number;
  readonly w: number;
}
const NAMES = ['source', 'shown'] as const;
type Name = (typeof NAMES)[number];
const FIRST_REGIONS: Readonly<Record<Name, Region>> = {
  source: { x: 0.05, y: 0.3, w: 0.4 },
  shown: { x: 0.55, y: 0.3, w: 0.4 },
};
const WIDE = 3;
const SLOW = 0.25;

export interface Here {
  readonly frame: number;
  readonly fileMs: number;
}

export class ClipView {
  readonly #canvas = byId('frame', HTMLCanvasElement);
  readonly #zooms = { source: byId('zoom-source', HTMLCanvasElement), shown: byId('zoom-shown', HTMLCanvasElement) };
  readonly #says = byId('clip-says', HTMLElement);
  readonly #place = byId('place', HTMLElement);
  readonly #slider = byId('slider', HTMLInputElement);
  readonly #onFrame: (here: Here | undefined) => void;
  #clip: Clip | undefined;
  #regions: Readonly<Record<Name, Region>> = FIRST_REGIONS;
  #session = '';
  #wanted = 0;
  #shown = -1;
  #isDrawing = false;
  #playing = false;
  #moments: readonly number[] = [];

  constructor(onFrame: (here: Here | undefined) => void) {
    this.#onFrame = onFrame;
    byId('step-back', HTMLElement).addEventListener('click', () => this.step(-1));
    byId('step-on', HTMLElement).addEventListener('click', () => this.step(1));
    byId('moment-back', HTMLElement).addEventListener('click', () => this.moment(-1));
    byId('moment-on', HTMLElement).addEventListener('click', () => this.moment(1));
    byId('play', HTMLElement).addEventListener('click', () => this.play());
    this.#slider.addEventListener('input', () => this.show(Number(this.#slider.value)));
    for (const name of NAMES)
      for (const part of ['x', 'y', 'w'] as const)
        byId(`${name}-${part}`, HTMLInputElement).addEventListener('input', ({ target }) => {
          if (target instanceof HTMLInputElement)
            this.#setRegion(name, { ...this.#regions[name], [part]: Number(target.value) / 100 });
        });
    this.#drag();
  }

  get here(): Here | undefined {
    return this.#clip === undefined || this.#shown < 0
      ? undefined
      : { frame: this.#shown, fileMs: this.#clip.timesMs[this.#shown] ?? 0 };
  }

  get name(): string | undefined {
    return this.#clip?.name;
  }

  /** Regions are those of the session; a clip of another one is closed. */
  enter(session: string): void {
    if (session === this.#session) return;
    this.#session = session;
    this.#close();
    this.#regions = memory.read<Record<Name, Region>>(session, 'regions') ?? FIRST_REGIONS;
    this.#fillInRegions();
    this.#say('No clip is open. Choose one, or type stamps that you read elsewhere.');
  }

  /** Says what the clip gives room for; where it cannot be shown, why and what helps. */
  async open(
    file: File,
    readings: number,
    seed: number,
    describe: (frames: number, fileMs: number) => string,
  ): Promise<boolean> {
    this.#close();
    this.#say(`Opening ${file.name} …`);
    try {
      this.#clip = await Clip.open(file);
    } catch (error) {
      if (!(error instanceof ClipRefused)) throw error;
      this.#say(error.message);
      return false;
    }
    const { frames, timesMs, width, height } = this.#clip;
    const lengthMs = timesMs.at(-1) ?? 0;
    this.#moments =
      lengthMs > 0 ? readingMoments(lengthMs, readings, seed).map((ms) => this.#clip?.frameAt(ms) ?? 0) : [];
    this.#canvas.width = width;
    this.#canvas.height = height;
    this.#slider.max = String(frames - 1);
    byId('picture', HTMLElement).hidden = false;
    this.#say(describe(frames, lengthMs));
    this.show(this.#moments[0] ?? 0);
    return true;
  }

  step(by: number): void {
    this.#playing = false;
    this.show(this.#wanted + by);
  }

  /** On to the next of the suggested moments, or back. */
  moment(by: 1 | -1): void {
    this.#playing = false;
    const next =
      by > 0
        ? this.#moments.find((frame) => frame > this.#wanted)
        : this.#moments.findLast((frame) => frame < this.#wanted);
    if (next !== undefined) this.show(next);
  }

  show(frame: number): void {
    if (this.#clip === undefined) return;
    this.#wanted = Math.min(this.#clip.frames - 1, Math.max(0, frame));
    if (!this.#isDrawing) void this.#draw();
  }

  play(): void {
    if (this.#clip === undefined) return;
    this.#playing = !this.#playing;
    byId('play', HTMLElement).setAttribute('aria-pressed', String(this.#playing));
    if (!this.#playing) return;
    const speed = byId('slow', HTMLInputElement).checked ? SLOW : 1;
    const [from, start] = [this.#clip.timesMs[this.#wanted] ?? 0, performance.now()];
    const go = (): void => {
      if (!this.#playing || this.#clip === undefined) return;
      this.show(this.#clip.frameAt(from + (performance.now() - start) * speed));
      if (this.#wanted === this.#clip.frames - 1) this.#playing = false;
      else requestAnimationFrame(go);
      byId('play', HTMLElement).setAttribute('aria-pressed', String(this.#playing));
    };
    requestAnimationFrame(go);
  }

  /** Draws until what is wanted is what is shown. */
  async #draw(): Promise<void> {
    const clip = this.#clip;
    this.#isDrawing = true;
    try {
      do {
        const index = this.#wanted;
        const sample = await clip?.frame(index);
        if (clip === undefined || sample === undefined || clip !== this.#clip) return;
        this.#shown = index;
        const context = this.#canvas.getContext('2d');
        if (context !== null) sample.draw(context, 0, 0, this.#canvas.width, this.#canvas.height);
        this.#zoom();
        this.#slider.value = String(index);
        const seconds = (clip.timesMs[index] ?? 0) / 1000;
        const moment = this.#moments.indexOf(index);
        const at = moment < 0 ? '' : `, moment ${moment + 1} of ${this.#moments.length}`;
        this.#place.textContent = `Frame ${index + 1} of ${clip.frames}, ${seconds.toFixed(4)} s${at}`;
        this.#slider.setAttribute('aria-valuetext', this.#place.textContent);
        this.#onFrame(this.here);
      } while (this.#wanted !== this.#shown);
    } catch (error) {
      if (!(error instanceof ClipRefused)) throw error;
      this.#say(error.message);
    } finally {
      this.#isDrawing = false;
    }
  }

  #close(): void {
    this.#playing = false;
    this.#clip?.close();
    this.#clip = undefined;
    this.#shown = -1;
    byId('picture', HTMLElement).hidden = true;
    this.#onFrame(undefined);
  }

  #say(text: string): void {
    this.#says.textContent = text;
  }

  /** Both regions from the frame that is shown, and where they lie in it. */
  #zoom(): void {
    const { width, height } = this.#canvas;
    for (const name of NAMES) {
      const { x, y, w } = this.#regions[name];
      const context = this.#zooms[name].getContext('2d');
      const high = (w * width) / WIDE;
      context?.drawImage(
        this.#canvas,
        x * width,
        y * height,
        w * width,
        high,
        0,
        0,
        this.#zooms[name].width,
        this.#zooms[name].height,
      );
      const frame = byId(`outline-${name}`, HTMLElement).style;
      frame.setProperty('left', `${100 * x}%`);
      frame.setProperty('top', `${100 * y}%`);
      frame.setProperty('width', `${100 * w}%`);
      frame.setProperty('height', `${(100 * high) / height}%`);
    }
  }

  #setRegion(name: Name, region: Region): void {
    const w = Math.min(1, Math.max(0.05, region.w));
    const share = (value: number): number => Math.min(0.95, Math.max(0, value));
    this.#regions = { ...this.#regions, [name]: { x: share(region.x), y: share(region.y), w } };
    memory.write(this.#session, 'regions', this.#regions);
    this.#fillInRegions();
    if (this.#shown >= 0) void this.#redraw();
  }

  async #redraw(): Promise<void> {
    if (!this.#isDrawing) await this.#draw();
  }

  #fillInRegions(): void {
    for (const name of NAMES)
      for (const part of ['x', 'y', 'w'] as const)
        byId(`${name}-${part}`, HTMLInputElement).value = String(Math.round(100 * this.#regions[name][part]));
  }

  /** A region is drawn with the pointer: of the timer on the left button, of the one that is chosen otherwise. */
  #drag(): void {
    let from: { readonly x: number; readonly y: number } | undefined;
    const place = ({ clientX, clientY }: PointerEvent) => {
      const { left, top, width, height } = this.#canvas.getBoundingClientRect();
      return { x: (clientX - left) / width, y: (clientY - top) / height };
    };
    this.#canvas.addEventListener('pointerdown', (event) => {
      from = place(event);
      this.#canvas.setPointerCapture(event.pointerId);
    });
    this.#canvas.addEventListener('pointermove', (event) => {
      if (from === undefined) return;
      const to = place(event);
      const w = Math.abs(to.x - from.x);
      if (w < 0.02) return;
      const name = byId('draw-shown', HTMLInputElement).checked ? 'shown' : 'source';
      this.#setRegion(name, { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y), w });
    });
    this.#canvas.addEventListener('pointerup', () => {
      from = undefined;
    });
  }
}
