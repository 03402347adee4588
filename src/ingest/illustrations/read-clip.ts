import { ALL_FORMATS, BufferSource, Input } from 'mediabunny';
import type { FileBytes } from '../read-source.ts';
import type { Report } from '../source.ts';
import { isCutOff, trackKinds } from './mp4-boxes.ts';

/** Those that browsers of the day play, each of them. H.264 is what nearly every camera writes. */
const CODECS = ['avc', 'vp9', 'av1'];
const SOUND = ['aac', 'mp3', 'opus', 'flac'];

export interface ClipFacts {
  readonly width: number;
  readonly height: number;
  readonly seconds: number;
}

/** Undefined, with the mistake reported, where a browser would not play the film, or it carries more than a film. */
export async function readClip({ bytes }: FileBytes, report: Report): Promise<ClipFacts | undefined> {
  const others = trackKinds(bytes).filter((kind) => kind !== 'vide' && kind !== 'soun');
  const input = new Input({ source: new BufferSource(bytes), formats: ALL_FORMATS });
  try {
    const format = await input.getFormat();
    const picture = await input.getPrimaryVideoTrack();
    const codec = await picture?.getCodec();
    if (format.name !== 'MP4' || picture === null || codec === null || codec === undefined || isCutOff(bytes)) {
      report({ code: 'unreadable-clip', ...(format.name === 'MP4' ? {} : { found: format.name }) });
      return undefined;
    }
    const sound = await (await input.getPrimaryAudioTrack())?.getCodec();
    const unplayed = [...(CODECS.includes(codec) ? [] : [codec]), ...(sound && !SOUND.includes(sound) ? [sound] : [])];
    if (unplayed.length > 0) {
      report({ code: 'clip-not-played', found: unplayed.join(', ') });
      return undefined;
    }
    if (others.length > 0) {
      report({ code: 'clip-carries-data', found: others.join(', ') });
      return undefined;
    }
    return {
      width: await picture.getDisplayWidth(),
      height: await picture.getDisplayHeight(),
      seconds: await input.computeDuration(),
    };
  } catch {
    report({ code: 'unreadable-clip' });
    return undefined;
  } finally {
    input.dispose();
  }
}
