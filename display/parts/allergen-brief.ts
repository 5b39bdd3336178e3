import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { inOrder, usGroupOf } from '../../shared/book/allergen-groups.ts';
import { allergensOfFacts, type AllergenFacts } from '../../shared/book/allergens.ts';
import type { Allergen } from '../../shared/documents/allergen.ts';
import type { Kitchen } from '../../shared/documents/kitchen.ts';
import { ALLERGEN_LIST } from '../words/allergens.ts';
import { ALLERGENS } from '../words/floor.ts';

/** What a dough contains by both lists, in the fewest words: for a card in the hand. */
@customElement('allergen-brief')
export class AllergenBrief extends LitElement {
  static override styles = css`
    :host {
      display: block;
      overflow-wrap: anywhere;
    }
    p {
      margin: 0;
    }
    .small {
      font-size: var(--type-small);
      color: var(--ink-soft);
    }
    p span {
      display: block;
    }
    p + p {
      margin-top: var(--space-1);
    }
    strong {
      font-weight: var(--weight-word);
    }
  `;

  @property({ attribute: false }) facts: AllergenFacts | null = null;
  @property({ attribute: false }) mayContain: Kitchen['mayContain'] = undefined;
  /** Products of one dough: what each has and the dough has not. */
  @property({ attribute: false }) products: readonly { readonly name: string; readonly own: readonly Allergen[] }[] = [];

  protected override render(): TemplateResult | typeof nothing {
    const { facts } = this;
    if (facts === null) return nothing;
    const all = allergensOfFacts(facts);
    const { allergens = [], note } = this.mayContain ?? {};
    const may = [...(allergens.length === 0 ? [] : [namesOf(allergens)]), ...(note === undefined ? [] : [note])];
    return html`
      ${line(ALLERGEN_LIST.euList, namesOf(all))}
      ${line(ALLERGEN_LIST.usList, namesOf(all.filter((allergen) => usGroupOf(allergen) !== null)))}
      ${this.products.map(({ name, own }) => (own.length === 0 ? nothing : line(ALLERGEN_LIST.also(name), namesOf(own))))}
      ${may.length === 0 ? nothing : line(ALLERGEN_LIST.mayContain, may.join(' · '))}
      ${facts.missing.length === 0 ? nothing : line(ALLERGEN_LIST.missing, facts.missing.join(', '))}
      ${facts.takesBack ? html`<p>${ALLERGEN_LIST.takesBack}</p>` : nothing}
      <p class="small">${ALLERGEN_LIST.caution}</p>
    `;
  }
}

function line(term: string, text: string): TemplateResult {
  return html`<p><span class="small">${term}</span> <strong>${text}</strong></p>`;
}

/** Each by its own name: cereals and nuts are never a group alone. */
function namesOf(allergens: readonly Allergen[]): string {
  if (allergens.length === 0) return ALLERGEN_LIST.none;
  return inOrder(allergens)
    .map((allergen) => ALLERGENS[allergen])
    .join(', ');
}

declare global {
  interface HTMLElementTagNameMap {
    'allergen-brief': AllergenBrief;
  }
}
