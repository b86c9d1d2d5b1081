import { stringify } from 'csv-stringify/sync';

export type Cell = string | number | null;

/**
 * Rows as CSV (RFC 4180) that no spreadsheet executes: a cell that would start a formula is put in as text, with an
 * apostrophe before it. Whole numbers stay numbers, negative ones too.
 * Cells that begin a formula: OWASP, "CSV Injection".
 */
export function csv(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const text = (cell: Cell): string =>
    cell === null ? '' : typeof cell === 'number' ? String(cell) : harmless(cell);
  return stringify([[...columns], ...rows.map((row) => row.map(text))], { record_delimiter: '\r\n' });
}

const startsFormula = /^[\s]*[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20|%]/;

const harmless = (cell: string): string => (startsFormula.test(cell) ? `'${cell}` : cell);
