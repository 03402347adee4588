import { defineHastPlugin, defineMdastPlugin, markdownToHtml } from 'satteri';
import { cellAlignment } from './cell-alignment.ts';
import { labelCells } from './label-cells.ts';
import { parseNoteMark } from '../model/note-mark.ts';
import { relativeHref } from './relative-href.ts';

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

/** Pictures would be requests to other hosts; their text alternative stays. */
const imagesAsText = defineHastPlugin({
  name: 'images-as-text',
  element: {
    filter: ['img'],
    visit(node, context) {
      context.replaceNode(node, { type: 'text', value: String(node.properties?.['alt'] ?? '') });
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
 * Markdown from a data file (notes, descriptions) as HTML that is safe to insert: raw HTML comes out as
 * text, pictures as their alternative, and links with any other scheme than http(s) and mailto lead nowhere.
 *
 * @param from site path of the page, for relative links
 */
export function renderMarkdown(markdown: string, from: string): string {
  const { html } = markdownToHtml(markdown, {
    features: { frontmatter: false },
    mdastPlugins: [htmlAsText],
    hastPlugins: [imagesAsText, safeLinks(from), cellAlignment],
  });
  return html.replace(/<table>[\s\S]*?<\/table>/g, (table) => `<div class="table">${labelCells(table)}</div>`);
}
