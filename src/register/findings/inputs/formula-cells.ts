import type { Rule } from '../rule.ts';

/** What a spreadsheet takes for a formula (OWASP, CSV Injection), here before a letter so that numbers pass. */
const FORMULA = /^[\t\r ]*[=+\-@]\s*["(@]*\p{L}/u;

/** Published files are opened by readers, and a cell that begins like a formula is run by their spreadsheet. */
export const formulaCells: Rule = ({ session: { readings } }) => {
  const lines = readings.flatMap(({ line, cells }) =>
    ['exclude', 'note'].some((column) => FORMULA.test(cells[column] ?? '')) ? [line] : [],
  );
  if (lines.length === 0) return undefined;
  return {
    severity: 'warning',
    message: `A spreadsheet would run a cell as a formula: line ${lines.slice(0, 10).join(', ')} of the readings file.`,
    hint: 'Begin the text with a letter instead of =, +, - or @.',
  };
};
