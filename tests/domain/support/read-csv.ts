import { assert } from '../../../shared/result.ts';

/**
 * Reads what the grammar of RFC 4180, section 2, allows, and throws at anything else: `field = escaped / non-escaped`, an
 * escaped one in quotes with every quote in it doubled, rows ended by CRLF.
 */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at < text.length) {
    const [cell, next] = text[at] === '"' ? escapedAt(text, at) : plainAt(text, at);
    row.push(cell);
    if (text[next] === ',') {
      at = next + 1;
      continue;
    }
    assert(text.startsWith('\r\n', next), `a row does not end at ${next}`);
    rows.push(row);
    row = [];
    at = next + 2;
  }
  assert(row.length === 0, 'the last row does not end');
  return rows;
}

function escapedAt(text: string, from: number): readonly [string, number] {
  let cell = '';
  for (let at = from + 1; at < text.length; at += 1) {
    if (text[at] !== '"') cell += text[at] ?? '';
    else if (text[at + 1] === '"') {
      cell += '"';
      at += 1;
    } else return [cell, at + 1];
  }
  throw new Error('a quote is not closed');
}

function plainAt(text: string, from: number): readonly [string, number] {
  const found = /[",\r\n]/.exec(text.slice(from));
  const end = found === null ? text.length : from + found.index;
  assert(text[end] !== '"', `a quote within a plain cell at ${end}`);
  return [text.slice(from, end), end];
}
