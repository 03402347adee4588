import type { ShownChart } from './find-charts.ts';

/** What a picture is called among others: `total-latency-on-balcony-5aed5f-square-dark`. */
export function pictureName({ id, caption }: Pick<ShownChart, 'id' | 'caption'>, form: string): string {
  const words = caption
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return [words, id.replace(/^chart-/, '').slice(0, 6), form].filter(Boolean).join('-');
}
