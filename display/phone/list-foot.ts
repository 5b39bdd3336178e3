import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/icon-mark.ts';
import { PHONE } from '../words/phone.ts';
import { PLACES } from '../words/places.ts';
import { UndoWantedEvent } from './bottom-bar.ts';
import { ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** Another station's doughs are to be listed, or everybody's. */
export class FilterWantedEvent extends Event {
  static readonly type = 'filter-wanted';

  constructor() {
    super(FilterWantedEvent.type, { bubbles: true, composed: true });
  }
}

/** The lowest row of the list: whose doughs it shows, where everything stands, and undo while there is something to undo. */
@customElement('list-foot')
export class ListFoot extends LitElement {
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
      button {
        flex: 1 1 0;
        padding-inline: 6px;
        font-size: var(--type-text);
        overflow-wrap: anywhere;
      }
      .undo {
        flex-grow: 1.6;
      }
    `,
  ];

  /** Whose doughs the list shows. */
  @property({ attribute: false }) shown = '';
  /** What undo would take back; null where there is nothing. */
  @property({ attribute: false }) undoes: string | null = null;

  protected override render(): TemplateResult {
    return html`
      <button type="button" class="bar" @act=${() => this.dispatchEvent(new FilterWantedEvent())}>
        <icon-mark name="list"></icon-mark>${this.shown}
      </button>
      <button type="button" class="bar" @act=${() => this.dispatchEvent(new ShowScreenEvent({ kind: 'places', workpieceId: null }))}>
        <icon-mark name="places"></icon-mark>${PLACES.open}
      </button>
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
    'list-foot': ListFoot;
  }
  interface HTMLElementEventMap {
    'filter-wanted': FilterWantedEvent;
  }
}
