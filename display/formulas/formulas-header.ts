import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';
import type { FloorView } from '../link/floor-link.ts';
import { clockText } from '../parts/clock-text.ts';
import type { LookChoice } from '../parts/look.ts';
import '../parts/page-choices.ts';
import { zoneOf } from '../phone/floor-facts.ts';
import { FORMULAS } from '../words/formulas.ts';
import { noLinkSinceWords } from '../words/fields.ts';
import type { Language } from '../words/page-language.ts';
import { BookWantedEvent } from './desk-events.ts';

/** Whose book it is, the way back to its list, and how the page stands to its server. */
@customElement('formulas-header')
export class FormulasHeader extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      .line {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 4px 20px;
        padding: var(--space-3) 0;
      }
      h1 {
        flex: 1 1 auto;
        font-size: var(--type-figure);
        font-weight: var(--weight-strong);
        line-height: 1.1;
      }
      h1 span {
        display: block;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .strip {
        padding: 10px 16px;
        background: var(--ink);
        color: var(--paper);
        font-size: var(--type-text);
      }
    `,
  ];

  @property({ attribute: false }) view: FloorView | null = null;
  @property({ attribute: false }) language: Language = 'en';
  @property({ attribute: false }) look: LookChoice = 'browser';
  /** A formula is open: the list is a step back. */
  @property({ attribute: false }) isOpen = false;

  protected override render(): TemplateResult | typeof nothing {
    const { view } = this;
    if (view === null) return nothing;
    const house = view.state?.house?.document;
    const { connection } = view;
    return html`<div class="line">
        ${
          this.isOpen
            ? html`<button type="button" class="plain" @click=${() => this.dispatchEvent(new BookWantedEvent())}>
                ← ${FORMULAS.book}
              </button>`
            : nothing
        }
        <h1>${house === undefined ? nothing : html`<span>${house.name}</span>`}${FORMULAS.title}</h1>
        <page-choices .language=${this.language} .look=${this.look}></page-choices>
      </div>
      <div role="status">
        ${
          connection.phase === 'lost'
            ? html`<p class="strip">
                <strong>${noLinkSinceWords(clockText(connection.lastContactMs, zoneOf(view.state)))}</strong> ${FORMULAS.noLinkMore}
              </p>`
            : nothing
        }
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'formulas-header': FormulasHeader;
  }
}
