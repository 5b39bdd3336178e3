import type { BookIndex } from '../../shared/book/book-api.ts';
import { overallOf, type Overall } from '../../shared/book/overall.ts';
import type { BookContext, KnownFormula } from '../../shared/documents/book-lookup.ts';
import type { Formula } from '../../shared/documents/formula.ts';
import type { House } from '../../shared/documents/house.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import type { EditorContext } from './editor-context.ts';
import { checkDraft, withTold } from './formula-check.ts';
import type { FormulaDraft } from './formula-draft.ts';

/** What a draft is looked at with. */
export interface DraftAround {
  readonly kitchen: Kitchen;
  readonly house: House;
  readonly index: BookIndex;
  readonly others: ReadonlyMap<string, Formula>;
}

/** A draft with everything that follows from it. */
export interface LookedAt {
  readonly context: EditorContext;
  readonly overall: Overall | null;
  readonly isSendable: boolean;
}

/** Looks at drafts, and again only where something has changed. */
export class DraftLook {
  #around: DraftAround | null = null;
  #book: BookContext | null = null;
  #draft: FormulaDraft | null = null;
  #seen: LookedAt | null = null;

  /** What is wrong with a draft, and what it comes to. The context stays the same object while nothing in it changes. */
  at(draft: FormulaDraft, around: DraftAround): LookedAt {
    const isSameAround = this.#around !== null && isSame(this.#around, around);
    if (this.#seen !== null && isSameAround && draft === this.#draft) return this.#seen;
    const book = this.#book !== null && isSameAround ? this.#book : bookOf(around);
    const check = withTold(checkDraft(draft.mine, book), draft.told);
    const before = isSameAround ? this.#seen?.context : undefined;
    const context =
      before !== undefined && isSameList(before.faults, check.faults) ? before : { ...contextOf(around), faults: check.faults };
    const overall = overallOf(draft.mine.formula, context.formulaOf, around.index.ingredients);
    this.#around = around;
    this.#book = book;
    this.#draft = draft;
    this.#seen = { context, overall: overall.ok ? overall.value : null, isSendable: check.isSendable };
    return this.#seen;
  }
}

/** What forms need beside a draft. */
export function contextOf({ kitchen, house, index, others }: DraftAround): EditorContext {
  return {
    kitchen,
    house,
    ingredients: index.ingredients,
    entries: index.entries.filter(({ isArchived }) => !isArchived),
    formulaOf: (id) => others.get(id) ?? null,
    faults: [],
  };
}

function bookOf({ kitchen, index, others }: DraftAround): BookContext {
  const formulas = index.entries
    .filter(({ isArchived }) => !isArchived)
    .map(({ id, letters, kind }): KnownFormula => others.get(id) ?? { id, letters, kind });
  return { kitchen, ingredients: index.ingredients, formulas };
}

function isSame(a: DraftAround, b: DraftAround): boolean {
  return a.kitchen === b.kitchen && a.house === b.house && a.index === b.index && a.others === b.others;
}

function isSameList(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
