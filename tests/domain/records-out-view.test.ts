import { describe, expect, test } from 'vitest';
import * as de from '../../display/words/de/records-out.ts';
import * as en from '../../display/words/en/records-out.ts';
import * as fr from '../../display/words/fr/records-out.ts';
import { EXPORT_FORMATS, exportAskedSchema, exportFileName } from '../../shared/records/export-asked.ts';
import { TABLE_NAMES } from '../../shared/records/tables.ts';

describe('RX8 every table is told of in every language', () => {
  test.each([
    ['en', en],
    ['de', de],
    ['fr', fr],
  ])('%s has a sentence for each table and each format, and for nothing else', (_language, { RECORDS_OUT }) => {
    expect(Object.keys(RECORDS_OUT.says)).toEqual(TABLE_NAMES);
    expect(Object.keys(RECORDS_OUT.formats)).toEqual(EXPORT_FORMATS);
  });

  test('a table is asked for as its address says, and its file named after it', () => {
    const asked = exportAskedSchema.parse({ table: 'ingredient_lots', from: '2026-03-01', to: '2026-03-31' });
    expect(asked.format).toBe('csv');
    expect(exportFileName(asked)).toBe('ovenward-ingredient-lots-2026-03-01-to-2026-03-31.csv');
    expect(exportFileName({ table: 'days', format: 'jsonl' })).toBe('ovenward-days.jsonl');
  });
});
