import type { LineOf } from '../../shared/book/formula-diff.ts';
import { unreachable } from '../../shared/result.ts';
import { SHEET } from '../words/book.ts';
import type { EditorContext } from './editor-context.ts';

/** What a line takes, by name; by its key where the book has none. */
export function lineName(of: LineOf, { ingredients, entries, formulaOf }: EditorContext): string {
  switch (of.kind) {
    case 'item':
      return ingredients.find(({ id }) => id === of.id)?.name ?? of.id;
    case 'formula':
      return SHEET.ofFormula(entries.find(({ id }) => id === of.id)?.name ?? formulaOf(of.id)?.name ?? of.id);
    case 'part':
      return SHEET.ofPart(of.name);
    case 'seed':
      return SHEET.seed;
    default:
      return unreachable(of);
  }
}
