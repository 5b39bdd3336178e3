import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { allergensOfFacts, type AllergenFacts, type AllergenSource } from '../../shared/book/allergens.ts';
import type { Allergen } from '../../shared/documents/allergen.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { ALLERGEN_LIST } from '../words/allergens.ts';
import { ALLERGENS } from '../words/floor.ts';
import { euText, usText } from './allergen-text.ts';

/** A product that shares a dough with others: what it contains and the dough has not. */
export interface AlsoContains {
  readonly name: string;
  readonly own: readonly Allergen[];
}

/** What something contains by both lists, what brings it, what may get in, and whose word comes before ours. */
@customElement('allergen-list')
export class AllergenList extends LitElement {
  static override styles = css`
    :host {
      display: block;
      overflow-wrap: anywhere;
    }
    dl,
    dd,
    p,
    ul {
      margin: 0;
      padding: 0;
    }
    ul {
      list-style: none;
    }
    dl {
      display: grid;
      gap: var(--space-2);
    }
    dt,
    .caution {
      font-size: var(--type-small);
      color: var(--ink-soft);
    }
    dd,
    li {
      line-height: 1.3;
    }
    .contains {
      font-weight: var(--weight-word);
    }
    .caution {
      margin-top: var(--space-2);
      padding-inline-start: var(--space-2);
      border-inline-start: var(--rule) double var(--ink);
    }
  `;

  @property({ attribute: false }) facts: AllergenFacts | null = null;
  @property({ attribute: false }) mayContain: Kitchen['mayContain'] = undefined;
  /** Products of one dough, where there are several. */
  @property({ attribute: false }) products: readonly AlsoContains[] = [];
  /** Names of ingredients and formulas, for what brings something in and for what the book lacks. */
  @property({ attribute: false }) nameOf: (id: string) => string = (id) => id;

  /** Without what brings each in, where there is little room. */
  @property({ type: Boolean }) brief = false;

  protected override render(): TemplateResult | typeof nothing {
    const { facts } = this;
    if (facts === null) return nothing;
    const allergens = allergensOfFacts(facts);
    return html`
      <dl>
        <div>
          <dt>${ALLERGEN_LIST.euList}</dt>
          <dd class="contains">${euText(allergens)}</dd>
        </div>
        <div>
          <dt>${ALLERGEN_LIST.usList}</dt>
          <dd class="contains">${usText(allergens)}</dd>
        </div>
        ${this.products.map(({ name, own }) => (own.length === 0 ? nothing : this.pair(ALLERGEN_LIST.also(name), euText(own))))}
        ${this.brief || facts.sources.length === 0 ? nothing : this.broughtBy(facts.sources)} ${this.may()}
        ${facts.missing.length === 0 ? nothing : this.pair(ALLERGEN_LIST.missing, facts.missing.map((id) => this.nameOf(id)).join(', '))}
      </dl>
      ${facts.takesBack ? html`<p>${ALLERGEN_LIST.takesBack}</p>` : nothing}
      <p class="caution">${ALLERGEN_LIST.caution}</p>
    `;
  }

  private pair(term: string, text: string): TemplateResult {
    return html`<div>
      <dt>${term}</dt>
      <dd>${text}</dd>
    </div>`;
  }

  private may(): TemplateResult | typeof nothing {
    const { allergens = [], note } = this.mayContain ?? {};
    const texts = [...(allergens.length === 0 ? [] : [euText(allergens)]), ...(note === undefined ? [] : [note])];
    return texts.length === 0 ? nothing : this.pair(ALLERGEN_LIST.mayContain, texts.join(' · '));
  }

  private broughtBy(sources: readonly AllergenSource[]): TemplateResult {
    return html`<div>
      <dt>${ALLERGEN_LIST.broughtBy}</dt>
      <dd>
        <ul>
          ${sources.map(
            ({ allergen, ingredientId, through }) =>
              html`<li>
                ${ALLERGENS[allergen]}:
                ${ALLERGEN_LIST.source(ingredientId === null ? ALLERGEN_LIST.onTheFloor : this.nameOf(ingredientId), through)}
              </li>`,
          )}
        </ul>
      </dd>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'allergen-list': AllergenList;
  }
}
