import { formulaFaults, productFaults } from '../../shared/documents/book-faults.ts';
import type { BookContext, KnownFormula } from '../../shared/documents/book-lookup.ts';
import { formulaSchema, productSchema } from '../../shared/documents/formula.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { formFaults } from '../../shared/documents/shape-faults.ts';
import { productPath, type BookDocument } from './formula-draft.ts';

/** What is wrong with a draft. One whose shape is wrong cannot even be sent. */
export interface DraftCheck {
  readonly isSendable: boolean;
  readonly faults: readonly FileFault[];
}

/** What the house would say of a draft, said while it is typed. Paths begin with `formula` and `products[n]`. */
export function checkDraft({ formula, products }: BookDocument, context: BookContext): DraftCheck {
  const parsed = formulaSchema.safeParse(formula);
  const faults = parsed.success ? formulaFaults(parsed.data, context) : formFaults('formula', parsed.error);
  const formulas: readonly KnownFormula[] = [...context.formulas.filter(({ id }) => id !== formula.id), formula];
  let isSendable = parsed.success;
  for (const [index, product] of products.entries()) {
    const parsedProduct = productSchema.safeParse(product);
    if (!parsedProduct.success) {
      isSendable = false;
      faults.push(...formFaults(`products[${index}]`, parsedProduct.error));
      continue;
    }
    // A method that has no shape yet is nothing that a product's way could be held against.
    if (!parsed.success) continue;
    for (const fault of productFaults(parsedProduct.data, { ...context, formulas }))
      faults.push({ ...fault, path: productPath(fault.path, index) });
  }
  return { isSendable, faults };
}

/** What the house has said, beside what the page finds itself. */
export function withTold(check: DraftCheck, told: readonly FileFault[]): DraftCheck {
  const others = told.filter((fault) => !check.faults.some(({ path, message }) => path === fault.path && message === fault.message));
  return others.length === 0 ? check : { ...check, faults: [...check.faults, ...others] };
}
