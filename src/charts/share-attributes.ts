/** A group of marks or texts with nothing else in it. */
const MARKS = /(<g\b[^>]*)>((?:<(?:line|path|rect)\b[^>]*\/>|<text\b[^>]*>[^<]*<\/text>){2,})<\/g>/g;
const TAG = /<(?:line|path|rect|text)\b([^>]*?)\/?>/g;
/**
 * Those that SVG hands on from a group to what is in it (SVG 2, appendix F: presentation attributes that are
 * inherited).
 */
const INHERITED =
  / (fill|fill-opacity|stroke|stroke-width|stroke-opacity|stroke-dasharray|stroke-linecap|font-size|font-weight|text-anchor)="[^"]*"/g;
/** Where a line goes to when it does not say. */
const ORIGIN = / [xy][12]="0"/g;

/** The same drawing in fewer letters: what all marks of a group have alike stands on the group. */
export function shareAttributes(svg: string): string {
  return svg.replace(MARKS, (_all, group: string, marks: string) => {
    const [first = [], ...rest] = [...marks.matchAll(TAG)].map(([, attributes = '']) => inheritedIn(attributes));
    const shared = first.filter((one) => rest.every((other) => other.includes(one)) && !saysItself(group, one));
    const own = marks.replace(TAG, (tag) =>
      (tag.startsWith('<line') ? tag.replace(ORIGIN, '') : tag).replace(INHERITED, (one) =>
        shared.includes(one) ? '' : one,
      ),
    );
    return `${group}${shared.join('')}>${own}</g>`;
  });
}

function inheritedIn(attributes: string): readonly string[] {
  return [...attributes.matchAll(INHERITED)].map(([one]) => one);
}

function saysItself(group: string, attribute: string): boolean {
  return group.includes(attribute.slice(0, attribute.indexOf('=') + 1));
}
