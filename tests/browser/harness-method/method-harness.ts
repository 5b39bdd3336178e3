import '../../../display/parts/no-eval.ts';
import { html, render, type TemplateResult } from 'lit';
import type { DocumentChangedEvent } from '../../../display/formulas/document-changed.ts';
import type { EditorContext } from '../../../display/formulas/editor-context.ts';
import '../../../display/formulas/ingredient-editor.ts';
import '../../../display/formulas/method-editor.ts';
import '../../../display/formulas/product-editor.ts';
import '../../../display/formulas/side-preps-editor.ts';
import '../../../display/formulas/takes-back-editor.ts';
import { withValueAt, type Inwards } from '../../../display/desk/inwards.ts';
import { showLook, type Look } from '../../../display/parts/look.ts';
import type { BookEntry } from '../../../shared/book/book-api.ts';
import { formulaFaults, ingredientFaults, productFaults } from '../../../shared/documents/book-faults.ts';
import type { BakehouseFile } from '../../../shared/documents/bakehouse-file.ts';
import {
  formulaSchema,
  ingredientSchema,
  productSchema,
  type Formula,
  type Ingredient,
  type Product,
} from '../../../shared/documents/formula.ts';
import type { FileFault } from '../../../shared/documents/kitchen-faults.ts';
import { formFaults } from '../../../shared/documents/shape-faults.ts';

/** What is edited on the page. */
export type Shown = 'method' | 'product' | 'ingredient' | 'sides';

/** What a test puts on the page: one document of a bakehouse, with its editor. */
export interface StagedMethod {
  readonly file: BakehouseFile;
  readonly shown: Shown;
  readonly id: string;
  readonly look?: Look;
  /** Takes the place of the file's document. */
  readonly document?: Formula | Product | Ingredient;
}

/** What the test calls in the page. */
export interface MethodHarness {
  show(staged: StagedMethod): Promise<void>;
  /** The document as it stands after all edits. */
  document(): unknown;
  /** Paths of the edits since it was shown. */
  readonly paths: Inwards[];
  faults(): readonly FileFault[];
  focusFault(path: string): Promise<boolean>;
}

declare global {
  interface Window {
    methodHarness: MethodHarness;
  }
}

let staged: StagedMethod | null = null;
let edited: Formula | Product | Ingredient | null = null;

function faultsNow(): readonly FileFault[] {
  if (staged === null || edited === null) return [];
  const { file, shown } = staged;
  const context = { kitchen: file.kitchen, ingredients: file.ingredients, formulas: file.formulas };
  switch (shown) {
    case 'method':
    case 'sides': {
      const parsed = formulaSchema.safeParse(edited);
      return parsed.success ? formulaFaults(parsed.data, context) : formFaults('formula', parsed.error);
    }
    case 'product': {
      const parsed = productSchema.safeParse(edited);
      return parsed.success ? productFaults(parsed.data, context) : formFaults('product', parsed.error);
    }
    case 'ingredient': {
      const parsed = ingredientSchema.safeParse(edited);
      return parsed.success ? ingredientFaults(parsed.data, context) : formFaults('ingredient', parsed.error);
    }
  }
}

function entriesOf({ formulas }: BakehouseFile): readonly BookEntry[] {
  const common = { version: 1, isArchived: false, atMs: null, hydrationPct: null, ingredientIds: [], products: [] };
  return formulas.map(({ id, name, letters, kind }) => ({ id, name, letters, kind, ...common }));
}

function editor(shown: Shown, context: EditorContext): TemplateResult {
  switch (shown) {
    case 'method':
      return html`<method-editor .steps=${(edited as Formula).method} .context=${context}></method-editor>`;
    case 'sides': {
      const { method, sidePreps, takesBack } = edited as Formula;
      return html`<side-preps-editor .preps=${sidePreps} .steps=${method} .context=${context}></side-preps-editor>
        <takes-back-editor .takesBack=${takesBack} .context=${context}></takes-back-editor>`;
    }
    case 'product':
      return html`<product-editor .product=${edited} .context=${context}></product-editor>`;
    case 'ingredient':
      return html`<ingredient-editor .ingredient=${edited} .context=${context}></ingredient-editor>`;
  }
}

function draw(): void {
  if (staged === null) return;
  const { file, shown } = staged;
  const context: EditorContext = {
    kitchen: file.kitchen,
    house: file.house,
    ingredients: file.ingredients,
    entries: entriesOf(file),
    formulaOf: (id) => file.formulas.find((formula) => formula.id === id) ?? null,
    faults: faultsNow(),
  };
  render(
    html`<main>
      <h1>${shown}</h1>
      <h2>Draft</h2>
      ${editor(shown, context)}
    </main>`,
    document.body,
  );
}

document.body.addEventListener('document-changed', (event: DocumentChangedEvent) => {
  edited = withValueAt(edited, event.path, event.value);
  window.methodHarness.paths.push(event.path);
  draw();
});

window.methodHarness = {
  paths: [],
  async show(next) {
    staged = next;
    showLook(next.look ?? 'day');
    const { file, shown, id } = next;
    const known = { method: file.formulas, sides: file.formulas, product: file.products, ingredient: file.ingredients }[shown];
    edited = next.document ?? known.find((thing) => thing.id === id) ?? null;
    window.methodHarness.paths.length = 0;
    render(html``, document.body);
    draw();
    await document.fonts.load("700 20px 'Atkinson Hyperlegible Next Variable'");
    await document.fonts.ready;
  },
  document: () => edited,
  faults: faultsNow,
  async focusFault(path) {
    return (await document.querySelector('method-editor')?.focusFault(path)) ?? false;
  },
};
