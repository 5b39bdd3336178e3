import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { HOLD_MINUTES, MORE_TIME_MINUTES, type ClientCommand } from '../../shared/floor/commands.ts';
import '../parts/icon-mark.ts';
import type { IconName } from '../parts/icon-mark.ts';
import { PANELS } from '../words/panels.ts';
import { holdMinutesWords, MINUTES_UNIT, minutesMoreWords, PHONE } from '../words/phone.ts';
import { PLACES } from '../words/places.ts';
import { heardButton } from './card-buttons.ts';
import type { CardModel } from './card-model.ts';
import { FloorCommandEvent, PanelWantedEvent, ShowScreenEvent } from './phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from './phone-styles.ts';

/** Somebody is about to skip the step. */
export class SkipWantedEvent extends Event {
  static readonly type = 'skip-wanted';

  constructor() {
    super(SkipWantedEvent.type, { bubbles: true, composed: true });
  }
}

/** What is said less often: more time, hold the call, heard, skip, where it stands, and the way to the rest. */
@customElement('other-panel')
export class OtherPanel extends LitElement {
  static override styles = [
    baseStyles,
    buttonStyles,
    buttonRowStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-3) var(--space-4);
      }
      h2 {
        margin-bottom: var(--space-1);
        font-size: var(--type-small);
        line-height: 1.2;
        font-weight: var(--weight-word);
        color: var(--ink-soft);
      }
    `,
  ];

  @property({ attribute: false }) card: CardModel | null = null;
  /** The page has a drawing of where everything stands. */
  @property({ type: Boolean }) hasPlaces = false;

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
          ${card.canHear && card.isJudging ? heardButton(this, card) : nothing}
        </div>
      </section>
      <div class="row">
        ${this.door('close', PHONE.skip, () => new SkipWantedEvent())}
        ${this.hasPlaces ? this.door('places', PLACES.ofDough, () => new ShowScreenEvent({ kind: 'places', workpieceId: key.workpieceId })) : nothing}
        ${this.door('more', PANELS.more, () => new PanelWantedEvent('more'))}
      </div>
    `;
  }

  private door(icon: IconName, label: string, event: () => Event): TemplateResult {
    return html`<button type="button" class="middling" @act=${() => this.dispatchEvent(event())}>
      <icon-mark name=${icon}></icon-mark>${label}
    </button>`;
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
