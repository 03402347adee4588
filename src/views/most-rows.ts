/**
 * With more rows than this in its charts and tables together, a page gives its parts pages of their own. A row of a
 * chart is drawn for wide and for narrow columns, and stands in the table behind it: 3 to 4 KB, so that a page of one
 * part stays under 300 KB.
 */
export const MOST_ROWS = 60;

/** Of rows of a table without a chart, at 250 to 500 bytes each. */
export const MOST_LISTED = 400;
