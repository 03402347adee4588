/** Where workbooks are kept that sessions were imported from, as published, and how they may be called. */
export const WORKBOOKS = 'data/sources';
export const WORKBOOK_NAME = /^[a-z0-9][a-z0-9-]*\.(?:xlsx|xlsm|xls|ods|csv|tsv|txt)$/;
