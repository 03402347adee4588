/** What a picture is called among others: `total-latency-on-balcony-5aed5f-square-dark`. */
export function pictureName(svg: string, id: string, form: string): { readonly title: string; readonly file: string } {
  const title = (/<title>([^<]*)<\/title>/.exec(svg)?.[1] ?? '').replace(/&#(\d+);/g, (_all, code: string) =>
    String.fromCodePoint(Number(code)),
  );
  const words = title
    .toLowerCase()
    .normalize('NFKD')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60);
  return { title, file: [words, id.replace(/^chart-/, '').slice(0, 6), form].filter(Boolean).join('-') };
}
