import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { REMARK_CHARACTERS } from '../../shared/documents/names.ts';
import { PHONE, SKIP_REASONS, skipTitleWords } from '../words/phone.ts';
import { VERBS } from '../words/verbs.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent } from './phone-events.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';
import { fieldStyles } from './field-styles.ts';

/** The second step of skipping: why. The reason goes into the record. */
@customElement('skip-panel')
export class SkipPanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    fieldStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
        padding: var(--space-3) var(--space-4);
      }
      h2 {
        font-size: var(--type-title);
        font-weight: var(--weight-strong);
      }
      .reasons {
        display: grid;
        grid-template-columns: repeat(2, minmax(0, 1fr));
        gap: var(--space-4);
      }
      form {
        display: grid;
        gap: var(--space-2);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  @state() private ownReason = '';

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    return html`
      <h2>${skipTitleWords(card.tag, VERBS[card.action.verb].running)}</h2>
      <div class="reasons">
        ${SKIP_REASONS.map((reason) => html`<button type="button" class="middling" @act=${() => this.skip(reason)}>${reason}</button>`)}
      </div>
      <form @submit=${(event: Event) => event.preventDefault()}>
        <label for="own">${PHONE.skipOwnReason}</label>
        <input
          id="own"
          maxlength=${REMARK_CHARACTERS}
          autocomplete="off"
          enterkeyhint="done"
          .value=${this.ownReason}
          @input=${this.typed}
        />
        ${this.ownReason.trim() === '' ? nothing : html`<button type="button" class="middling" @act=${() => this.skip(this.ownReason.trim())}>${PHONE.skipDo}</button>`}
      </form>
    `;
  }

  private typed(event: InputEvent): void {
    this.ownReason = (event.target as HTMLInputElement).value;
  }

  private skip(reason: string): void {
    if (this.card === null) return;
    this.dispatchEvent(
      new FloorCommandEvent({ type: 'skipStep', workpieceId: this.card.row.workpieceId, stepId: this.card.action.id, reason }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'skip-panel': SkipPanel;
  }
}
