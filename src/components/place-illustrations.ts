/** Markdown pictures as the photographs and clips of a publication, in notes and in write-ups. */
import { defineHastPlugin, defineMdastPlugin } from 'satteri';

/** Stands before the path of a picture, so that nobody else takes it for a file beside the page. */
const OWN = 'illustration:';

/** The path that a text names, of what `ownPictures` made of it; undefined for what is no picture of its. */
export function pathOfOwn(src: string): string | undefined {
  if (!src.startsWith(OWN)) return undefined;
  const url = src.slice(OWN.length);
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}

/** Marks every picture as one of the publication's own, before anything else looks for it. */
export const ownPictures = defineMdastPlugin({
  name: 'own-pictures',
  image(node, context) {
    context.setProperty(node, 'url', `${OWN}${node.url}`);
  },
});

/** A paragraph of pictures is none: they stand by themselves, side by side where there are several. */
export const picturesAlone = defineHastPlugin({
  name: 'pictures-alone',
  element: {
    filter: ['p'],
    visit(node, context) {
      const { children } = node;
      const pictures = children.filter((child) => child.type === 'element' && child.tagName === 'img');
      const isBlank = (child: (typeof children)[number]): boolean =>
        (child.type === 'text' && child.value.trim() === '') || (child.type === 'element' && child.tagName === 'br');
      if (pictures.length === 0 || !children.every((child) => pictures.includes(child) || isBlank(child))) return;
      context.replaceNode(node, {
        type: 'element',
        tagName: 'div',
        properties: { className: ['illustrations'] },
        children: pictures,
      });
    },
  },
});
