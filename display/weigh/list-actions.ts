import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { baseStyles, buttonRowStyles, buttonStyles } from '../phone/phone-styles.ts';
import { WEIGH } from '../words/weigh.ts';
import { actionStyles } from './action-styles.ts';
import { ViewWantedEvent, type WeighView } from './weigh-events.ts';

/** From the list to the lines one by one, to the water, and to the dough's temperature. */
@customElement('list-actions')
export class ListActions extends LitElement {
  static override styles = [baseStyles, buttonStyles, buttonRowStyles, actionStyles];

  @property({ attribute: false }) views: readonly WeighView[] = [];
  /** The one that stands beside the list; null where none does. */
  @property({ attribute: false }) current: WeighView | null = null;

  protected override render(): TemplateResult {
    return html`<div class="row">${this.views.map((view) => this.button(view))}</div>`;
  }

  private button(view: WeighView): TemplateResult {
    return html`<button
      type="button"
      class="middling"
      aria-pressed=${this.current === null ? nothing : view === this.current}
      @act=${() => this.dispatchEvent(new ViewWantedEvent(view))}
    >
      ${viewWords(view)}
    </button>`;
  }
}

function viewWords(view: WeighView): string {
  switch (view) {
    case 'line':
      return WEIGH.oneByOne;
    case 'list':
      return WEIGH.list;
    case 'water':
      return WEIGH.water;
    case 'dough':
      return WEIGH.dough;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'list-actions': ListActions;
  }
}
