import { takenByFormula, takenByProduct } from '../documents/broken-by.ts';
import { newestFormula } from './contents.ts';
import type { RecordedEvent } from './events.ts';
import { productsInForce } from './book-of.ts';
import { versionKey, type FloorState, type Workpiece } from './state.ts';

/** Versions of documents by their keys, such as `country@2`. */
export interface ScreenDocuments {
  readonly formulas: ReadonlySet<string>;
  readonly products: ReadonlySet<string>;
}

/**
 * What walls, phones and stations get of a state: everything but the formulas and products that nothing on the floor has
 * to do with, and the lists of their versions. A house's whole book stays where it is.
 */
export function forScreens(state: FloorState): FloorState {
  const { formulas, products } = screenDocuments(state);
  return {
    ...state,
    formulas: only(state.formulas, formulas),
    products: only(state.products, products),
    formulaHistory: {},
    productHistory: {},
  };
}

/**
 * The versions that screens need: those that workpieces began with, the newest of their formulas with their products, and
 * the newest of everything that these take from, at any depth.
 */
export function screenDocuments(state: FloorState): ScreenDocuments {
  const formulas = new Set<string>();
  const products = new Set<string>();
  const find = newestFormula(state);
  const waiting: string[] = [];
  const worked = new Set<string>();
  for (const workpiece of rememberedWorkpieces(state)) {
    const key = versionKey(workpiece.formulaId, workpiece.formulaVersion);
    const own = state.formulas[key];
    if (own !== undefined && !formulas.has(key)) waiting.push(...takenByFormula(own));
    formulas.add(key);
    worked.add(workpiece.formulaId);
    for (const productKey of productKeysOf(workpiece)) {
      const product = state.products[productKey];
      if (product !== undefined && !products.has(productKey)) waiting.push(...takenByProduct(product));
      products.add(productKey);
    }
  }
  for (const product of productsInForce(state)) {
    if (!worked.has(product.formula)) continue;
    products.add(versionKey(product.id, state.productVersions[product.id] ?? 0));
    waiting.push(...takenByProduct(product));
  }
  waiting.push(...worked);
  const seen = new Set<string>();
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    const formula = find(id);
    if (formula === null) continue;
    formulas.add(versionKey(id, state.formulaVersions[id] ?? 0));
    waiting.push(...takenByFormula(formula));
  }
  return { formulas, products };
}

/** Whether screens that had what they need would lack documents after some events: then the news alone does not do. */
export function lacksDocuments(before: ScreenDocuments, after: ScreenDocuments, events: readonly RecordedEvent[]): boolean {
  const formulas = new Set(before.formulas);
  const products = new Set(before.products);
  for (const { event } of events) {
    if (event.type === 'formulaAdopted') formulas.add(versionKey(event.formula.id, event.version));
    if (event.type === 'productAdopted') products.add(versionKey(event.product.id, event.version));
  }
  return [...after.formulas].some((key) => !formulas.has(key)) || [...after.products].some((key) => !products.has(key));
}

/** Whether an event can change which documents screens need; all others are about workpieces that are there. */
export function changesScreenDocuments({ event }: RecordedEvent): boolean {
  switch (event.type) {
    case 'workpiecePlanned':
    case 'formulaAdopted':
    case 'productAdopted':
      return true;
    default:
      return false;
  }
}

/** What is on the floor or was lately, and what an undo would put back there. */
function rememberedWorkpieces(state: FloorState): readonly Workpiece[] {
  const undone = Object.values(state.undo).flatMap(({ before }) => Object.values(before));
  return [...Object.values(state.workpieces), ...undone.filter((workpiece) => workpiece !== null)];
}

function productKeysOf({ productId, productVersion, cuts }: Workpiece): readonly string[] {
  const own = productId === null || productVersion === null ? [] : [versionKey(productId, productVersion)];
  return [...own, ...cuts.map((cut) => versionKey(cut.productId, cut.productVersion))];
}

function only<Document>(documents: Readonly<Record<string, Document>>, keys: ReadonlySet<string>): Readonly<Record<string, Document>> {
  return Object.fromEntries(Object.entries(documents).filter(([key]) => keys.has(key)));
}
