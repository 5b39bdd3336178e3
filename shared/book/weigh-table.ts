import { additionG, type FormulaOf } from '../documents/amounts.ts';
import type { Formula, Ingredient, PartItem, Product } from '../documents/formula.ts';
import type { Verb } from '../documents/method.ts';
import { scaledLinesG } from '../floor/weigh-amounts.ts';
import type { SizedPieces } from '../trade/batch-size.ts';
import { roundedLines, roundedTo, scaleFor, type Scales } from '../trade/rounding.ts';
import { lineOf, type LineOf } from './formula-diff.ts';

/** What of a line does not go in with the rest: at which step, and whether it is only kept back for the dough to ask. */
export interface LaterShare {
  readonly verb: Verb;
  readonly g: number;
  readonly divisionG: number;
  readonly isHeldBack: boolean;
}

export interface TableLine {
  readonly of: LineOf;
  /** Rounded to the division of the scale that will be used, both in grams. */
  readonly g: number;
  readonly divisionG: number;
  /** On the part's own flour; null where it has none. */
  readonly pct: number | null;
  readonly later: readonly LaterShare[];
}

export interface TablePart {
  readonly name: string;
  readonly role: Formula['parts'][number]['role'];
  readonly lines: readonly TableLine[];
  /** Sum of the lines as they are weighed, in grams. */
  readonly totalG: number;
}

/** What goes on top of the dough's weight, by the piece. */
export interface OnTop {
  readonly of: LineOf;
  readonly productId: string;
  readonly verb: Verb;
  readonly pieces: number;
  readonly eachG: number;
  readonly g: number;
}

/** One batch as it is weighed out. */
export interface WeighTable {
  readonly parts: readonly TablePart[];
  readonly onTop: readonly OnTop[];
}

export interface TableBook {
  readonly formulaOf: FormulaOf;
  readonly ingredients: readonly Ingredient[];
  readonly products: readonly Product[];
  readonly scales: Scales;
}

/** A batch of so many grams of dough as it is weighed out, every weight rounded to its scale. */
export function weighTable(formula: Formula, doughG: number, pieces: readonly SizedPieces[], book: TableBook): WeighTable {
  const kinds = new Map(book.ingredients.map(({ id, kind }) => [id, kind]));
  const scaled = scaledLinesG(formula, doughG);
  const parts = formula.parts.map((part, index) => {
    const grams = scaled[index] ?? [];
    const lines = part.items.map((line, at) => ({
      g: grams[at] ?? 0,
      kind: 'item' in line ? (kinds.get(line.item) ?? 'other') : ('other' as const),
    }));
    const flourG = lines.reduce((sum, { g, kind }) => sum + (kind === 'flour' ? g : 0), 0);
    const isLast = index === formula.parts.length - 1;
    const rounded = roundedLines(lines, book.scales).map(({ g, divisionG }, at): TableLine => {
      const line = part.items[at];
      const later = isLast && line !== undefined ? laterShares(line, g, formula, doughG, book) : [];
      return { of: lineOf(line ?? null), g, divisionG, pct: flourG === 0 ? null : (100 * (lines[at]?.g ?? 0)) / flourG, later };
    });
    return { name: part.name, role: part.role, lines: rounded, totalG: rounded.reduce((sum, { g }) => sum + g, 0) };
  });
  return { parts, onTop: onTopOf(pieces, book) };
}

/** What an addition of the method names of a line; never more of it together than the line is. */
function laterShares(line: PartItem, lineG: number, formula: Formula, doughG: number, book: TableBook): readonly LaterShare[] {
  let leftG = lineG;
  return formula.method.flatMap((step) =>
    step.additions
      .filter((addition) => addition.gPerPiece === undefined && isOf(line, addition))
      .flatMap((addition) => {
        const wantedG = additionG(addition, formula, doughG, null, book.formulaOf, book.ingredients).grams;
        const share = Math.min(leftG, addition.pct === undefined ? leftG : wantedG);
        leftG -= share;
        if (!(share > 0)) return [];
        const divisionG = scaleFor(share, book.scales);
        return [{ verb: step.verb, g: roundedTo(share, divisionG), divisionG, isHeldBack: addition.heldBack }];
      }),
  );
}

function isOf(line: PartItem, addition: Formula['method'][number]['additions'][number]): boolean {
  if ('item' in line) return addition.item === line.item;
  return 'formula' in line && addition.formula === line.formula;
}

function onTopOf(pieces: readonly SizedPieces[], book: TableBook): readonly OnTop[] {
  return pieces.flatMap(({ productId, pieces: count }) => {
    const product = book.products.find(({ id }) => id === productId);
    return (product?.way ?? []).flatMap(({ verb, additions }) =>
      additions.flatMap(({ item, formula, gPerPiece }) => {
        const id = item ?? formula;
        if (gPerPiece === undefined || id === undefined) return [];
        const g = gPerPiece * count;
        const of = { kind: item === undefined ? ('formula' as const) : ('item' as const), id };
        return [{ of, productId, verb, pieces: count, eachG: gPerPiece, g: roundedTo(g, scaleFor(g, book.scales)) }];
      }),
    );
  });
}
