/** Raised whenever the same readings can give another figure: published with every register and page. */
export const ANALYSIS_VERSION = '6';
