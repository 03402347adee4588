/** A clip of this machine, frame by frame: every frame that is in the file, with its own time. Nothing of it is sent anywhere. */
import {
  ALL_FORMATS,
  BlobSource,
  EncodedPacketSink,
  Input,
  VideoSampleSink,
  type InputVideoTrack,
  type VideoSample,
} from 'mediabunny';

/** Frames kept decoded; a picture of 1920 × 1080 takes some 3 MB. */
const KEPT = 60;
/** Decoded beyond the one asked for, in the direction of the steps. */
const AHEAD = 24;
const BEHIND = 4;

/** Why a clip cannot be shown, and what helps. */
export class ClipRefused extends Error {}

export class Clip {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** Of every frame, in order, from the beginning of the file. */
  readonly timesMs: readonly number[];
  readonly #sink: VideoSampleSink;
  readonly #seconds: readonly number[];
  readonly #kept = new Map<number, VideoSample>();
  #loading: Promise<void> = Promise.resolve();
  #asked = 0;

  private constructor(
    name: string,
    track: InputVideoTrack,
    [width, height]: readonly [number, number],
    seconds: readonly number[],
  ) {
    this.name = name;
    this.width = width;
    this.height = height;
    this.#seconds = seconds;
    this.timesMs = seconds.map((time) => (time - (seconds[0] ?? 0)) * 1000);
    this.#sink = new VideoSampleSink(track);
  }

  static async open(file: File): Promise<Clip> {
    const input = new Input({ source: new BlobSource(file), formats: ALL_FORMATS });
    let track: InputVideoTrack | null;
    try {
      track = await input.getPrimaryVideoTrack();
    } catch {
      throw new ClipRefused(`${file.name} is no video that can be read here. MP4, MOV, WebM and MKV can.`);
    }
    if (track === null) throw new ClipRefused(`${file.name} holds no picture.`);
    if (!(await track.canDecode())) {
      const codec = await track.getCodec();
      const named = codec === 'hevc' ? 'HEVC (H.265)' : (codec?.toUpperCase() ?? 'an unknown way');
      throw new ClipRefused(
        `This browser cannot decode ${file.name}: its picture is coded in ${named}. Set the observer to record H.264 (AVC; in many menus the setting for compatibility, against the one for efficiency). With this clip, read the stamps in another player and type them here all the same.`,
      );
    }
    const seconds: number[] = [];
    for await (const packet of new EncodedPacketSink(track).packets(undefined, undefined, { metadataOnly: true }))
      seconds.push(packet.timestamp);
    if (seconds.length === 0) throw new ClipRefused(`${file.name} holds no frame.`);
    const size = [await track.getDisplayWidth(), await track.getDisplayHeight()] as const;
    const inOrder = seconds.toSorted((a, b) => a - b);
    return new Clip(file.name, track, size, inOrder);
  }

  get frames(): number {
    return this.timesMs.length;
  }

  /** The frame that is shown at a time. */
  frameAt(ms: number): number {
    const after = this.timesMs.findIndex((time) => time > ms + 1e-6);
    return after < 0 ? this.frames - 1 : Math.max(0, after - 1);
  }

  /** A frame; it stays the clip's own, and is to be drawn at once. */
  async frame(index: number): Promise<VideoSample> {
    const isForwards = index >= this.#asked;
    this.#asked = index;
    for (let tries = 0; tries < 2; tries += 1) {
      const kept = this.#kept.get(index);
      if (kept !== undefined) return kept;
      await this.#load(index, isForwards);
    }
    const kept = this.#kept.get(index);
    if (kept === undefined) throw new ClipRefused(`Frame ${index + 1} of ${this.name} cannot be decoded.`);
    return kept;
  }

  close(): void {
    for (const sample of this.#kept.values()) sample.close();
    this.#kept.clear();
  }

  /** One stretch after the other: a decoder has one place at a time. */
  #load(index: number, isForwards: boolean): Promise<void> {
    const next = this.#loading.then(() => this.#decode(index, isForwards));
    this.#loading = next.catch(() => undefined);
    return next;
  }

  async #decode(index: number, isForwards: boolean): Promise<void> {
    if (this.#kept.has(index)) return;
    const first = Math.max(0, index - (isForwards ? BEHIND : AHEAD));
    const last = Math.min(this.frames - 1, index + (isForwards ? AHEAD : BEHIND));
    let at = first;
    const end = this.#seconds[last + 1] ?? Number.POSITIVE_INFINITY;
    for await (const sample of this.#sink.samples(this.#seconds[first], end)) {
      while (at < last && (this.#seconds[at + 1] ?? Infinity) <= sample.timestamp + 1e-6) at += 1;
      this.#kept.get(at)?.close();
      this.#kept.set(at, sample);
    }
    const far = [...this.#kept.keys()].toSorted((a, b) => Math.abs(b - index) - Math.abs(a - index));
    for (const other of far.slice(0, Math.max(0, far.length - KEPT))) {
      this.#kept.get(other)?.close();
      this.#kept.delete(other);
    }
  }
}
