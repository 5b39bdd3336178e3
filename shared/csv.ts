/** A cell: text, a number with a point, or nothing. */
export type CsvCell = string | number | null;

/** What spreadsheets take for the beginning of a formula. */
const BEGINS_FORMULA = /^[=+\-@\t\r\n＝＋－＠]/u;
/** What is not in a cell that may stand as it is: most of a million cells are told apart by one look. */
const IS_NOT_PLAIN = /^[=+\-@\t＝＋－＠]|[",\r\n]/u;

/**
 * Rows as RFC 4180 has them: commas, CRLF after every row, quotes where they are needed. Text that a spreadsheet would reckon
 * as a formula gets an apostrophe before it; numbers stay as they are.
 */
export function csvOf(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

/** One cell as it stands between commas, quoted where it has to be. */
export function csvCell(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  if (!IS_NOT_PLAIN.test(cell)) return cell;
  const harmless = BEGINS_FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
