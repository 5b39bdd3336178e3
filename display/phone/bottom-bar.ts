import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/icon-mark.ts';
import { PHONE } from '../words/phone.ts';
import { GoBackEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** Take back the last action. */
export class UndoWantedEvent extends Event {
  static readonly type = 'undo-wanted';

  constructor() {
    super(UndoWantedEvent.type, { bubbles: true, composed: true });
  }
}

/** The lowest row of the screen: the way back, and undo for as long as there is something to undo. */
@customElement('bottom-bar')
export class BottomBar extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: flex;
        gap: var(--space-4);
        padding: 8px 16px calc(8px + env(safe-area-inset-bottom));
        border-top: var(--hairline) solid var(--ink);
      }
      .back {
        flex: 0 0 112px;
      }
      .back:only-child {
        flex-grow: 1;
      }
      .undo {
        flex: 1 1 auto;
        font-size: var(--type-text);
      }
    `,
  ];

  /** Where the way back leads; null where there is none. */
  @property({ attribute: false }) back: string | null = null;
  /** What undo would take back; null where there is nothing. */
  @property({ attribute: false }) undoes: string | null = null;

  protected override render(): TemplateResult {
    return html`
      ${
        this.back === null
          ? nothing
          : html`<button type="button" class="bar back" @act=${() => this.dispatchEvent(new GoBackEvent())}>
              <icon-mark name="back"></icon-mark>${this.back}
            </button>`
      }
      ${
        this.undoes === null
          ? nothing
          : html`<button type="button" class="bar undo" @act=${() => this.dispatchEvent(new UndoWantedEvent())}>
              <span>${PHONE.undo}: ${this.undoes}</span>
            </button>`
      }
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'bottom-bar': BottomBar;
  }
  interface HTMLElementEventMap {
    'undo-wanted': UndoWantedEvent;
  }
}
