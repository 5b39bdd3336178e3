import { csvOf } from '../../shared/book/csv.ts';
import type { WeighTable } from '../../shared/book/weigh-table.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import { SHEET } from '../words/book.ts';
import { VERBS } from '../words/verbs.ts';
import type { EditorContext } from './editor-context.ts';
import { lineName } from './line-names.ts';

/** Weigh-outs as a file for a spreadsheet: one row a line, weights in grams with a point, lot numbers left blank. */
export function sheetCsv(tables: readonly WeighTable[], formula: Formula, version: number | null, context: EditorContext): string {
  const rows = tables.flatMap(({ parts, onTop }, index) => {
    const before = [formula.name, version ?? SHEET.unsaved, index + 1];
    const lines = parts.flatMap((part) =>
      part.lines.map(({ of, g, divisionG, pct, later }) => {
        const notes = later.map((share) => (share.isHeldBack ? SHEET.heldBack : SHEET.later)(`${share.g} g`, VERBS[share.verb].running));
        return [
          ...before,
          part.name,
          lineName(of, context),
          g,
          divisionG,
          pct === null ? '' : Number(pct.toFixed(2)),
          notes.join('; '),
          '',
        ];
      }),
    );
    const tops = onTop.map(({ of, g, verb }) => [...before, SHEET.onTop, lineName(of, context), g, '', '', VERBS[verb].running, '']);
    return [...lines, ...tops];
  });
  return csvOf([Object.values(SHEET.columns), ...rows]);
}
