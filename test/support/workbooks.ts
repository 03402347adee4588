/**
 * Workbooks as literal files: the parts of ECMA-376-1 (18.2, 18.3, 18.8) and OpenDocument 1.3 that hold cells, in ZIP
 * archives whose members are stored, not compressed (APPNOTE 4.3.7, 4.3.12, 4.3.16). No spreadsheet library has a hand
 * in them.
 */
import { crc32 } from 'node:zlib';

/** One archive of these files, in order. */
function zip(files: Readonly<Record<string, string>>): Uint8Array {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const [name, content] of Object.entries(files)) {
    const [path, data] = [Buffer.from(name), Buffer.from(content)];
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(data.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(path.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, path, data]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    central.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x00', 'latin1'), common, tail, path]));
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(central);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(central.length, 8);
  end.writeUInt16LE(central.length, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(offset, 16);
  return new Uint8Array(Buffer.concat([...locals, directory, end]));
}

/** A cell of an .xlsx sheet: text, number, nothing, a number in a format, or XML of its own. */
export type XlsxCell =
  | string
  | number
  | null
  | { readonly v: number; readonly format: string }
  | { readonly xml: string };

export interface XlsxSheet {
  readonly name: string;
  readonly rows: readonly (readonly XlsxCell[])[];
  /** 1-based. */
  readonly hiddenRows?: readonly number[];
  /** `A3:A5`. */
  readonly merged?: readonly string[];
}

const SHEET_MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

export function xlsx(sheets: readonly XlsxSheet[], { date1904 = false } = {}): Uint8Array {
  const formats: string[] = [];
  const formatId = (code: string): number => {
    if (!formats.includes(code)) formats.push(code);
    return formats.indexOf(code) + 1;
  };
  const cellXml = (cell: XlsxCell, at: string): string => {
    if (cell === null) return '';
    if (typeof cell === 'string')
      return `<c r="${at}" t="inlineStr"><is><t xml:space="preserve">${escapeXml(cell)}</t></is></c>`;
    if (typeof cell === 'number') return `<c r="${at}"><v>${cell}</v></c>`;
    if ('xml' in cell) return cell.xml.replace('<c', `<c r="${at}"`);
    return `<c r="${at}" s="${formatId(cell.format)}"><v>${cell.v}</v></c>`;
  };
  const bodies = sheets.map(({ rows, hiddenRows = [], merged = [] }) => {
    const inside = rows.map((cells, row) => {
      const hidden = hiddenRows.includes(row + 1) ? ' hidden="1"' : '';
      return `<row r="${row + 1}"${hidden}>${cells.map((cell, at) => cellXml(cell, `${String.fromCharCode(65 + at)}${row + 1}`)).join('')}</row>`;
    });
    const merges =
      merged.length === 0
        ? ''
        : `<mergeCells count="${merged.length}">${merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`;
    return `<worksheet ${SHEET_MAIN}><sheetData>${inside.join('')}</sheetData>${merges}</worksheet>`;
  });
  return zip({
    '[Content_Types].xml': `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>${sheets.map((_, at) => `<Override PartName="/xl/worksheets/sheet${at + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`).join('')}</Types>`,
    '_rels/.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r1" Type="${REL}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook ${SHEET_MAIN} xmlns:r="${REL}"><workbookPr${date1904 ? ' date1904="1"' : ''}/><sheets>${sheets.map(({ name }, at) => `<sheet name="${escapeXml(name)}" sheetId="${at + 1}" r:id="s${at + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${sheets.map((_, at) => `<Relationship Id="s${at + 1}" Type="${REL}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`).join('')}<Relationship Id="styles" Type="${REL}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `<styleSheet ${SHEET_MAIN}><numFmts count="${formats.length}">${formats.map((code, at) => `<numFmt numFmtId="${164 + at}" formatCode="${escapeXml(code)}"/>`).join('')}</numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="${formats.length + 1}"><xf numFmtId="0"/>${formats.map((_, at) => `<xf numFmtId="${164 + at}" applyNumberFormat="1"/>`).join('')}</cellXfs></styleSheet>`,
    ...Object.fromEntries(bodies.map((body, at) => [`xl/worksheets/sheet${at + 1}.xml`, body])),
  });
}

/**
 * An .ods of one sheet; cells are XML of `table:table-cell`. Its type stands first, as OpenDocument wants it, or as
 * packed again.
 */
export function ods(
  name: string,
  rows: readonly (readonly string[])[],
  type: 'first' | 'last' | 'none' = 'first',
): Uint8Array {
  const mimetype = 'application/vnd.oasis.opendocument.spreadsheet';
  return zip({
    ...(type === 'first' ? { mimetype } : {}),
    'META-INF/manifest.xml':
      '<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"><manifest:file-entry manifest:full-path="/" manifest:media-type="application/vnd.oasis.opendocument.spreadsheet"/><manifest:file-entry manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>',
    'styles.xml':
      '<office:document-styles xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" office:version="1.3"/>',
    'content.xml': `<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" office:version="1.3"><office:body><office:spreadsheet><table:table table:name="${escapeXml(name)}">${rows.map((cells) => `<table:table-row>${cells.join('')}</table:table-row>`).join('')}</table:table></office:spreadsheet></office:body></office:document-content>`,
    ...(type === 'last' ? { mimetype } : {}),
  });
}

export const odsText = (text: string): string =>
  `<table:table-cell office:value-type="string"><text:p>${escapeXml(text)}</text:p></table:table-cell>`;
export const odsNumber = (value: number): string =>
  `<table:table-cell office:value-type="float" office:value="${value}"><text:p>${value}</text:p></table:table-cell>`;
/** `PT00H00M31.482S`, shown otherwise. */
export const odsTime = (duration: string, shown: string): string =>
  `<table:table-cell office:value-type="time" office:time-value="${duration}"><text:p>${shown}</text:p></table:table-cell>`;

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}
