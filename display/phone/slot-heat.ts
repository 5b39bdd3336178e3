import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { ClientCommand } from '../../shared/floor/commands.ts';
import '../parts/slot-heat-mark.ts';
import { MINUTES_UNIT } from '../words/phone.ts';
import { OVENS } from '../words/ovens.ts';
import { FloorCommandEvent, NewlyShownEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';
import type { SlotStand } from './places-model.ts';

const MINUTE_MS = 60_000;
/** What a test piece takes at the reference, in minutes, with one touch. Common practice. */
const REFERENCE_MINUTES = [3, 5, 8, 12] as const;

/** How hot a slot is, and the test piece that says so: put in with two touches, ended with one. */
@customElement('slot-heat')
export class SlotHeatPanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-2);
        padding-block: var(--space-1) var(--space-2);
        font-size: var(--type-small);
        overflow-wrap: anywhere;
      }
      .row {
        grid-auto-flow: row;
        grid-template-columns: repeat(auto-fit, minmax(6em, 1fr));
      }
      button {
        width: 100%;
        border-width: 2px;
        font-size: var(--type-text);
      }
      h4 {
        min-width: 0;
        margin: 0;
        font-size: var(--type-small);
        font-weight: var(--weight-word);
      }
      button[aria-expanded='true'] {
        background: var(--chosen);
      }
    `,
  ];

  @property({ attribute: false }) slotStand: SlotStand | null = null;
  @property({ attribute: false }) deckName = '';
  @property({ attribute: false }) nowMs = 0;
  @state() private isOpen = false;

  protected override render(): TemplateResult | typeof nothing {
    const { slotStand } = this;
    if (slotStand === null) return nothing;
    return html`<slot-heat-mark .heat=${slotStand.heat}></slot-heat-mark>
      ${slotStand.testPiece === null ? this.opener(slotStand) : this.piece(slotStand.slotId, slotStand.testPiece)}`;
  }

  private opener({ slotId, name }: SlotStand): TemplateResult {
    return html`<button type="button" class="middling" aria-expanded=${this.isOpen} @act=${() => this.open(!this.isOpen)}>
        ${OVENS.testPiece}
      </button>
      ${
        this.isOpen
          ? html`<h4>${OVENS.testPieceTitle(`${this.deckName} ${name}`)}</h4>
              <div class="row">
                ${REFERENCE_MINUTES.map(
                  (referenceMin) =>
                    html`<button type="button" class="middling" @act=${() => this.say({ type: 'startTestPiece', slotId, referenceMin })}>
                      <span class="number">${referenceMin}</span><small>${MINUTES_UNIT}</small>
                    </button>`,
                )}
              </div>`
          : nothing
      }`;
  }

  private piece(slotId: string, { startedMs, referenceMin }: NonNullable<SlotStand['testPiece']>): TemplateResult {
    const minutes = Math.max(0, Math.floor((this.nowMs - startedMs) / MINUTE_MS));
    return html`<h4>${OVENS.testPieceIn(String(minutes), String(referenceMin))}</h4>
      <button type="button" class="middling filled" @act=${() => this.say({ type: 'endTestPiece', slotId, isDone: true })}>
        ${OVENS.asReference}
      </button>
      <button type="button" class="middling" @act=${() => this.say({ type: 'endTestPiece', slotId, isDone: false })}>
        ${OVENS.throwAway}
      </button>`;
  }

  private open(isOpen: boolean): void {
    this.isOpen = isOpen;
    this.dispatchEvent(new NewlyShownEvent());
  }

  private say(command: ClientCommand): void {
    this.isOpen = false;
    this.dispatchEvent(new FloorCommandEvent(command));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'slot-heat': SlotHeatPanel;
  }
}
