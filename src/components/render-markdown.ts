import { defineHastPlugin, defineMdastPlugin, markdownToHtml } from 'satteri';
import { cellAlignment } from './cell-alignment.ts';
import { labelCells } from './label-cells.ts';
import { parseNoteMark } from '../model/note-mark.ts';
import { illustrationMarkup } from './illustration-markup.ts';
import { ownPictures, pathOfOwn, picturesAlone } from './place-illustrations.ts';
import { relativeHref } from './relative-href.ts';
import type { Note } from '../views/note.ts';

const SAFE_LINK = /^(?:https?:|mailto:|\/(?!\/)|#)/i;

/** Markup an author typed comes out as text, but for the two marks of numbers: a note is prose, not code. */
const htmlAsText = defineMdastPlugin({
  name: 'html-as-text',
  html(node, context) {
    const tag = tagOfMark(node.value);
    if (tag === undefined) context.replaceNode(node, { type: 'text', value: node.value });
    else context.setProperty(node, 'value', tag);
  },
});

/** As the parts `<Setting>` and `<Quoted>` print them. */
function tagOfMark(html: string): string | undefined {
  const mark = parseNoteMark(html);
  if (mark?.opens !== true) return mark && '</span>';
  return mark.name === 'Setting'
    ? '<span data-setting>'
    : `<span class="quoted" data-quoted="${mark.from}" title="From ${mark.from}">`;
}

/** Any other picture than those of the publication would be a request to another host: its text alternative stays. */
const ownImages = (illustrations: Note['illustrations'], from: string) =>
  defineHastPlugin({
    name: 'own-images',
    element: {
      filter: ['img'],
      visit(node, context) {
        const property = (name: string): string => String(node.properties?.[name] ?? '');
        const [alt, caption, path] = [property('alt'), property('title'), pathOfOwn(property('src'))];
        const illustration = illustrations.find(({ to }) => to === path);
        context.replaceNode(
          node,
          illustration === undefined
            ? { type: 'text', value: alt }
            : { type: 'raw', value: illustrationMarkup(illustration, { alt, caption }, from) },
        );
      },
    },
  });

/** Checked on the finished tree, where inline, reference and bare links have become one thing. */
const safeLinks = (from: string) =>
  defineHastPlugin({
    name: 'safe-links',
    element: {
      filter: ['a'],
      visit(node, context) {
        const to = String(node.properties?.['href'] ?? '');
        context.setProperty(node, 'href', SAFE_LINK.test(to) ? relativeHref(from, to) : '#');
      },
    },
  });

/**
 * Markdown from a data file (notes, descriptions) as HTML that is safe to insert: raw HTML comes out as text, pictures
 * that are none of the publication's as their alternative, and links with any other scheme than http(s) and mailto lead
 * nowhere.
 *
 * @param from site path of the page, for relative links
 */
export function renderMarkdown({ text, illustrations }: Omit<Note, 'file'>, from: string): string {
  const { html } = markdownToHtml(text, {
    features: { frontmatter: false },
    mdastPlugins: [htmlAsText, ownPictures],
    hastPlugins: [picturesAlone, safeLinks(from), ownImages(illustrations, from), cellAlignment],
  });
  return html.replace(/<table>[\s\S]*?<\/table>/g, (table) => `<div class="table">${labelCells(table)}</div>`);
}
