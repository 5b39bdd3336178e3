/** A field of a row as it was meant, without the quotes that it stood in. */
export interface DelimitedRow {
  /** Line of the text on which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
  /** The column, from 1, whose quotes do not end, or end before the cell does; null where the row is well written. */
  readonly badQuoteColumn: number | null;
  /** As it stood, without its line break. */
  readonly raw: string;
}

const QUOTE = '"';
const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Rows of comma-separated values (RFC 4180), of the same with semicolons, or of what a spreadsheet puts on the clipboard
 * (tabs), whichever the first line shows. Any line break will do, and the last one may be missing. Rows with nothing in them are left out.
 */
export function delimitedRows(text: string): readonly DelimitedRow[] {
  const bare = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  const delimiter = delimiterOf(bare);
  const rows: DelimitedRow[] = [];
  for (let at = 0, line = 1; at < bare.length;) {
    const { row, nextAt } = rowFrom(bare, at, line, delimiter);
    line += lineBreaksIn(bare.slice(at, nextAt));
    at = nextAt;
    if (row.badQuoteColumn !== null || row.cells.some((cell) => cell.trim() !== '')) rows.push(row);
  }
  return rows;
}

/** What parts the cells of a text's first written line, outside quotes. */
function delimiterOf(text: string): string {
  const first = text.split(/\r\n|\n|\r/).find((line) => line.trim() !== '') ?? '';
  const bare = first.replace(/"(?:[^"]|"")*"/g, '');
  return ['\t', ';'].find((delimiter) => bare.includes(delimiter)) ?? ',';
}

interface CellRead {
  readonly cell: string;
  readonly isBad: boolean;
  readonly nextAt: number;
}

function rowFrom(text: string, fromAt: number, line: number, delimiter: string): { readonly row: DelimitedRow; readonly nextAt: number } {
  const cells: string[] = [];
  let badQuoteColumn: number | null = null;
  let at = fromAt;
  for (;;) {
    const read = text[at] === QUOTE ? quotedCell(text, at, delimiter) : plainCell(text, at, delimiter);
    cells.push(read.cell);
    if (read.isBad) badQuoteColumn ??= cells.length;
    at = read.nextAt;
    if (text[at] !== delimiter) break;
    at += 1;
  }
  return { row: { line, cells, badQuoteColumn, raw: text.slice(fromAt, at) }, nextAt: behindLineBreak(text, at) };
}

function plainCell(text: string, fromAt: number, delimiter: string): CellRead {
  const nextAt = cellEnd(text, fromAt, delimiter);
  return { cell: text.slice(fromAt, nextAt), isBad: false, nextAt };
}

function quotedCell(text: string, fromAt: number, delimiter: string): CellRead {
  let cell = '';
  let at = fromAt + 1;
  for (;;) {
    const quoteAt = text.indexOf(QUOTE, at);
    // A quote that does not end with a cell has swallowed nothing: the row ends with its line.
    if (quoteAt === -1) return { ...plainCell(text, fromAt, delimiter), isBad: true };
    cell += text.slice(at, quoteAt);
    if (text[quoteAt + 1] !== QUOTE) {
      const nextAt = cellEnd(text, quoteAt + 1, delimiter);
      const behind = text.slice(quoteAt + 1, nextAt);
      if (behind.trim() === '') return { cell, isBad: false, nextAt };
      return { ...plainCell(text, fromAt, delimiter), isBad: true };
    }
    cell += QUOTE;
    at = quoteAt + 2;
  }
}

function cellEnd(text: string, fromAt: number, delimiter: string): number {
  let at = fromAt;
  while (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') at += 1;
  return at;
}

function behindLineBreak(text: string, at: number): number {
  if (text[at] === '\r' && text[at + 1] === '\n') return at + 2;
  return at < text.length ? at + 1 : at;
}

function lineBreaksIn(text: string): number {
  return text.match(/\r\n|\n|\r/g)?.length ?? 0;
}
