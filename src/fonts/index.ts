/**
 * The fonts of a site. Imported by its name in package.json, `lagfolio/fonts`, so that it finds its packages wherever
 * pages are bundled.
 */
import { once } from '../model/once.ts';
import { fontFiles, type FontFile } from './faces.ts';
import { lettersOf } from './letters.ts';
import { lettersOfScript } from './subset.ts';

export { fontBytes, licenceText } from './subset.ts';

/** All that come with the texts of a publication: letters that none of the fonts has are shown in the reader's own. */
export const fontsFor = once((texts: object): readonly FontFile[] => fontFiles(lettersOf(texts), lettersOfScript));
