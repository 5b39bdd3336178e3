/** A cell: text, a number with a point, or nothing. */
export type CsvCell = string | number | null;

/** What spreadsheets take for the beginning of a formula. */
const BEGINS_FORMULA = /^[=+\-@\t\r\n＝＋－＠]/u;

/**
 * Rows as RFC 4180 has them: commas, CRLF after every row, quotes where they are needed. Text that a spreadsheet would reckon
 * as a formula gets an apostrophe before it; numbers stay as they are.
 */
export function csvOf(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(cellOf).join(',')}\r\n`).join('');
}

function cellOf(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const harmless = BEGINS_FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
