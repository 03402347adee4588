/**
 * A clip with two timers whose stamps are known in every frame, made in the browser: drawn, encoded and put into a file
 * there.
 *
 * The rig: the observer films `observerHz` frames a second, the timer is drawn anew `timerHz` times a second and shows
 * whole milliseconds; the body ends a capture `bodyHz` times a second, and its frame is on the display `pipelineMs`
 * later, until the next.
 */
import type { Page } from 'playwright-core';

export interface FilmedRig {
  readonly observerHz: number;
  readonly timerHz: number;
  readonly bodyHz: number;
  readonly pipelineMs: number;
  /** When the timer is drawn, and when the body captures, in ms after the first frame. */
  readonly timerPhaseMs: number;
  readonly bodyPhaseMs: number;
  /** What the timer shows at the first frame. */
  readonly startMs: number;
}

export interface Stamps {
  readonly source: string;
  readonly shown: string;
  readonly sourceMs: number;
  readonly shownMs: number;
}

/** What the two timers show in each frame. */
export function stampsOf(rig: FilmedRig, frames: number): readonly Stamps[] {
  const { observerHz, timerHz, bodyHz, pipelineMs, timerPhaseMs, bodyPhaseMs, startMs } = rig;
  const lastTick = (ms: number, hz: number, phaseMs: number): number =>
    phaseMs + (Math.floor(((ms - phaseMs) * hz) / 1000 + 1e-9) * 1000) / hz;
  const shownBy = (ms: number): number => Math.floor(startMs + lastTick(ms, timerHz, timerPhaseMs) + 1e-6);
  return Array.from({ length: frames }, (_, frame) => {
    const ms = (1000 * frame) / observerHz;
    const [sourceMs, shownMs] = [shownBy(ms), shownBy(lastTick(ms - pipelineMs, bodyHz, bodyPhaseMs))];
    return { source: write(sourceMs), shown: write(shownMs), sourceMs, shownMs };
  });
}

/** `00:12.217` */
function write(ms: number): string {
  const [minutes, seconds, thousandths] = [Math.floor(ms / 60_000), Math.floor(ms / 1000) % 60, ms % 1000];
  return `${String(minutes).padStart(2, '0')}:${String(seconds).padStart(2, '0')}.${String(thousandths).padStart(3, '0')}`;
}

/** Width of a mark, and how many there are: the number of the frame in twos, so that a test can tell what is shown. */
const MARK_PX = 20;
const MARKS = 12;

/**
 * The file's bytes. The page is the one on which readings are taken, which has what it takes to read a clip, and to
 * write one.
 */
export async function makeClip(page: Page, stamps: readonly Stamps[], hz: number): Promise<Buffer> {
  // as text: what is imported here would be looked for by the test runner
  const script = `(async () => {
    const { Output, WebMOutputFormat, BufferTarget, CanvasSource } = await import(performance.getEntriesByType('resource').find(({ name }) => name.includes('/mediabunny.js')).name);
    const stamps = ${JSON.stringify(stamps)};
    const canvas = new OffscreenCanvas(400, 100);
    const context = canvas.getContext('2d');
    const output = new Output({ format: new WebMOutputFormat(), target: new BufferTarget() });
    const source = new CanvasSource(canvas, { codec: 'vp8', bitrate: 2e6, keyFrameInterval: 1 });
    output.addVideoTrack(source, { frameRate: ${hz} });
    await output.start();
    for (const [frame, { source: first, shown }] of stamps.entries()) {
      context.fillStyle = '#222';
      context.fillRect(0, 0, 400, 100);
      for (let bit = 0; bit < ${MARKS}; bit += 1) {
        context.fillStyle = (frame >> bit) & 1 ? '#fff' : '#000';
        context.fillRect(bit * ${MARK_PX}, 0, ${MARK_PX}, ${MARK_PX});
      }
      context.fillStyle = '#fff';
      context.font = 'bold 28px monospace';
      context.fillText(first, 20, 65);
      context.fillText(shown, 220, 65);
      await source.add(frame / ${hz}, 1 / ${hz});
    }
    await output.finalize();
    return new Promise((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(reader.result.split(',')[1]);
      reader.readAsDataURL(new Blob([output.target.buffer]));
    });
  })()`;
  return Buffer.from((await page.evaluate(script)) as string, 'base64');
}

/** The number of the frame that the page shows, read off its marks. */
export function shownFrame(page: Page): Promise<number> {
  return page.evaluate(
    ([marks, px]) => {
      const canvas = document.querySelector<HTMLCanvasElement>('#frame')!;
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, px! / 2 + 1);
      const row = Math.floor(px! / 2) * canvas.width;
      let frame = 0;
      for (let bit = 0; bit < marks!; bit += 1) if (data[4 * (row + bit * px! + px! / 2)]! > 127) frame += 2 ** bit;
      return frame;
    },
    [MARKS, MARK_PX],
  );
}
