import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { drawPng } from '../../src/pictures/draw-png.ts';
import { CLIP_FRAMES, CLIP_RATE, swingSvg } from './pictures.ts';

/** H.264 without sound, of the pictures alone: no name of an encoder, no day. */
const AS_H264 = [
  ...['-c:v', 'libx264', '-preset', 'veryslow', '-crf', '30', '-pix_fmt', 'yuv420p'],
  ...['-bsf:v', 'filter_units=remove_types=6', '-map_metadata', '-1', '-fflags', '+bitexact', '-flags:v', '+bitexact'],
  ...['-movflags', '+faststart'],
];

/** Writes the clip of the pendulum; where there is no ffmpeg, says so and leaves it as it is. */
export async function encodeSwing(path: string): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'swing-'));
  try {
    for (let frame = 0; frame < CLIP_FRAMES; frame += 1)
      writeFileSync(join(folder, `${String(frame).padStart(3, '0')}.png`), await drawPng(swingSvg(frame)));
    const frames = ['-framerate', String(CLIP_RATE), '-i', join(folder, '%03d.png')];
    const { error, status, stderr } = spawnSync('ffmpeg', ['-v', 'error', '-y', ...frames, ...AS_H264, path]);
    if (error) console.log(`${path} was left as it is: there is no ffmpeg`);
    else if (status !== 0) throw new Error(String(stderr));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
