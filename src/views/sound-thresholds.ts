/**
 * How far a picture may lag behind live sound, as standards put it. A screen beside a stage shows a picture that is late
 * against sound that nobody delayed: the sound is ahead, and only the limits for sound ahead of picture apply.
 */
export interface SoundThreshold {
  /** Sound ahead of picture by this much. */
  readonly ms: number;
  readonly source: string;
  /** What the source says of it. */
  readonly says: string;
}

/**
 * ITU-R BT.1359-1 (1998), considering g): detectability about +45 ms, acceptability about +90 ms (positive: sound ahead),
 * from judgements of a talking head; read in a stored text of the Recommendation's first page.
 * EBU R 37-2007, Table 1: at most 40 ms end to end; quoted from a public research note that reproduces its sentences.
 */
export const SOUND_THRESHOLDS: readonly SoundThreshold[] = [
  { ms: 40, source: 'EBU R 37-2007', says: 'the most that a programme for emission may have from end to end' },
  { ms: 45, source: 'ITU-R BT.1359-1', says: 'noticed, on the average' },
  { ms: 90, source: 'ITU-R BT.1359-1', says: 'no longer acceptable, on the average' },
];

/** Where all of them are from. */
export const SOUND_SOURCES = [...new Set(SOUND_THRESHOLDS.map(({ source }) => source))].join(', ');

/** Under a chart that shows them. */
export function describeSoundThresholds(): string {
  const each = SOUND_THRESHOLDS.map(({ ms, source, says }) => `${ms} ms, ${says} (${source})`).join('; ');
  return `Dashed: how far sound may be ahead of picture. ${each}.`;
}

/** What they mean beside a live event, and what they do not. */
export const SOUND_EXPLANATION =
  'Beside a live event the picture on a screen is late against sound that travels through the air: the sound is ahead. The dashed lines are limits for television, where sound and picture come from one place. In a hall the sound itself arrives later the further away a listener sits, about 3 ms for each metre, which takes that much off for the seats at the back.';
