import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Station } from '../../shared/documents/kitchen.ts';
import { THIS_PHONE } from '../words/this-phone.ts';
import { FilterChosenEvent } from './phone-events.ts';
import { panelStyles } from './panel-styles.ts';
import { baseStyles, buttonStyles } from './phone-styles.ts';

/** Whose doughs the list is to show: this phone's own station first, then everybody's, then the others. */
@customElement('station-filter')
export class StationFilter extends LitElement {
  static override styles = [baseStyles, buttonStyles, panelStyles];

  @property({ attribute: false }) stations: readonly Station[] = [];
  /** Where this phone is; null where it is nowhere fixed. */
  @property({ attribute: false }) ownId: string | null = null;
  @property({ attribute: false }) chosenId: string | null = null;

  protected override render(): TemplateResult {
    const own = this.stations.filter((station) => station.id === this.ownId);
    const others = this.stations.filter((station) => station.id !== this.ownId);
    const chips: readonly { readonly id: string | null; readonly name: string }[] = [...own, { id: null, name: THIS_PHONE.all }, ...others];
    return html`
      <h2 id="whose">${THIS_PHONE.whose}</h2>
      <div class="two" role="group" aria-labelledby="whose">
        ${chips.map(
          ({ id, name }) =>
            html`<button
              type="button"
              class="middling"
              aria-pressed=${id === this.chosenId}
              @act=${() => this.dispatchEvent(new FilterChosenEvent(id))}
            >
              ${name}
            </button>`,
        )}
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'station-filter': StationFilter;
  }
}
