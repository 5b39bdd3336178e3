import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/role-mark.ts';
import { elsewhereWords, THIS_PHONE } from '../words/this-phone.ts';
import type { Elsewhere } from './filter-model.ts';
import { FilterChosenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** One line above a filtered list for what waits elsewhere, so that no filter hides it. A touch shows everything. */
@customElement('late-elsewhere')
export class LateElsewhere extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
        position: sticky;
        top: 0;
        z-index: 1;
        background: var(--paper);
        border-bottom: var(--hairline) solid var(--ink);
      }
      button {
        display: grid;
        grid-template-columns: 36px minmax(0, 1fr);
        gap: 0 var(--space-3);
        width: 100%;
        min-height: var(--target);
        padding: 8px 16px 8px 20px;
        border: none;
        border-radius: 0;
        text-align: start;
      }
      role-mark {
        grid-row: span 2;
        align-self: center;
        font-size: var(--type-verb);
      }
    `,
  ];

  @property({ attribute: false }) elsewhere: Elsewhere | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { elsewhere } = this;
    if (elsewhere === null) return nothing;
    return html`<button type="button" @act=${() => this.dispatchEvent(new FilterChosenEvent(null))}>
      <role-mark .level=${elsewhere.strongest} heard></role-mark>
      <strong>${elsewhereWords(elsewhere.lost, elsewhere.late, elsewhere.calls)}</strong><small>${THIS_PHONE.showAll}</small>
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'late-elsewhere': LateElsewhere;
  }
}
