import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvOf } from '../../shared/csv.ts';
import { readCsv } from './support/read-csv.ts';

describe('Q16 comma-separated values', () => {
  test('the examples of RFC 4180, section 2: a line break and a quote within a cell, a row ends with CRLF', () => {
    expect(csvOf([['aaa', 'b\r\nbb', 'ccc']])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvOf([['aaa', 'b"bb', 'ccc']])).toBe('aaa,"b""bb",ccc\r\n');
    expect(
      csvOf([
        ['field_name', 'with, comma'],
        [1.5, null],
      ]),
    ).toBe('field_name,"with, comma"\r\n1.5,\r\n');
  });

  test('whatever a cell says, a reader of the RFC’s grammar has it back', () => {
    const cell = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('a"b', 'c,d', 'e\r\nf', '""', ','));
    const rows = fc
      .integer({ min: 1, max: 5 })
      .chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }));
    fc.assert(
      fc.property(rows, (written) => {
        const read = readCsv(csvOf(written));
        expect(read.map((row) => row.map((one) => one.replace(/^'(?=[=+\-@\t\r\n＝＋－＠])/u, '')))).toEqual(written);
      }),
    );
  });

  test('no cell begins a formula: equals, plus, minus, at, tab and line breaks (OWASP, "CSV Injection", from memory), wide ones as well', () => {
    for (const first of ['=', '+', '-', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠']) {
      const [[read]] = readCsv(csvOf([[`${first}HYPERLINK("x")`]])) as [[string]];
      expect(read).toBe(`'${first}HYPERLINK("x")`);
    }
    expect(csvOf([[-4.5, 'wheat']])).toBe('-4.5,wheat\r\n');
  });
});
