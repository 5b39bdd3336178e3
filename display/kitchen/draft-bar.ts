import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { KITCHEN } from '../words/kitchen.ts';
import { DraftEvent } from './kitchen-events.ts';
import { deskStyles, plainButtonStyles } from '../desk/desk-styles.ts';

/** How a draft stands. */
export type DraftStanding = 'changed' | 'overtaken' | 'sent' | 'kept';

/** What is to become of what was changed here. Sticks to the foot of the page while there is a draft. */
@customElement('draft-bar')
export class DraftBar extends LitElement {
  static override styles = [
    deskStyles,
    plainButtonStyles,
    css`
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-2) var(--space-4);
        padding: var(--space-3) var(--space-4);
        border-top: var(--rule) solid var(--ink);
        background: var(--paper);
        font-size: var(--type-text);
      }
      .words {
        flex: 1 1 280px;
        min-width: 0;
        font-weight: var(--weight-word);
        overflow-wrap: anywhere;
      }
      ul {
        max-height: 22vh;
        overflow: auto;
        font-size: var(--type-text);
        font-weight: var(--weight-text);
      }
      li {
        margin-top: var(--space-1);
        padding-inline-start: 10px;
        border-inline-start: 5px solid var(--lost);
      }
    `,
  ];

  /** null: nothing was changed here. */
  @property({ attribute: false }) standing: DraftStanding | null = null;
  /** What keeps it from being kept, once somebody has tried. */
  @property({ attribute: false }) faults: readonly string[] = [];

  /** Whether the keyboard is on one of its buttons. */
  get hasFocusInside(): boolean {
    return this.renderRoot instanceof ShadowRoot && this.renderRoot.activeElement !== null;
  }

  protected override render(): TemplateResult {
    return html`<div role="status">
      ${this.standing === null ? nothing : html`<div class="bar">${this.words()}${this.buttons()}</div>`}
    </div>`;
  }

  private words(): TemplateResult {
    switch (this.standing) {
      case 'sent':
        return html`<p class="words">${KITCHEN.keeping}</p>`;
      case 'kept':
        return html`<p class="words">${KITCHEN.keepingLater}</p>`;
      case 'overtaken':
        return html`<p class="words">${KITCHEN.overtaken}</p>`;
      case 'changed':
      case null:
        return this.faults.length === 0
          ? html`<p class="words">${KITCHEN.changed}</p>`
          : html`<div class="words">
              ${KITCHEN.faulty}
              <ul tabindex="0" aria-label=${KITCHEN.faulty}>
                ${this.faults.map((fault) => html`<li>${fault}</li>`)}
              </ul>
            </div>`;
    }
  }

  private buttons(): TemplateResult | typeof nothing {
    switch (this.standing) {
      case 'changed':
        return html`<div class="buttons">
          ${this.button('putBack', KITCHEN.putBack, '')}${this.button('keep', KITCHEN.keep, 'filled')}
        </div>`;
      case 'overtaken':
        return html`<div class="buttons">
          ${this.button('putBack', KITCHEN.asTheirs, '')}${this.button('takeNewer', KITCHEN.takeNewer, 'filled')}
        </div>`;
      case 'sent':
      case 'kept':
      case null:
        return nothing;
    }
  }

  private button(what: DraftEvent['what'], words: string, className: string): TemplateResult {
    return html`<button type="button" class="plain ${className}" @click=${() => this.dispatchEvent(new DraftEvent(what))}>
      ${words}
    </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'draft-bar': DraftBar;
  }
}
