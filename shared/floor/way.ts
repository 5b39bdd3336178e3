import type { Product } from '../documents/formula.ts';
import type { Step } from '../documents/method.ts';
import { assert } from '../result.ts';
import { versionKey, type FloorState, type Workpiece } from './state.ts';

/** The product that the workpiece becomes, in the version it began with; null before a divide into several. */
export function productOf(state: FloorState, workpiece: Workpiece): Product | null {
  if (workpiece.productId === null || workpiece.productVersion === null) return null;
  const product = state.products[versionKey(workpiece.productId, workpiece.productVersion)];
  assert(product !== undefined, `product ${workpiece.productId}@${workpiece.productVersion} is not in the state`);
  return product;
}

/**
 * The steps that a workpiece goes through, first to last: a cut follows its product's way, a batch its formula's
 * method, and where it becomes one product only, that product's way without changing its tag.
 */
export function wayOf(state: FloorState, workpiece: Workpiece): readonly Step[] {
  const product = productOf(state, workpiece);
  if (workpiece.kind === 'cut' || workpiece.kind === 'load') {
    assert(product !== null, `${workpiece.tag} is a ${workpiece.kind} without a product`);
    return product.way;
  }
  const formula = state.formulas[versionKey(workpiece.formulaId, workpiece.formulaVersion)];
  assert(formula !== undefined, `formula ${workpiece.formulaId}@${workpiece.formulaVersion} is not in the state`);
  return product === null ? formula.method : [...formula.method, ...product.way];
}

/** Name to show for a workpiece: its product's, or its formula's while it can become several. */
export function nameOf(state: FloorState, workpiece: Workpiece): string {
  return (
    productOf(state, workpiece)?.name ??
    state.formulas[versionKey(workpiece.formulaId, workpiece.formulaVersion)]?.name ??
    workpiece.formulaId
  );
}

/** Index of the step that stands first: the earliest that is neither done nor skipped. The way's length where all are. */
export function positionOf(way: readonly Step[], workpiece: Workpiece): number {
  const index = way.findIndex((step) => {
    const life = workpiece.steps[step.id];
    return life === undefined || life.status === 'started';
  });
  return index === -1 ? way.length : index;
}
