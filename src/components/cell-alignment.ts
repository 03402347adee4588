import { defineHastPlugin } from 'satteri';

/** Column alignment of Markdown tables as a class: the pages' content policy refuses style attributes. */
export const cellAlignment = defineHastPlugin({
  name: 'cell-alignment',
  element: {
    filter: ['td', 'th'],
    visit(node, context) {
      const align = /text-align:\s*(left|right|center)/.exec(String(node.properties?.['style'] ?? ''))?.[1];
      if (align === undefined) return;
      context.setProperty(node, 'style', null);
      context.setProperty(node, 'className', [`align-${align}`]);
    },
  },
});
