import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { OptionChosenEvent } from './setup-events.ts';
import { setupStyles } from './setup-styles.ts';

/** One of a few, all of them in sight. Says `option-chosen`. */
@customElement('setup-options')
export class SetupOptions extends LitElement {
  static override styles = [
    setupStyles,
    css`
      .option {
        display: flex;
        align-items: center;
        gap: var(--space-3);
        min-height: var(--target-desk);
        font-weight: inherit;
      }
      input {
        flex: none;
        width: 1.4em;
        height: 1.4em;
        margin: 0;
        accent-color: var(--ink);
      }
    `,
  ];

  @property() legend = '';
  /** Names by their keys, in the order to show. */
  @property({ attribute: false }) options: Readonly<Record<string, string>> = {};
  @property() chosen = '';
  /** A heading says the same as the legend: only a screen reader needs it again. */
  @property({ type: Boolean }) untitled = false;

  protected override render(): TemplateResult {
    return html`<fieldset>
      <legend class=${this.untitled ? 'unseen' : ''}>${this.legend}</legend>
      ${Object.entries(this.options).map(
        ([key, name]) =>
          html`<label class="option"
            ><input
              type="radio"
              name="option"
              value=${key}
              .checked=${key === this.chosen}
              @change=${() => this.dispatchEvent(new OptionChosenEvent(key))}
            />${name}</label
          >`,
      )}
    </fieldset>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'setup-options': SetupOptions;
  }
}
