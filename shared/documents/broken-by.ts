import { takenByParts, takenBySteps } from './taken.ts';
import type { Formula, Product } from './formula.ts';
import type { Fault } from './kitchen-faults.ts';
import type { SidePrep } from './method.ts';

/** What rests on the formulas of a book: who takes from which, and which products are made of which. */
export interface BookUse {
  readonly formulasTaking: ReadonlyMap<string, readonly Formula[]>;
  readonly productsOf: ReadonlyMap<string, readonly Product[]>;
  readonly productsTaking: ReadonlyMap<string, readonly Product[]>;
}

/** Looks through formulas in force and their products once. Products of other formulas rest on nothing here. */
export function bookUse(formulas: readonly Formula[], products: readonly Product[]): BookUse {
  const ids = new Set(formulas.map((formula) => formula.id));
  const ours = products.filter((product) => ids.has(product.formula));
  return {
    formulasTaking: byEach(formulas, takenByFormula),
    productsOf: byEach(ours, (product) => [product.formula]),
    productsTaking: byEach(ours, takenByProduct),
  };
}

/** Ids of the formulas that a formula takes from: in its parts, at its steps, as its side preps. */
export function takenByFormula(formula: Formula): readonly string[] {
  return [...new Set([...takenByParts(formula.parts), ...takenBySteps(formula.method), ...preps(formula.sidePreps)])];
}

/** Ids of the formulas that a product takes from at its steps, beside the one that it is made of. */
export function takenByProduct(product: Product): readonly string[] {
  return [...new Set([...takenBySteps(product.way), ...preps(product.sidePreps)])];
}

/**
 * What a formula's next version would break in documents that rest on the one before: formulas that take from it, and its
 * products. What was broken already is no fault of the change.
 */
export function checkBroken(before: Formula, after: Formula, path: string, use: BookUse, fault: Fault): void {
  checkKind(before, after, path, use, fault);
  const products = use.productsOf.get(after.id) ?? [];
  const had = new Set(before.method.map((step) => step.id));
  after.method.forEach((step, index) => {
    if (had.has(step.id)) return;
    const clash = products.find((product) => product.way.some((other) => other.id === step.id));
    if (clash !== undefined) fault(`${path}.method[${index}].id`, { code: 'stepOfProduct', id: step.id, product: clash.id });
  });
  checkStepsGone(before, after, path, products, fault);
  checkLinesGone(before, after, path, products, fault);
}

/** Nothing takes from a formula that is put out of the way; `use` is that of the others. */
export function checkTakers(formula: Formula, path: string, use: BookUse, fault: Fault): void {
  const takers = [...(use.formulasTaking.get(formula.id) ?? []), ...(use.productsTaking.get(formula.id) ?? [])];
  const by = [...new Set(takers.map((taker) => taker.name))];
  if (by.length > 0) fault(path, { code: 'stillNeeded', name: formula.name, by });
}

function checkKind(before: Formula, after: Formula, path: string, use: BookUse, fault: Fault): void {
  if (before.kind === after.kind) return;
  const takers = [...(use.formulasTaking.get(after.id) ?? []), ...(use.productsTaking.get(after.id) ?? [])];
  const by = takers.filter((taker) =>
    after.kind === 'dough' ? true : after.kind === 'ferment' && preps(taker.sidePreps).includes(after.id),
  );
  if (by.length > 0) fault(`${path}.kind`, { code: 'kindNeeded', kind: after.kind, by: by.map((taker) => taker.id) });
}

/** Steps at which a side prep of a product joins, or for which it waits. */
function checkStepsGone(before: Formula, after: Formula, path: string, products: readonly Product[], fault: Fault): void {
  const has = new Set(after.method.map((step) => step.id));
  for (const { id } of before.method) {
    if (has.has(id)) continue;
    const by = products.filter((product) => product.sidePreps.some((prep) => prep.joins === id || prep.notBefore === id));
    if (by.length > 0) fault(`${path}.method`, { code: 'stepNeeded', id, by: by.map((product) => product.id) });
  }
}

/** Lines that say how much of a ferment or a prep goes in at a step of a product's way. */
function checkLinesGone(before: Formula, after: Formula, path: string, products: readonly Product[], fault: Fault): void {
  const has = new Set(takenByParts(after.parts));
  for (const id of new Set(takenByParts(before.parts))) {
    if (has.has(id)) continue;
    const by = products.filter((product) =>
      product.way.some((step) =>
        step.additions.some((addition) => addition.formula === id && addition.pct === undefined && addition.gPerPiece === undefined),
      ),
    );
    if (by.length > 0) fault(`${path}.parts`, { code: 'lineNeeded', id, by: by.map((product) => product.id) });
  }
}

function preps(sidePreps: readonly SidePrep[]): readonly string[] {
  return sidePreps.map((prep) => prep.formula);
}

function byEach<Taker>(takers: readonly Taker[], taken: (taker: Taker) => readonly string[]): ReadonlyMap<string, readonly Taker[]> {
  const map = new Map<string, Taker[]>();
  for (const taker of takers) {
    for (const id of taken(taker)) {
      const known = map.get(id);
      if (known === undefined) map.set(id, [taker]);
      else known.push(taker);
    }
  }
  return map;
}
