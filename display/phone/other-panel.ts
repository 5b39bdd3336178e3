import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { HOLD_MINUTES, MORE_TIME_MINUTES, type ClientCommand } from '../../shared/floor/commands.ts';
import { holdMinutesWords, MINUTES_UNIT, minutesMoreWords, PHONE } from '../words/phone.ts';
import { PANELS } from '../words/panels.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, PanelWantedEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';

/** Somebody is about to skip the step. */
export class SkipWantedEvent extends Event {
  static readonly type = 'skip-wanted';

  constructor() {
    super(SkipWantedEvent.type, { bubbles: true, composed: true });
  }
}

/** What is said less often: more time, hold the call, heard, skip, and the way to the rest. */
@customElement('other-panel')
export class OtherPanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: grid;
        gap: 16px;
        padding: 12px 16px;
      }
      h2 {
        margin-bottom: 4px;
        font-size: 16px;
        line-height: 1.2;
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { card } = this;
    if (card === null) return nothing;
    const key = { workpieceId: card.row.workpieceId, stepId: card.action.id };
    return html`
      <section>
        <h2>${PHONE.moreTime}</h2>
        <div class="row">
          ${MORE_TIME_MINUTES.map((minutes) => this.button({ type: 'giveMoreTime', ...key, minutes }, html`<span class="number">${minutesMoreWords(minutes)}</span><small>${MINUTES_UNIT}</small>`))}
        </div>
      </section>
      <section>
        <h2>${PHONE.hold}</h2>
        <div class="row">
          ${
            card.row.heldUntilMs === null
              ? HOLD_MINUTES.map((minutes) => this.button({ type: 'holdWorkpiece', ...key, minutes }, html`${holdMinutesWords(minutes)}`))
              : this.button({ type: 'releaseWorkpiece', ...key }, html`${PHONE.release}`)
          }
        </div>
      </section>
      <div class="row">
        ${card.canHear ? this.button({ type: 'hearCall', ...key }, html`${PHONE.heard}`) : nothing}
        <button type="button" class="middling" @act=${() => this.dispatchEvent(new SkipWantedEvent())}>${PHONE.skip}</button>
        <button type="button" class="middling" @act=${() => this.dispatchEvent(new PanelWantedEvent('more'))}>${PANELS.more}</button>
      </div>
    `;
  }

  private button(command: ClientCommand, label: TemplateResult): TemplateResult {
    return html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new FloorCommandEvent(command))}>${label}</button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'other-panel': OtherPanel;
  }
  interface HTMLElementEventMap {
    'skip-wanted': SkipWantedEvent;
  }
}
