/** A cell that a spreadsheet would take for a command begins with one of these. */
const COMMAND = /^[=+\-@\t\r]/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;

/**
 * Rows as comma-separated values: RFC 4180, with a line break CRLF behind every row and quotes where they are needed. A text
 * that a spreadsheet would run as a formula gets an apostrophe before it.
 */
export function csvOf(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  const text = String(value);
  const harmless = COMMAND.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
