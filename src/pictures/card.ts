import type { CitedPublication } from '../views/cite-line.ts';
import type { ShownChart } from './find-charts.ts';
import { CARD } from './formats.ts';
import { inColours, standAlone } from './stand-alone.ts';

/** The picture that previews of links to a page show: its title, what it answers, a small chart where it has one. */
export function card(
  { title, answer }: { readonly title: string; readonly answer: string },
  chart: ShownChart | undefined,
  publication: CitedPublication,
  invented: string | undefined,
): string {
  const source = [publication.title, publication.publisher].filter((name) => name.trim() !== '').join(', ');
  const picture = standAlone(
    chart === undefined ? [] : [chart.wide, chart.narrow],
    {
      title,
      lines: [firstSentence(answer)].filter(Boolean),
      source: [`${source}.`, invented].filter(Boolean).join(' '),
      description: answer,
    },
    CARD,
  );
  return inColours(picture, 'light');
}

/** What fits under a title: `94.9 ms` ends no sentence. */
function firstSentence(text: string): string {
  return /^.*?[.?!](?=\s|$)/s.exec(text)?.[0] ?? text;
}
