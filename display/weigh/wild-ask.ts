import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { House } from '../../shared/documents/house.ts';
import { readingText } from '../phone/degrees.ts';
import { FloorCommandEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonStyles } from '../phone/phone-styles.ts';
import { READ_WHERE } from '../words/numbers.ts';
import { WEIGH } from '../words/weigh.ts';
import { actionStyles } from './action-styles.ts';
import type { WildReading } from './dough-model.ts';
import { OverClosedEvent } from './weigh-events.ts';

/** A reading far from what was to be expected: measured again, or so it is. */
@customElement('wild-ask')
export class WildAsk extends LitElement {
  static override styles = [baseStyles, buttonStyles, actionStyles];

  @property({ attribute: false }) wild: WildReading | null = null;
  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) unit: House['units']['temperature'] = 'C';

  protected override render(): TemplateResult | typeof nothing {
    const { wild, unit } = this;
    if (wild === null) return nothing;
    const celsius = readingText(wild.celsius, unit);
    return html`
      <div role="alert">
        <h2>${WEIGH.wildTitle(READ_WHERE[wild.where], celsius, readingText(wild.expectedC, unit))}</h2>
        ${wild.where === 'dough' ? html`<p class="soft">${WEIGH.wildMore}</p>` : nothing}
      </div>
      <button type="button" class="big filled" @act=${() => this.dispatchEvent(new OverClosedEvent())}>${WEIGH.wildAgain}</button>
      <button type="button" class="middling" @act=${() => this.say(wild)}>${WEIGH.wildYes(celsius)}</button>
    `;
  }

  private say({ where, celsius }: WildReading): void {
    const { workpieceId } = this;
    this.dispatchEvent(new FloorCommandEvent({ type: 'readTemperature', workpieceId, where, celsius, despite: ['wildReading'] }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wild-ask': WildAsk;
  }
}
