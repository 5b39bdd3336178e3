import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BookFormula } from '../../shared/book/book-api.ts';
import type { Overall } from '../../shared/book/overall.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import { BOOK } from '../words/book.ts';
import { FORMULAS, SAVE, SECTION_NAMES } from '../words/formulas.ts';
import { ArchiveWantedEvent, DuplicateWantedEvent, FormulaWantedEvent } from './book-events.ts';
import { formulaDeskStyles } from './desk-page-styles.ts';
import type { DocumentChangedEvent } from './document-changed.ts';
import { DraftChangedEvent, ProductAddedEvent, SectionChosenEvent } from './desk-events.ts';
import type { EditorContext } from './editor-context.ts';
import type { FormulaDraft } from './formula-draft.ts';
import './formula-head.ts';
import './method-editor.ts';
import { SECTIONS, type Section } from './page-address.ts';
import './part-adder.ts';
import './part-table.ts';
import { faultsWithin } from './place-faults.ts';
import './product-editor.ts';
import './keeping-editor.ts';
import './side-preps-editor.ts';
import './size-panel.ts';
import './takes-back-editor.ts';
import './totals-panel.ts';
import './version-compare.ts';

/** The open formula: its head, one of its sections, and beside it what it comes to. */
@customElement('formula-desk')
export class FormulaDesk extends LitElement {
  static override styles = [deskStyles, plainButtonStyles, formulaDeskStyles];

  @property({ attribute: false }) draft: FormulaDraft | null = null;
  @property({ attribute: false }) loaded: BookFormula | null = null;
  @property({ attribute: false }) overall: Overall | null = null;
  @property({ attribute: false }) context: EditorContext | null = null;
  @property({ attribute: false }) section: Section = 'parts';
  @property({ attribute: false }) isChanged = false;
  @property({ attribute: false }) serviceDate = '';
  /** The two versions that are compared. */
  @property({ attribute: false }) compared: readonly [BookFormula, BookFormula] | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { draft, context, loaded } = this;
    if (draft === null || context === null) return nothing;
    const { formula } = draft.mine;
    const isNew = draft.version === 0;
    return html`<div class="title">
        <h2>${formula.name}</h2>
        <span class="soft"
          >${isNew ? FORMULAS.notSavedYet : FORMULAS.version(draft.version)}${this.isChanged && !isNew ? ` · ${SAVE.changed}` : ''}</span
        >
        ${isNew ? nothing : this.wholeButtons(formula.id)}
      </div>
      ${
        loaded?.isArchived === true
          ? html`<p class="banner">
              ${FORMULAS.archived}
              <button type="button" class="plain" @click=${() => this.dispatchEvent(new ArchiveWantedEvent(formula.id, false))}>
                ${FORMULAS.bringBack}
              </button>
            </p>`
          : nothing
      }
      <nav aria-label=${FORMULAS.sections}>
        ${SECTIONS.map(
          (section) =>
            html`<button
              type="button"
              aria-current=${section === this.section ? 'page' : 'false'}
              ?hidden=${isNew && section === 'versions'}
              @click=${() => this.dispatchEvent(new SectionChosenEvent(section))}
            >
              ${SECTION_NAMES[section]}
            </button>`,
        )}
      </nav>
      <div class="columns">
        <div class="section">${this.inSection(draft, context)}</div>
        <aside aria-label=${SECTION_NAMES.parts}>
          <totals-panel .formula=${formula} .overall=${this.overall} .context=${context}></totals-panel>
        </aside>
      </div>`;
  }

  private wholeButtons(id: string): TemplateResult {
    return html`<span class="buttons">
      <button type="button" class="plain" @click=${() => this.dispatchEvent(new DuplicateWantedEvent(id))}>${BOOK.duplicate}</button>
      ${
        this.loaded?.isArchived === true
          ? nothing
          : html`<button type="button" class="plain" @click=${() => this.dispatchEvent(new ArchiveWantedEvent(id, true))}>
              ${BOOK.archive}
            </button>`
      }
    </span>`;
  }

  private inSection(draft: FormulaDraft, context: EditorContext): TemplateResult {
    const { formula, products } = draft.mine;
    switch (this.section) {
      case 'parts':
        return html`<div class="stack" @document-changed=${this.formulaChanged}>
          <formula-head .formula=${formula} .context=${context}></formula-head>
          ${formula.parts.map(
            (part, index) =>
              html`<part-table
                .formula=${formula}
                .content=${part}
                .partIndex=${index}
                .context=${context}
                .faults=${faultsWithin(context.faults, `formula.parts[${index}]`)}
              ></part-table>`,
          )}
          <part-adder .formula=${formula} .context=${context}></part-adder>
        </div>`;
      case 'method':
        return html`<div class="stack" @document-changed=${this.formulaChanged}>
          <method-editor .steps=${formula.method} .root=${['method']} .faultPath=${'formula'} .context=${context}></method-editor>
          <h3>${FORMULAS.sidePreps}</h3>
          <side-preps-editor .preps=${formula.sidePreps} .steps=${formula.method} .context=${context}></side-preps-editor>
          ${
            formula.kind === 'prep'
              ? html`<keeping-editor .keeping=${formula.keeping ?? null} .steps=${formula.method} .context=${context}></keeping-editor>`
              : nothing
          }
          <h3>${FORMULAS.takesBack}</h3>
          <takes-back-editor .takesBack=${formula.takesBack} .context=${context}></takes-back-editor>
        </div>`;
      case 'products':
        return this.products(draft, context);
      case 'size':
        return html`<size-panel
          .formula=${formula}
          .version=${this.isChanged ? null : draft.version}
          .products=${products}
          .context=${context}
          .serviceDate=${this.serviceDate}
        ></size-panel>`;
      case 'versions':
        return this.compared === null
          ? html`<p class="soft">${FORMULAS.loadingFormula}</p>`
          : html`${this.oldVersion()}<version-compare
                .left=${this.compared[0]}
                .right=${this.compared[1]}
                .context=${context}
              ></version-compare>`;
    }
  }

  private products(draft: FormulaDraft, context: EditorContext): TemplateResult {
    const { formula, products } = draft.mine;
    if (formula.kind !== 'dough' && products.length === 0) return html`<p class="soft">${FORMULAS.productsOfDough}</p>`;
    return html`<div class="stack">
      ${products.length === 0 ? html`<p class="soft">${FORMULAS.productsNone}</p>` : nothing}
      ${products.map(
        (product, index) =>
          html`<product-editor
            .product=${product}
            .faultPath=${`products[${index}]`}
            .context=${context}
            @document-changed=${(event: DocumentChangedEvent) => this.changed(event, ['products', index])}
          ></product-editor>`,
      )}
      <div class="buttons">
        <button type="button" class="plain" @click=${() => this.dispatchEvent(new ProductAddedEvent())}>${FORMULAS.addProduct}</button>
      </div>
    </div>`;
  }

  /** An old version can be looked at, and a change begun from it. */
  private oldVersion(): TemplateResult | typeof nothing {
    const left = this.compared?.[0];
    if (left === undefined || left.version >= left.newestVersion) return nothing;
    return html`<p class="banner">
      ${FORMULAS.oldVersion(left.version, left.newestVersion)}
      <button
        type="button"
        class="plain"
        @click=${() => {
          this.dispatchEvent(new DraftChangedEvent(['formula'], left.formula));
          this.dispatchEvent(new SectionChosenEvent('parts'));
        }}
      >
        ${FORMULAS.beginFromOld(left.version)}
      </button>
      <button type="button" class="plain" @click=${() => this.dispatchEvent(new FormulaWantedEvent(left.formula.id))}>
        ${FORMULAS.toNewest}
      </button>
    </p>`;
  }

  private readonly formulaChanged = (event: DocumentChangedEvent): void => this.changed(event, ['formula']);

  private changed(event: DocumentChangedEvent, root: readonly (string | number)[]): void {
    event.stopPropagation();
    this.dispatchEvent(new DraftChangedEvent([...root, ...event.path], event.value));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'formula-desk': FormulaDesk;
  }
}
