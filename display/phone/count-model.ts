import type { Step } from '../../shared/documents/method.ts';
import { versionKey, type FloorState, type Workpiece } from '../../shared/floor/state.ts';
import { productOf } from '../../shared/floor/way.ts';

/** One product of a divide, to be counted. */
export interface Countable {
  readonly productId: string;
  readonly name: string;
  readonly planned: number;
  readonly pieceG: number;
}

/** What a divide is to be counted for, of one product too; nothing at any other step. */
export function countables(state: FloorState, workpiece: Workpiece, action: Step): readonly Countable[] {
  if (action.verb !== 'divide') return [];
  const product = productOf(state, workpiece);
  if (product !== null)
    return workpiece.pieces === null
      ? []
      : [{ productId: product.id, name: product.name, planned: workpiece.pieces, pieceG: product.pieceG }];
  return workpiece.cuts.map((cut) => {
    const known = state.products[versionKey(cut.productId, cut.productVersion)];
    return { productId: cut.productId, name: known?.name ?? cut.productId, planned: cut.pieces, pieceG: known?.pieceG ?? 0 };
  });
}

/** Dough that so many pieces of each need, in grams. What was not counted is as planned. */
export function neededG(items: readonly Countable[], counts: ReadonlyMap<string, number>): number {
  return items.reduce((sum, item) => sum + item.pieceG * (counts.get(item.productId) ?? item.planned), 0);
}

/** The cuts as counted; a product of which there is not one piece is no cut. */
export function countedCuts(items: readonly Countable[], counts: ReadonlyMap<string, number>): { productId: string; pieces: number }[] {
  return items
    .map((item) => ({ productId: item.productId, pieces: counts.get(item.productId) ?? item.planned }))
    .filter((cut) => cut.pieces > 0);
}
