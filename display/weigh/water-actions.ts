import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import '../parts/icon-mark.ts';
import { FloorCommandEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import { actionStyles } from './action-styles.ts';
import { takeWaterCommand, type WaterModel } from './water-model.ts';
import { ViewWantedEvent, WaterPanelWantedEvent } from './weigh-events.ts';

/** What a thumb does about the water: it is in, as reckoned or as measured; back to the lines; forget what the mixer taught. */
@customElement('water-actions')
export class WaterActions extends LitElement {
  static override styles = [baseStyles, buttonStyles, buttonRowStyles, actionStyles];

  @property({ attribute: false }) workpieceId = '';
  @property({ attribute: false }) model: WaterModel | null = null;
  @property({ type: Boolean }) isMixed = false;
  /** Whether the list stands beside it already. */
  @property({ type: Boolean }) besideList = false;

  protected override render(): TemplateResult {
    const { model } = this;
    const command = model === null || this.isMixed ? null : takeWaterCommand(this.workpieceId, model);
    const isWater = model?.plan?.liquid.isWater ?? true;
    return html`
      <button
        type="button"
        class="big filled"
        ?disabled=${command === null}
        @act=${() => command !== null && this.dispatchEvent(new FloorCommandEvent(command))}
      >
        <span class="with-icon"
          ><icon-mark name="done"></icon-mark>${isWater ? WEIGH.waterIn : WEIGH.liquidIn(model?.plan?.liquid.name ?? '')}</span
        >
      </button>
      <div class="row">
        ${this.besideList ? nothing : html`<button type="button" class="middling" @act=${() => this.dispatchEvent(new ViewWantedEvent('list'))}>${WEIGH.list}</button>`}
        <button
          type="button"
          class="middling"
          ?disabled=${command === null}
          @act=${() => this.dispatchEvent(new WaterPanelWantedEvent('water'))}
        >
          ${WEIGH.otherWater}
        </button>
        <button
          type="button"
          class="middling"
          ?disabled=${(model?.mixer?.ofAll ?? 0) === 0}
          @act=${() => this.dispatchEvent(new WaterPanelWantedEvent('forget'))}
        >
          ${WEIGH.forget}
        </button>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'water-actions': WaterActions;
  }
}
