import XMLBuilder from 'fast-xml-builder';

const builder = new XMLBuilder({ ignoreAttributes: false, attributeNamePrefix: '@', format: true, indentBy: '  ' });

/** XML of plain data: elements by name, lists for repeated ones, attributes with `@`, text in `#text`. */
export function renderXml(document: object): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${String(builder.build(document))}`;
}
