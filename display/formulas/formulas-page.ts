import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { BookFormula } from '../../shared/book/book-api.ts';
import type { Formula, Ingredient, Product } from '../../shared/documents/formula.ts';
import { keyOfName } from '../../shared/book/key-of-name.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { faultText } from '../desk/fault-text.ts';
import { withValueAt } from '../desk/inwards.ts';
import type { FloorView } from '../link/floor-link.ts';
import { stillOf } from '../parts/still-of.ts';
import type { LookChoice } from '../parts/look.ts';
import type { ClockSource } from '../parts/ticking-clock.ts';
import { factsOf } from '../phone/floor-facts.ts';
import { FORMULAS, PARTS } from '../words/formulas.ts';
import { refusalWords } from '../words/refusals.ts';
import type { Language } from '../words/page-language.ts';
import { BookDesk, type BookTools } from './book-desk.ts';
import './book-in-out.ts';
import './book-list.ts';
import { contextOf, DraftLook, type DraftAround, type LookedAt } from './context-of.ts';
import type { DocumentChangedEvent } from './document-changed.ts';
import { newDraft, type Versions } from './formula-draft.ts';
import { focusWithin } from './focus-within.ts';
import './formula-desk.ts';
import './formulas-header.ts';
import { formulasPageStyles } from './page-styles.ts';
import './ingredient-editor.ts';
import { asNewFormula, copyOfFormula, newFormula, newProduct, type BookAround } from './new-formula.ts';
import { begunDrafts, freePlace } from './draft-shelf.ts';
import { addressOf, draftKeyOf, newDraftKey, searchOf, type PageAddress, type Section } from './page-address.ts';
import './save-bar.ts';
import type { SaveStanding } from './save-bar.ts';
import type { SaveEvent } from './save-events.ts';
import './totals-strip.ts';

/** An ingredient that is being written on the spot, and the part that it then goes into. */
interface IngredientDraft {
  readonly ingredient: Ingredient;
  readonly isNew: boolean;
  readonly partIndex: number | null;
}

/** The formula book: its list, the formula that is open, and what becomes of what is written. */
@customElement('formulas-page')
export class FormulasPage extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, formulasPageStyles];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) clock: ClockSource | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  @property({ attribute: false }) tools!: BookTools;
  /** The part of the address behind the question mark, as the browser has it. */
  @property({ attribute: false }) search = '';
  @state() private ingredientDraft: IngredientDraft | null = null;
  @state() private compared: readonly [BookFormula, BookFormula] | null = null;
  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement | null;
  private readonly desk = new BookDesk(this, () => this.tools);
  private readonly draftLook = new DraftLook();
  private address: PageAddress = { shows: 'book' };
  /** Every address is opened once, when the kitchen and the book's list are there. */
  private isOpening = true;

  constructor() {
    super();
    this.addEventListener('formula-wanted', ({ formulaId, version }) =>
      this.go({ shows: 'formula', formulaId, version, section: version === null ? 'parts' : 'versions' }),
    );
    this.addEventListener('new-formula-wanted', ({ kind }) => this.go({ shows: 'new', kind, place: 1, section: 'parts' }));
    this.addEventListener('book-wanted', () => this.go({ shows: 'book' }));
    this.addEventListener('import-wanted', () => this.go({ shows: 'inOut' }));
    this.addEventListener('section-chosen', ({ section }) => this.chooseSection(section));
    this.addEventListener('duplicate-wanted', ({ formulaId }) => void this.duplicate(formulaId));
    this.addEventListener('archive-wanted', ({ formulaId, isArchived }) => void this.archive(formulaId, isArchived));
    this.addEventListener('draft-wanted', (event) => void this.openRead(event));
    this.addEventListener('book-changed', () => void this.desk.fetchIndex());
    this.addEventListener('plan-wanted', ({ command }) => void this.tell(command, FORMULAS.planned));
    this.addEventListener('draft-changed', ({ path, value }) => this.desk.edit(path, value));
    this.addEventListener('product-added', () => this.addProduct());
    this.addEventListener('ingredient-wanted', (event) => this.beginIngredient(event));
    this.addEventListener('versions-wanted', ({ leftVersion, rightVersion }) => void this.compare(leftVersion, rightVersion));
    this.addEventListener('save-draft', ({ what }) => void this.decide(what));
    this.addEventListener('fault-chosen', ({ path }) => void this.toFault(path));
  }

  /** Something was written here that nobody has saved. */
  get hasDraft(): boolean {
    return this.desk.hasDraft;
  }

  protected override firstUpdated(): void {
    void this.desk.fetchIndex();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('search')) {
      this.address = addressOf(this.search);
      this.isOpening = true;
      this.said = '';
    }
    const around = this.around();
    if (around === null) return;
    if (this.isOpening) this.open(around);
    if (changed.has('view')) void this.desk.follow(this.versions());
  }

  protected override render(): TemplateResult | typeof nothing {
    const { view, address } = this;
    if (view === null) return nothing;
    const isOpen = address.shows !== 'book';
    const header = html`<header>
      <formulas-header .view=${view} .language=${this.language} .look=${this.look} .isOpen=${isOpen}></formulas-header>
    </header>`;
    const around = this.around();
    const still = this.still(view, around);
    if (still !== null || around === null)
      return html`${header}
        <main>${this.stillWords(still ?? [FORMULAS.loading, ''])}</main>`;
    const looked = this.desk.draft === null ? null : this.draftLook.at(this.desk.draft, around);
    return html`${header}
      <main class=${isOpen ? 'open' : ''}>
        <book-list .index=${around.index} .openId=${address.shows === 'formula' ? address.formulaId : null}></book-list>
        <div class="desk">
          ${this.said === '' ? nothing : html`<p class="said" role="status">${this.said}</p>`} ${this.opened(around, looked)}
        </div>
      </main>
      ${this.foot(looked)}${this.ingredientDialog(around)}`;
  }

  protected override updated(): void {
    if (this.ingredientDraft !== null && this.dialog?.open === false) this.dialog.showModal();
  }

  private opened(around: DraftAround, looked: LookedAt | null): TemplateResult {
    const { address, desk } = this;
    if (address.shows === 'inOut') return html`<book-in-out .index=${around.index} .units=${around.house.units}></book-in-out>`;
    if (address.shows === 'book') return html`${this.stillWords([FORMULAS.chooseTitle, FORMULAS.chooseMore])}${this.begun()}`;
    if (desk.isMissing) return this.stillWords([FORMULAS.missingTitle, FORMULAS.missingMore]);
    if (desk.draft === null || looked === null)
      return desk.isFailed
        ? html`${this.stillWords([FORMULAS.failedTitle, FORMULAS.failedMore])}${this.again()}`
        : this.stillWords([FORMULAS.loadingFormula, '']);
    return html`<formula-desk
      .draft=${desk.draft}
      .loaded=${desk.loaded}
      .overall=${looked.overall}
      .context=${looked.context}
      .section=${address.section}
      .isChanged=${desk.hasDraft}
      .serviceDate=${this.view?.state?.serviceDate ?? ''}
      .compared=${this.compared}
    ></formula-desk>`;
  }

  private foot(looked: LookedAt | null): TemplateResult | typeof nothing {
    const standing = this.standing();
    if (looked === null || this.address.shows === 'book') return nothing;
    return html`<footer>
      <totals-strip .overall=${looked.overall} .units=${looked.context.house.units}></totals-strip>
      <save-bar
        .standing=${standing}
        .isNew=${this.desk.draft?.version === 0}
        .faults=${standing === null ? [] : looked.context.faults.map((fault) => ({ path: fault.path, words: faultText(fault) }))}
      ></save-bar>
    </footer>`;
  }

  private ingredientDialog(around: DraftAround): TemplateResult | typeof nothing {
    const { ingredientDraft } = this;
    if (ingredientDraft === null) return nothing;
    return html`<dialog
      aria-label=${PARTS.ingredientNew}
      @close=${() => (this.ingredientDraft = null)}
      @document-changed=${(event: DocumentChangedEvent) => {
        event.stopPropagation();
        this.ingredientDraft = { ...ingredientDraft, ingredient: withValueAt(ingredientDraft.ingredient, event.path, event.value) };
      }}
    >
      <ingredient-editor
        .ingredient=${ingredientDraft.ingredient}
        .isNew=${ingredientDraft.isNew}
        .context=${contextOf(around)}
      ></ingredient-editor>
      <div class="buttons">
        <button type="button" class="plain" @click=${() => this.dialog?.close()}>${PARTS.cancel}</button>
        <button type="button" class="plain filled" @click=${() => void this.keepIngredient()}>${PARTS.ingredientSave}</button>
      </div>
    </dialog>`;
  }

  private stillWords([title, more]: readonly [string, string]): TemplateResult {
    return html`<div class="still">
      <h2>${title}</h2>
      <p>${more}</p>
    </div>`;
  }

  /** What was begun on this device and nobody has saved: a way back to each. */
  private begun(): TemplateResult | typeof nothing {
    const begun = begunDrafts(this.tools.shelf);
    if (begun.length === 0) return nothing;
    return html`<div class="still begun">
      <h2>${FORMULAS.begun}</h2>
      ${begun.map(
        ({ kind, place, name }) =>
          html`<p>
            <button type="button" class="plain" @click=${() => this.go({ shows: 'new', kind, place, section: 'parts' })}>
              ${name.trim() === '' ? FORMULAS.untitled[kind] : name}
            </button>
          </p>`,
      )}
    </div>`;
  }

  private again(): TemplateResult {
    return html`<p class="still">
      <button
        type="button"
        class="plain"
        @click=${() => {
          this.isOpening = true;
          void this.desk.fetchIndex();
        }}
      >
        ${FORMULAS.tryAgain}
      </button>
    </p>`;
  }

  private still(view: FloorView, around: DraftAround | null): readonly [string, string] | null {
    const refused = stillOf(view);
    if (refused !== null || around !== null) return refused;
    if (this.desk.isFailed && this.desk.index === null) return [FORMULAS.failedTitle, FORMULAS.failedMore];
    if (view.state !== null && view.state.kitchen === null) return [FORMULAS.emptyTitle, FORMULAS.emptyMore];
    return [FORMULAS.loading, ''];
  }

  private around(): DraftAround | null {
    const kitchen = this.view?.state?.kitchen?.document;
    const house = this.view?.state?.house?.document;
    const { index, others } = this.desk;
    return kitchen === undefined || house === undefined || index === null ? null : { kitchen, house, index, others };
  }

  private versions(): Versions {
    const floor = this.view?.state ?? null;
    return { formulas: floor?.formulaVersions ?? {}, products: floor?.productVersions ?? {} };
  }

  private bookAround({ kitchen, index }: DraftAround): BookAround {
    return {
      kitchen,
      ingredients: index.ingredients,
      isTaken: (id) => this.desk.isTaken(id),
      areLettersTaken: (letters) => index.entries.some((entry) => entry.letters === letters && !entry.isArchived),
    };
  }

  private standing(): SaveStanding | null {
    const { desk } = this;
    if (desk.draft === null) return null;
    const version = desk.draft.version + 1;
    const { saving } = desk;
    if (saving.phase === 'saving') return { phase: 'saving', version };
    if (desk.isOvertaken(this.versions())) return { phase: 'overtaken', version };
    switch (saving.phase) {
      case 'unsent':
        return { phase: 'unsent', version };
      case 'forbidden':
        return { phase: 'refused', version, why: FORMULAS.forbidden };
      case 'refused':
        return { phase: 'refused', version, why: `${FORMULAS.refused} ${refusalWords(saving.refusal, this.facts())}` };
      case 'saved':
        return desk.hasDraft ? { phase: 'changed', version } : { phase: 'saved', version: desk.draft.version };
      case 'idle':
        return desk.hasDraft || desk.draft.version === 0 || desk.draft.told.length > 0 ? { phase: 'changed', version } : null;
    }
  }

  private facts(): ReturnType<typeof factsOf> {
    return factsOf(this.view?.state ?? null, this.view?.devices ?? [], this.view?.device?.id ?? null);
  }

  private go(address: PageAddress, how: 'push' | 'replace' = 'push'): void {
    const search = searchOf(address, this.search);
    if (how === 'push') history.pushState(null, '', `${location.pathname}${search}`);
    else history.replaceState(null, '', `${location.pathname}${search}`);
    this.search = search;
  }

  private open(around: DraftAround): void {
    this.isOpening = false;
    const { address } = this;
    const key = draftKeyOf(address);
    if (address.shows === 'new') {
      if (this.desk.draft?.key !== key)
        this.desk.openNew(newDraftKey(address.kind, address.place), () =>
          newDraft(newDraftKey(address.kind, address.place), newFormula(address.kind, this.bookAround(around))),
        );
      return;
    }
    if (address.shows !== 'formula') return void this.desk.open(null);
    if (this.desk.draft?.key !== key) void this.desk.open(address.formulaId).then(() => this.openVersions());
    else void this.openVersions();
  }

  /** The versions section compares the newest with the one asked for, else with the one before. */
  private async openVersions(): Promise<void> {
    const { address, desk } = this;
    const newest = desk.loaded?.newestVersion;
    if (address.shows !== 'formula' || address.section !== 'versions' || newest === undefined) return;
    await this.compare(address.version ?? Math.max(1, newest - 1), newest);
  }

  private async compare(left: number, right: number): Promise<void> {
    const id = this.desk.loaded?.formula.id;
    if (id === undefined) return;
    const [before, after] = await Promise.all([this.tools.store.formula(id, left), this.tools.store.formula(id, right)]);
    if (before.phase === 'here' && after.phase === 'here') this.compared = [before.value, after.value];
  }

  private chooseSection(section: Section): void {
    if ('section' in this.address) this.go({ ...this.address, section }, 'replace');
  }

  private async duplicate(formulaId: string): Promise<void> {
    const around = this.around();
    const fetched = await this.tools.store.formula(formulaId);
    if (around === null || fetched.phase !== 'here') return;
    const copy = copyOfFormula(fetched.value.formula, this.bookAround(around));
    this.openDraft(copy, []);
  }

  private async openRead({ formula, newIngredients, product }: HTMLElementEventMap['draft-wanted']): Promise<void> {
    const around = this.around();
    if (around === null) return;
    for (const ingredient of newIngredients) await this.desk.adoptIngredient(ingredient);
    const read = asNewFormula(formula, this.bookAround(around));
    const products = product === null ? [] : [{ ...product, formula: read.id }];
    this.openDraft(read, products);
  }

  /** Opens a formula that is begun with something in it, at a place of its own: what was begun before stays. */
  private openDraft(formula: Formula, products: readonly Product[]): void {
    const place = freePlace(this.tools.shelf, formula.kind);
    if (place === null) {
      this.said = FORMULAS.tooManyBegun;
      return;
    }
    const draft = newDraft(newDraftKey(formula.kind, place), formula);
    this.desk.openNew(draft.key, () => draft);
    this.desk.replaceDraft({ ...draft, mine: { formula, products } });
    this.go({ shows: 'new', kind: formula.kind, place, section: 'parts' });
  }

  private async archive(formulaId: string, isArchived: boolean): Promise<void> {
    await this.tell({ type: 'archiveFormula', formulaId, isArchived }, '');
    await this.desk.fetchIndex();
    if (this.desk.loaded?.formula.id === formulaId) await this.desk.open(formulaId);
  }

  private async tell(command: Parameters<BookDesk['give']>[0], done: string): Promise<void> {
    const given = await this.desk.give(command);
    switch (given.phase) {
      case 'done':
        this.said = done;
        return;
      case 'refused':
        this.said = `${FORMULAS.refused} ${refusalWords(given.refusal, this.facts())}`;
        return;
      case 'forbidden':
        this.said = FORMULAS.forbidden;
        return;
      case 'unsent':
        this.said = FORMULAS.notPlanned;
        return;
    }
  }

  private addProduct(): void {
    const around = this.around();
    const { draft } = this.desk;
    if (around === null || draft === null) return;
    const { formula, products } = draft.mine;
    const taken = new Set([...products, ...around.index.entries.flatMap((entry) => entry.products)].map(({ id }) => id));
    const product = newProduct(formula, FORMULAS.newProduct, around.kitchen, (id) => taken.has(id));
    this.desk.edit(['products'], [...products, product]);
  }

  private beginIngredient({ ingredient, name, partIndex }: HTMLElementEventMap['ingredient-wanted']): void {
    const known = new Set(this.desk.index?.ingredients.map(({ id }) => id));
    const made: Ingredient = { id: keyOfName(name, 'ingredient', (id) => known.has(id)), name, kind: 'other', allergens: [] };
    this.ingredientDraft = { ingredient: ingredient ?? made, isNew: ingredient === null, partIndex };
  }

  private async keepIngredient(): Promise<void> {
    const { ingredientDraft } = this;
    if (ingredientDraft === null) return;
    const { ingredient, partIndex } = ingredientDraft;
    const given = await this.desk.adoptIngredient(ingredient);
    if (given.phase !== 'done') {
      this.said = given.phase === 'refused' ? `${FORMULAS.refused} ${refusalWords(given.refusal, this.facts())}` : FORMULAS.failedTitle;
      this.dialog?.close();
      return;
    }
    const items = partIndex === null ? undefined : this.desk.draft?.mine.formula.parts[partIndex]?.items;
    if (items !== undefined && partIndex !== null)
      this.desk.edit(['formula', 'parts', partIndex, 'items'], [...items, { item: ingredient.id, g: 0 }]);
    this.dialog?.close();
  }

  private async decide(what: SaveEvent['what']): Promise<void> {
    switch (what) {
      case 'save': {
        const formulaId = await this.desk.save();
        if (formulaId !== null && this.address.shows === 'new')
          this.go({ shows: 'formula', formulaId, version: null, section: this.address.section }, 'replace');
        return;
      }
      case 'putBack':
        this.desk.putBack();
        if (this.address.shows === 'new') this.go({ shows: 'book' }, 'replace');
        return;
      case 'takeNewer':
        this.desk.takeNewer();
        return;
      case 'look': {
        const { draft, loaded } = this.desk;
        if (draft === null || loaded === null) return;
        this.chooseSection('versions');
        this.compared = [loaded, { ...loaded, formula: draft.mine.formula }];
        return;
      }
    }
  }

  /** To the section in which a fault's field stands, and then to the field. */
  private async toFault(path: string): Promise<void> {
    this.chooseSection(sectionOf(path));
    await this.updateComplete;
    const desk = this.renderRoot.querySelector('formula-desk');
    await desk?.updateComplete;
    await focusWithin(this.renderRoot, path);
  }
}

function sectionOf(path: string): Section {
  if (path.startsWith('products')) return 'products';
  return /^formula\.(method|sidePreps|takesBack)/.test(path) ? 'method' : 'parts';
}

declare global {
  interface HTMLElementTagNameMap {
    'formulas-page': FormulasPage;
  }
}
