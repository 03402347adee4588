import { renderFrontMatter } from '../ingest/render-front-matter.ts';

export interface NewBody {
  readonly name: string;
  readonly maker: string;
  readonly model: string;
  readonly readout: string | undefined;
  readonly invented: boolean;
}

/** The file of a body that is still to be described. */
export function renderNewBody({ name, maker, model, readout, invented }: NewBody): string {
  const front = renderFrontMatter({
    name,
    maker,
    model,
    ...(readout === undefined ? {} : { 'sensor-readout': readout }),
    ...(invented ? { invented: true } : {}),
  });
  return `---\n# What it is and how it came to the bench is written below the second line of dashes.\n${front}---\n`;
}
