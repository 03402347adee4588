/** The bytes of the files that a site has of its photographs and clips. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Bench } from '../model/bench.ts';
import type { Photograph } from '../model/illustration.ts';
import { problemsError } from '../model/problem-text.ts';
import type { Problem } from '../model/problem.ts';
import { drawPhotograph, isSound } from './draw.ts';
import type { IllustrationFile } from './files.ts';
import { stripClip } from './strip-clip.ts';

const TYPES = { jpeg: 'image/jpeg', png: 'image/png', webp: 'image/webp' };

/** @param root folder of the publication */
export async function readIllustrationFile(
  root: string,
  file: IllustrationFile,
): Promise<{ readonly bytes: Uint8Array<ArrayBuffer>; readonly type: string }> {
  const bytes = await readFile(join(root, file.kind === 'photograph' ? file.of.file.path : file.of.path));
  switch (file.kind) {
    case 'photograph':
      return { bytes: await drawPhotograph(bytes, file), type: TYPES[file.format] };
    case 'clip':
      return { bytes: stripClip(bytes), type: 'video/mp4' };
    case 'captions':
      return { bytes: new Uint8Array(bytes), type: 'text/vtt; charset=utf-8' };
  }
}

/** Reads every photograph to its last pixel. Throws a ProblemsError with all that are damaged. */
export async function checkIllustrations(root: string, { illustrations = [] }: Bench): Promise<void> {
  const shown = illustrations.map(({ shows }) => (shows.kind === 'clip' ? shows.poster : shows));
  const photographs = [...new Map(shown.map((photograph) => [photograph.file.path, photograph])).values()];
  const problems: Problem[] = [];
  for (const { file } of photographs satisfies Photograph[])
    if (!(await isSound(await readFile(join(root, file.path)), file.sha256)))
      problems.push({ code: 'unreadable-picture', file: file.path });
  if (problems.length > 0) throw problemsError(problems);
}
