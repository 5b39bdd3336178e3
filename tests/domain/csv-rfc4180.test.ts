import { describe, expect, test } from 'vitest';
import { csvOf } from '../../shared/csv.ts';
import { readCsv } from './support/read-csv.ts';

const CRLF = '\r\n';

/** The examples of RFC 4180 (October 2005), section 2, by their numbers there; from memory, <CRLF> written out. What a row says, and how. */
const EXAMPLES: readonly { readonly rule: string; readonly text: string; readonly rows: readonly (readonly string[])[] }[] = [
  {
    rule: '1: each record on a line of its own, ended by CRLF',
    text: `aaa,bbb,ccc${CRLF}zzz,yyy,xxx${CRLF}`,
    rows: [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  },
  {
    rule: '3: a header with names for the fields, in the same form',
    text: `field_name,field_name,field_name${CRLF}aaa,bbb,ccc${CRLF}zzz,yyy,xxx${CRLF}`,
    rows: [
      ['field_name', 'field_name', 'field_name'],
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  },
  {
    rule: '4: fields between commas, spaces a part of them, no comma after the last',
    text: `aaa, bbb ,ccc${CRLF}`,
    rows: [['aaa', ' bbb ', 'ccc']],
  },
  {
    rule: '5: fields may be in quotes or not',
    text: `"aaa","bbb","ccc"${CRLF}zzz,yyy,xxx${CRLF}`,
    rows: [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  },
  {
    rule: '6: line breaks, quotes and commas within quotes',
    text: `"aaa","b${CRLF}bb","ccc"${CRLF}zzz,yyy,xxx${CRLF}`,
    rows: [
      ['aaa', `b${CRLF}bb`, 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  },
  { rule: '7: a quote within quotes is doubled', text: `"aaa","b""bb","ccc"${CRLF}`, rows: [['aaa', 'b"bb', 'ccc']] },
];

describe('RX7 comma-separated values as RFC 4180 has them', () => {
  test.each(EXAMPLES)('rule $rule', ({ text, rows }) => {
    expect(readCsv(text)).toEqual(rows);
    // Ours has quotes only where they are needed, and says the same.
    const written = csvOf(rows);
    expect(readCsv(written)).toEqual(rows);
    expect(written).toBe(text.replaceAll(/"(aaa|bbb|ccc)"/g, '$1'));
  });

  test('rule 2: the last record may go without its line break; ours has one, as every record before it', () => {
    expect(csvOf([['aaa', 'bbb', 'ccc']]).endsWith(CRLF)).toBe(true);
    expect(csvOf([])).toBe('');
  });
});
