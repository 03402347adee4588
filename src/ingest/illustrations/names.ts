/** What files may be shown, by their ending; anything else that stands beside a text is no part of a publication. */
export const PHOTOGRAPHS = ['.jpg', '.jpeg', '.png', '.webp', '.avif'];
export const CLIPS = ['.mp4'];
/** What stands beside a clip, besides its poster. */
const BESIDE = ['.mp4.yaml', '.vtt'];
/** A folder that may stand beside texts, for all that they show. */
const PICTURE_FOLDER = 'pictures';

export function endsIn(name: string, endings: readonly string[]): boolean {
  return endings.some((ending) => name.toLowerCase().endsWith(ending));
}

/** Whether a name beside texts is that of something that they may show, or of the folder for it. */
export function isIllustrationName(name: string): boolean {
  return name === PICTURE_FOLDER || endsIn(name, [...PHOTOGRAPHS, ...CLIPS, ...BESIDE]);
}
