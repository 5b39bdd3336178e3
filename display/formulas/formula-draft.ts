import type { BookFormula } from '../../shared/book/book-api.ts';
import { keyOfName } from '../../shared/book/key-of-name.ts';
import type { Formula, Product } from '../../shared/documents/formula.ts';
import type { FileFault } from '../../shared/documents/kitchen-faults.ts';
import { isSameDocument } from '../../shared/documents/same-document.ts';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import { withValueAt, type Inwards } from '../desk/inwards.ts';
import { rebased } from '../desk/rebase.ts';

/** What is edited together: a formula and what is cut of it. Faults' paths lead through it. */
export interface BookDocument {
  readonly formula: Formula;
  readonly products: readonly Product[];
}

/** A formula as somebody edits it, before it is saved. */
export interface FormulaDraft {
  /** What the address calls it: the formula's id, or the name of a new one's place. */
  readonly key: string;
  /** 0: nobody has saved it yet. */
  readonly version: number;
  /** By product; one that is missing is new. */
  readonly productVersions: Readonly<Record<string, number>>;
  /** As it was when the editing began; of a new one, as it was proposed. */
  readonly base: BookDocument;
  readonly mine: BookDocument;
  /** What the house said of it, until it is edited again. */
  readonly told: readonly FileFault[];
}

/** What the page edits of a formula in force. */
export function documentOf(loaded: BookFormula): BookDocument {
  return { formula: loaded.formula, products: loaded.products.map(({ product }) => product) };
}

/** A draft of a formula in force that nothing is changed in yet. */
export function draftOf(loaded: BookFormula): FormulaDraft {
  const document = documentOf(loaded);
  return { key: loaded.formula.id, version: loaded.version, productVersions: versionsOf(loaded), base: document, mine: document, told: [] };
}

/** A draft of a formula that is in no book yet. `base` is what the page proposed, `mine` what it begins with. */
export function newDraft(key: string, formula: Formula): FormulaDraft {
  const document: BookDocument = { formula, products: [] };
  return { key, version: 0, productVersions: {}, base: document, mine: document, told: [] };
}

/** The draft with something else at a place of it. A new formula's id follows its name until it is saved. */
export function edited(draft: FormulaDraft, path: Inwards, value: unknown, isTaken: (id: string) => boolean): FormulaDraft {
  const mine = withValueAt(draft.mine, path, value);
  const isNamed = draft.version === 0 && mine.formula.name !== draft.mine.formula.name;
  return { ...draft, mine: isNamed ? withId(mine, keyOfName(mine.formula.name, 'formula', isTaken)) : mine, told: [] };
}

function withId({ formula, products }: BookDocument, id: string): BookDocument {
  return { formula: { ...formula, id }, products: products.map((product) => ({ ...product, formula: id })) };
}

/** Whether anything of it would be lost if it were put back. A new formula is always worth keeping once anything was typed. */
export function isChanged(draft: FormulaDraft): boolean {
  return draft.base !== draft.mine && !isSameDocument(draft.base, draft.mine);
}

/** Whether somebody else has saved the formula, or a product of it, since the draft was begun. */
export function isOvertaken(draft: FormulaDraft, versions: Versions): boolean {
  if (draft.version === 0) return false;
  if ((versions.formulas[draft.key] ?? draft.version) > draft.version) return true;
  return Object.entries(draft.productVersions).some(([id, version]) => (versions.products[id] ?? version) > version);
}

/** Versions in force, by id. */
export interface Versions {
  readonly formulas: Readonly<Record<string, number>>;
  readonly products: Readonly<Record<string, number>>;
}

/** The draft's changes on top of what is in force now. */
export function onNewer(draft: FormulaDraft, loaded: BookFormula): FormulaDraft {
  const theirs = documentOf(loaded);
  const mine = rebased(draft.base, draft.mine, theirs);
  return { ...draft, version: loaded.version, productVersions: versionsOf(loaded), base: theirs, mine, told: [] };
}

/** What is to be said to the house so that the draft is in force, in order: the formula, then each product that changed. */
export function commandsOf(draft: FormulaDraft): readonly ClientCommand[] {
  const { base, mine, version, productVersions } = draft;
  const commands: ClientCommand[] = [];
  if (version === 0 || !isSameDocument(base.formula, mine.formula))
    commands.push({ type: 'adoptFormula', fromVersion: version, formula: mine.formula });
  for (const product of mine.products) {
    const before = base.products.find(({ id }) => id === product.id);
    if (before !== undefined && isSameDocument(before, product)) continue;
    commands.push({ type: 'adoptProduct', fromVersion: productVersions[product.id] ?? 0, product });
  }
  return commands;
}

/** The draft once the house has taken one of its commands: that part is in force now. */
export function taken(draft: FormulaDraft, command: ClientCommand): FormulaDraft {
  if (command.type === 'adoptFormula')
    return { ...draft, key: command.formula.id, version: command.fromVersion + 1, base: { ...draft.base, formula: command.formula } };
  if (command.type !== 'adoptProduct') return draft;
  const { product, fromVersion } = command;
  const isKnown = draft.base.products.some(({ id }) => id === product.id);
  const products = isKnown
    ? draft.base.products.map((known) => (known.id === product.id ? product : known))
    : [...draft.base.products, product];
  return {
    ...draft,
    productVersions: { ...draft.productVersions, [product.id]: fromVersion + 1 },
    base: { ...draft.base, products },
  };
}

/** The draft with what the house said of the product or formula that it would not take, at the draft's own paths. */
export function refusedWith(draft: FormulaDraft, command: ClientCommand, faults: readonly FileFault[]): FormulaDraft {
  if (command.type !== 'adoptProduct') return { ...draft, told: faults };
  const index = draft.mine.products.findIndex(({ id }) => id === command.product.id);
  return { ...draft, told: faults.map((fault) => ({ ...fault, path: productPath(fault.path, index) })) };
}

/** `product.pieceG` as the draft has it: `products[2].pieceG`. */
export function productPath(path: string, index: number): string {
  return path.replace(/^product(?=[.[]|$)/, `products[${index}]`);
}

function versionsOf(loaded: BookFormula): Readonly<Record<string, number>> {
  return Object.fromEntries(loaded.products.map(({ product, version }) => [product.id, version]));
}
