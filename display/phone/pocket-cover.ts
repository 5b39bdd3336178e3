import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { THIS_PHONE } from '../words/this-phone.ts';
import { GoOnEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** Over a page that was touched as only a pocket touches: it asks for one deliberate touch before buttons act again. */
@customElement('pocket-cover')
export class PocketCover extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        position: fixed;
        inset: 0;
        z-index: 2;
        display: grid;
        align-content: center;
        gap: var(--space-4);
        padding: var(--space-5) var(--space-4);
        background: var(--paper);
        text-align: center;
      }
      p {
        font-size: var(--type-button);
      }
    `,
  ];

  protected override render(): TemplateResult {
    return html`
      <p role="status">${THIS_PHONE.goOnMore}</p>
      <button type="button" class="big filled" data-goes-on @act=${() => this.dispatchEvent(new GoOnEvent())}>${THIS_PHONE.goOn}</button>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'pocket-cover': PocketCover;
  }
}
