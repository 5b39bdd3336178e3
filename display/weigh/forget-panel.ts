import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { FloorCommandEvent } from '../phone/phone-events.ts';
import { baseStyles, buttonRowStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import { actionStyles } from './action-styles.ts';
import type { TaughtMixer } from './water-model.ts';
import { OverClosedEvent } from './weigh-events.ts';

/** Asks again before what a mixer has taught is forgotten: of one dough, or of all of them. */
@customElement('forget-panel')
export class ForgetPanel extends LitElement {
  static override styles = [baseStyles, buttonStyles, buttonRowStyles, actionStyles];

  @property({ attribute: false }) mixer: TaughtMixer | null = null;
  @property({ attribute: false }) formulaId = '';
  @property() formulaName = '';

  protected override render(): TemplateResult | typeof nothing {
    const { mixer } = this;
    if (mixer === null) return nothing;
    return html`
      <h2>${WEIGH.forgetTitle(mixer.name)}</h2>
      <div class="row">
        <button type="button" class="middling" ?disabled=${mixer.ofFormula === 0} @act=${() => this.forget(mixer, this.formulaId)}>
          ${WEIGH.forgetOf(this.formulaName, mixer.ofFormula)}
        </button>
        <button type="button" class="middling" @act=${() => this.forget(mixer, null)}>${WEIGH.forgetAll(mixer.ofAll)}</button>
      </div>
      <button type="button" class="middling filled" @act=${() => this.dispatchEvent(new OverClosedEvent())}>${WEIGH.forgetNot}</button>
    `;
  }

  private forget({ id }: TaughtMixer, formulaId: string | null): void {
    this.dispatchEvent(new FloorCommandEvent({ type: 'forgetRise', mixerId: id, ...(formulaId === null ? {} : { formulaId }) }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'forget-panel': ForgetPanel;
  }
}
