import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { slotHeatText } from '../parts/slot-heat-text.ts';
import { temperatureText } from '../parts/temperature-text.ts';
import { PHONE, slotsChosenWords } from '../words/phone.ts';
import { toggled, type DeckChoice, type SlotChoice } from './card-model.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** The slots chosen for a load have changed. */
export class SlotsChosenEvent extends Event {
  static readonly type = 'slots-chosen';
  readonly slotIds: readonly string[];

  constructor(slotIds: readonly string[]) {
    super(SlotsChosenEvent.type, { bubbles: true, composed: true });
    this.slotIds = slotIds;
  }
}

/** The decks that will do, as they stand, each slot a button. */
@customElement('slot-picker')
export class SlotPicker extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }
      h2 {
        display: flex;
        justify-content: space-between;
        gap: var(--space-3);
        margin-bottom: var(--space-2);
        font-size: var(--type-small);
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
      .deck + .deck {
        margin-top: var(--space-3);
      }
      .name {
        display: flex;
        justify-content: space-between;
        margin-bottom: var(--space-1);
        font-size: var(--type-small);
      }
      .slots {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-4);
      }
      button {
        flex: 1 1 88px;
        min-height: var(--target);
      }
      button:not([aria-pressed='true']) {
        border-width: 2px;
        border-style: dashed;
      }
      button[aria-pressed='true'] {
        background: var(--ink);
        color: var(--paper);
      }
      button:disabled {
        border-style: solid;
        border-color: var(--block);
        background: var(--line);
        color: var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) decks: readonly DeckChoice[] = [];
  @property({ attribute: false }) needed = 1;
  @property({ attribute: false }) chosen: readonly string[] = [];
  @property({ attribute: false }) unit: 'C' | 'F' = 'C';

  protected override render(): TemplateResult {
    return html`
      <h2><span>${PHONE.slotsTitle}</span><span>${slotsChosenWords(this.chosen.length, this.needed)}</span></h2>
      ${this.decks.map(
        ({ deck, temperatureC, slots }) => html`
          <div class="deck" role="group" aria-label=${deck.name}>
            <p class="name"><strong>${deck.name}</strong><span>${temperatureText(temperatureC, this.unit)}</span></p>
            <div class="slots">${slots.map((slot) => this.slotButton(slot))}</div>
          </div>
        `,
      )}
    `;
  }

  private slotButton(slot: SlotChoice): TemplateResult {
    const isChosen = this.chosen.includes(slot.slotId);
    const taken = slot.takenByTag ?? (isChosen ? PHONE.slotChosen : PHONE.slotFree);
    const state = slot.heat === null ? taken : `${taken} · ${slotHeatText(slot.heat)}`;
    return html`<button type="button" aria-pressed=${isChosen} ?disabled=${slot.takenByTag !== null} @act=${() => this.toggle(slot.slotId)}>
      ${slot.name}<small>${state}</small>
    </button>`;
  }

  private toggle(slotId: string): void {
    this.dispatchEvent(new SlotsChosenEvent(toggled(this.chosen, slotId, this.needed)));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'slot-picker': SlotPicker;
  }
  interface HTMLElementEventMap {
    'slots-chosen': SlotsChosenEvent;
  }
}
